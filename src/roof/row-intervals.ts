import { TOLERANCE_FT, containsPoint, reachBetween, type Feet, type Point } from '../values/index.js'

/** Stretch of x in which the left edge of a module may lie, ends included, ft. */
export type Interval = readonly [fromFt: Feet, toFt: Feet]

/** A plane as the fit sees it. */
export interface Field {
  readonly corners: readonly Point[]
  /** Convex figures that modules may touch but not enter; the edges of the plane are among them. */
  readonly keepOuts: readonly (readonly Point[])[]
}

/**
 * Where the left edge of a module may lie when its lower edge lies at a height. Exact for any outline: a module that
 * slides along x meets a convex figure over one stretch, and between those stretches it lies wholly in or out.
 *
 * @param endFt Room that the end of the rail needs beside the first and last module, ft.
 */
export function rowIntervals(
  field: Field,
  yFt: number,
  { widthFt, heightFt, endFt }: { readonly widthFt: Feet; readonly heightFt: Feet; readonly endFt: Feet },
): Interval[] {
  const blocked: Interval[] = []
  let [left, right] = [Infinity, -Infinity]
  for (const corner of field.corners) {
    left = Math.min(left, corner.xFt)
    right = Math.max(right, corner.xFt)
  }
  for (const figure of field.keepOuts) {
    const reach = reachBetween(figure, yFt, yFt + heightFt)
    if (reach !== undefined) blocked.push([reach[0] - widthFt - endFt, reach[1] + endFt])
  }
  blocked.sort((a, b) => a[0] - b[0])
  const free: Interval[] = []
  let cursor = left + endFt
  for (const [from, to] of [...blocked, [right - widthFt - endFt, Infinity] as const]) {
    if (from >= cursor - TOLERANCE_FT) free.push([cursor, Math.max(cursor, from)])
    cursor = Math.max(cursor, to)
  }
  const middle = yFt + heightFt / 2
  return free.filter(([from, to]) => containsPoint(field.corners, { xFt: (from + to) / 2 + widthFt / 2, yFt: middle }))
}

/** Largest number of modules in a row, each at least a pitch to the right of the one before. */
export function rowCapacity(intervals: readonly Interval[], pitchFt: Feet): number {
  let count = 0
  let next = -Infinity
  for (const [from, to] of intervals) {
    const start = Math.max(from, next)
    if (start > to + TOLERANCE_FT) continue
    const here = Math.floor((to - start + TOLERANCE_FT) / pitchFt) + 1
    count += here
    next = start + here * pitchFt
  }
  return count
}

/**
 * Left edges of a number of modules in a row: in the first single stretch that takes them all, or spread over all.
 *
 * @param centered Whether each group is moved to the middle of the room that it has.
 */
export function packRow(intervals: readonly Interval[], pitchFt: Feet, count: number, centered: boolean): number[] {
  const whole = intervals.filter((interval) => rowCapacity([interval], pitchFt) >= count)
  const roomiest = whole.toSorted((a, b) => b[1] - b[0] - (a[1] - a[0]))[0]
  const chosen = centered ? roomiest : whole[0]
  const groups = greedyGroups(chosen === undefined ? intervals : [chosen], pitchFt, count)
  return groups.flatMap(({ start, amount, limit }, index) => {
    const following = groups[index + 1]
    const last = start + (amount - 1) * pitchFt
    const room = Math.min(limit, following === undefined ? Infinity : following.start - pitchFt) - last
    const shift = centered ? Math.max(0, room) / 2 : 0
    return Array.from({ length: amount }, (_, step) => start + shift + step * pitchFt)
  })
}

function greedyGroups(intervals: readonly Interval[], pitchFt: Feet, count: number) {
  const groups: { start: number; amount: number; limit: number }[] = []
  let left = count
  let next = -Infinity
  for (const [from, to] of intervals) {
    const start = Math.max(from, next)
    if (left === 0 || start > to + TOLERANCE_FT) continue
    const amount = Math.min(left, Math.floor((to - start + TOLERANCE_FT) / pitchFt) + 1)
    groups.push({ start, amount, limit: to })
    left -= amount
    next = start + amount * pitchFt
  }
  return groups
}
