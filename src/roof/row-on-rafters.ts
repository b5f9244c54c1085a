import { feetOf, inchesOf, type Feet, type Inches } from '../values/index.js'
import type { RailGround } from './rail-ground.js'
import { breakGapIn, RUN_GAP_IN, railOnObstructionIn } from './rail-lines.js'
import { fewestOnRafters } from './rail-rules.js'
import type { Interval } from './row-intervals.js'

/** Modules side by side on their own two rails. */
export interface RowGroup {
  /** Left edge of the first module, ft. */
  readonly fromFt: number
  readonly count: number
}

/** A row of modules at one height, with what its rails stand on. */
export interface RowOnRafters {
  readonly intervals: readonly Interval[]
  readonly widthFt: Feet
  readonly gapFt: Feet
  readonly endIn: Inches
  /** Heights of the lower and the upper rail, in. */
  readonly railsIn: readonly Inches[]
  /** Rafters of each rail, or those of both together where they are aligned, in. */
  readonly rafters: readonly (readonly Inches[])[]
  readonly ground: RailGround
}

/** What keeps two groups of a row on rails of their own beyond a wide gap, ft; above what rounding does. */
const APART_FT = feetOf(RUN_GAP_IN + 0.01)

/** Length of the modules of a group, ft. */
export function groupLengthFt(row: RowOnRafters, count: number): Feet {
  return count * pitchFt(row) - row.gapFt
}

function railEnds(row: RowOnRafters, fromFt: number, count: number): { startIn: Inches; endIn: Inches } {
  return {
    startIn: inchesOf(fromFt) - row.endIn,
    endIn: inchesOf(fromFt + groupLengthFt(row, count)) + row.endIn,
  }
}

/** The fewest mounts that hold both rails of a group, Infinity when they cannot be laid. */
export function mountsUnderGroup(row: RowOnRafters, fromFt: number, count: number): number {
  const ends = railEnds(row, fromFt, count)
  if (ends.endIn - ends.startIn > row.ground.continuousIn + 1e-6) return Infinity
  let sum = 0
  for (const rafters of row.rafters) {
    sum += fewestOnRafters(ends, rafters, row.ground.rules)
    if (sum === Infinity) return Infinity
  }
  return (sum * row.railsIn.length) / row.rafters.length
}

/**
 * Left edges at which a group begins or ceases to be held: where a rafter comes under an end of its rails, leaves it, or the
 * free end there reaches its longest.
 */
function turningPoints(row: RowOnRafters, count: number, [lowFt, highFt]: Interval): number[] {
  const { maxCantileverIn, maxCantileverOfSpan, longestSpanIn } = row.ground.rules
  const lengthIn = inchesOf(groupLengthFt(row, count))
  const places: number[] = []
  const add = (xIn: number): void => {
    const xFt = feetOf(xIn)
    if (xFt > lowFt && xFt < highFt) places.push(xFt)
  }
  for (const rafters of row.rafters) {
    for (const [index, r] of rafters.entries()) {
      for (const freeIn of [0, maxCantileverIn]) {
        add(r - freeIn + row.endIn)
        add(r + freeIn - row.endIn - lengthIn)
      }
      if (maxCantileverOfSpan === Infinity) continue
      for (let other = index + 1; other < rafters.length; other++) {
        const span = (rafters[other] ?? 0) - r
        if (span > longestSpanIn + 1e-6) break
        add(r - maxCantileverOfSpan * span + row.endIn)
        add((rafters[other] ?? 0) + maxCantileverOfSpan * span - row.endIn - lengthIn)
      }
    }
  }
  return places.sort((a, b) => a - b)
}

/** The leftmost place at which a group of modules is held, or undefined. */
export function firstPlace(row: RowOnRafters, count: number, stretch: Interval): number | undefined {
  const [lowFt, highFt] = stretch
  if (lowFt > highFt + 1e-9) return undefined
  if (mountsUnderGroup(row, lowFt, count) < Infinity) return lowFt
  for (const xFt of [...turningPoints(row, count, stretch), highFt]) {
    if (mountsUnderGroup(row, xFt, count) < Infinity) return xFt
  }
  return undefined
}

/** Where in its room a group shall lie, when its rails are held there. */
export interface PlaceWish {
  /** Left edge that is wished, ft. */
  readonly nearFt: number
  /** Whether that wish goes before fewer mounts and rafters to stagger on. */
  readonly strict: boolean
}

/**
 * The best place for a group in its room: most rafters to stagger on, fewest mounts, nearest to the wish. Two rafters to each
 * side of the wish are enough to look at, as what follows is like them, unless its rails are held nowhere there.
 */
export function bestPlace(row: RowOnRafters, count: number, room: Interval, wish: PlaceWish): number | undefined {
  const wished = Math.min(Math.max(wish.nearFt, room[0]), room[1])
  const reachFt = feetOf(2 * row.ground.grid.spacingIn)
  const near: Interval = [Math.max(room[0], wished - reachFt), Math.min(room[1], wished + reachFt)]
  return bestWithin(row, count, near, { ...wish, nearFt: wished }) ?? bestWithin(row, count, room, wish)
}

function bestWithin(row: RowOnRafters, count: number, room: Interval, wish: PlaceWish): number | undefined {
  const marks = [room[0], ...turningPoints(row, count, room), room[1]].filter(
    (x, index, all) => index === 0 || x - (all[index - 1] ?? 0) > 1e-7,
  )
  const middles = marks.slice(1).map((x, index) => (x + (marks[index] ?? x)) / 2)
  const wished = Math.min(Math.max(wish.nearFt, room[0]), room[1])
  let best: { xFt: number; score: readonly number[] } | undefined
  for (const xFt of [...marks, ...middles, wished]) {
    const mounts = mountsUnderGroup(row, xFt, count)
    if (mounts === Infinity) continue
    const away = Math.abs(xFt - wished)
    const score = wish.strict ? [away] : [-endRafters(row, xFt, count), mounts, away]
    if (best === undefined || isLess(score, best.score)) best = { xFt, score }
  }
  return best?.xFt
}

function isLess(a: readonly number[], b: readonly number[]): boolean {
  for (const [index, value] of a.entries()) {
    const other = b[index] ?? 0
    if (Math.abs(value - other) > 1e-9) return value < other
  }
  return false
}

/** Rafters that end mounts of neighbouring rails may take turns on, at both ends, no more than they need. */
function endRafters(row: RowOnRafters, fromFt: number, count: number): number {
  const { aligned, stagger, rules } = row.ground
  if (aligned) return 0
  const { startIn, endIn } = railEnds(row, fromFt, count)
  const within = (rafters: readonly Inches[], from: Inches, to: Inches): number =>
    Math.min(stagger + 1, rafters.filter((x) => x >= from - 1e-6 && x <= to + 1e-6).length)
  return Math.min(
    ...row.rafters.map(
      (rafters) =>
        within(rafters, startIn, startIn + rules.maxCantileverIn) +
        within(rafters, endIn - rules.maxCantileverIn, endIn),
    ),
  )
}

/** Least left edge of a group after another one, so that each has rails of its own, ft. */
function startAfter(row: RowOnRafters, before: RowGroup, count: number, leastFt: number): number {
  const endFt = before.fromFt + groupLengthFt(row, before.count)
  const touching = Math.max(leastFt, endFt + row.gapFt)
  if (isBlocked(row, endFt, touching)) return touching
  const togetherIn = inchesOf(touching - before.fromFt + groupLengthFt(row, count)) + 2 * row.endIn
  const breaks = togetherIn > row.ground.continuousIn + 1e-6
  return Math.max(touching, endFt + (breaks ? feetOf(breakGapIn(row.endIn)) + 1e-6 : APART_FT))
}

/** Whether an obstruction ends the rails between two modules. */
function isBlocked({ ground, railsIn }: RowOnRafters, fromFt: number, toFt: number): boolean {
  return ground.obstructions.some((o) =>
    railsIn.some((yIn) => railOnObstructionIn(o, yIn, inchesOf(fromFt), inchesOf(toFt)) > 1e-6),
  )
}

/** Groups that hold a number of modules in the least length from the left. */
interface Packed {
  readonly groups: readonly RowGroup[]
  readonly count: number
  readonly endFt: number
}

const pitchFt = (row: RowOnRafters): Feet => row.widthFt + row.gapFt

const mostIn = (row: RowOnRafters, [from, to]: Interval): number => Math.floor((to - from + 1e-7) / pitchFt(row)) + 1

/** Where the left edge of a group may lie in a stretch of left edges of one module, or undefined when there is no room. */
function roomFor(row: RowOnRafters, count: number, [from, to]: Interval): Interval | undefined {
  const highest = to - (count - 1) * pitchFt(row)
  return highest < from - 1e-7 ? undefined : [from, Math.max(from, highest)]
}

/** Sizes of the fewest groups that a stretch takes with the most modules, expansion breaks between them. */
function sizesIn(row: RowOnRafters, stretch: Interval): number[] {
  const longest = mostIn(row, [0, feetOf(row.ground.continuousIn - 2 * row.endIn) - row.widthFt])
  const widerFt = feetOf(breakGapIn(row.endIn)) - row.gapFt
  for (let count = mostIn(row, stretch); count >= 1; count--) {
    const groups = Math.ceil(count / Math.max(1, longest))
    const [from, to] = stretch
    if (roomFor(row, count, [from, to - (groups - 1) * Math.max(0, widerFt)]) === undefined) continue
    return Array.from({ length: groups }, (_, i) => Math.floor(count / groups) + (i < count % groups ? 1 : 0))
  }
  return []
}

/** Every stretch filled with groups as long as it takes, when all their rails are held. */
function fullRow(row: RowOnRafters): RowGroup[] | undefined {
  const groups: RowGroup[] = []
  let end = -Infinity
  for (const [from, to] of row.intervals) {
    for (const count of sizesIn(row, [Math.max(from, end + row.gapFt), to])) {
      const before = groups.at(-1)
      const start = before === undefined ? from : startAfter(row, before, count, from)
      const room = roomFor(row, count, [start, to])
      const xFt = room === undefined ? undefined : firstPlace(row, count, room)
      if (xFt === undefined) return undefined
      groups.push({ fromFt: xFt, count })
      end = xFt + groupLengthFt(row, count)
    }
  }
  return groups
}

/**
 * Ways to place groups in a row so that all rails are held, for each number of modules that can be placed so: the one that
 * ends farthest left.
 *
 * @limits Modules across an obstruction that no rail meets get rails of their own.
 */
export function rowPackings(row: RowOnRafters): Map<number, readonly RowGroup[]> {
  const longRow = row.intervals.some(
    ([from, to]) => inchesOf(to + row.widthFt - from) + 2 * row.endIn > row.ground.continuousIn,
  )
  const keyOf = (packed: Packed): string => `${packed.count},${longRow ? (packed.groups.at(-1)?.count ?? 0) : 0}`
  const best = new Map<string, Packed>([['0,0', { groups: [], count: 0, endFt: -Infinity }]])
  for (const [from, to] of row.intervals) {
    const queue = [...best.values()]
    for (let state = queue.shift(); state !== undefined; state = queue.shift()) {
      const before = state.groups.at(-1)
      for (let count = mostIn(row, [from, to]); count >= 1; count--) {
        const least = before === undefined ? from : startAfter(row, before, count, from)
        const room = roomFor(row, count, [least, to])
        const xFt = room === undefined ? undefined : firstPlace(row, count, room)
        if (xFt === undefined) continue
        const next: Packed = {
          groups: [...state.groups, { fromFt: xFt, count }],
          count: state.count + count,
          endFt: xFt + groupLengthFt(row, count),
        }
        const held = best.get(keyOf(next))
        if (held !== undefined && held.endFt <= next.endFt + 1e-9) continue
        best.set(keyOf(next), next)
        queue.push(next)
      }
    }
  }
  const packings = new Map<number, Packed>()
  for (const packed of best.values()) {
    const held = packings.get(packed.count)
    if (held === undefined || isLess([packed.groups.length, packed.endFt], [held.groups.length, held.endFt])) {
      packings.set(packed.count, packed)
    }
  }
  return new Map([...packings].map(([count, { groups }]) => [count, groups]))
}

/** The most modules that a row takes with all its rails held. */
export function mostOnRafters(row: RowOnRafters): number {
  const full = fullRow(row)?.reduce((sum, group) => sum + group.count, 0)
  if (full !== undefined && full >= leftmostRow(row)) return full
  return Math.max(0, ...rowPackings(row).keys())
}

/** No fewer modules than any way to hold the rails: stretches filled from the left, each with its expansion breaks. */
function leftmostRow(row: RowOnRafters): number {
  let [sum, end] = [0, -Infinity]
  for (const [from, to] of row.intervals) {
    const start = Math.max(from, end + row.gapFt)
    const count = sizesIn(row, [start, to]).reduce((total, size) => total + size, 0)
    sum += count
    if (count > 0) end = start + groupLengthFt(row, count)
  }
  return sum
}

/** Whether a row can hold a number of modules with all rails held. */
export function canPlace(row: RowOnRafters, count: number): boolean {
  const inOne = row.intervals.some((interval) => {
    const room = roomFor(row, count, interval)
    return room !== undefined && firstPlace(row, count, room) !== undefined
  })
  return inOne || rowPackings(row).has(count)
}

/**
 * Groups of a number of modules in a row, each at its best place.
 *
 * @param wish Where the modules of the rows below begin, or that they shall be centred.
 * @returns undefined when the number cannot be placed with all rails held.
 */
export function placeOnRafters(
  row: RowOnRafters,
  count: number,
  wish: { readonly nearFt: number | undefined; readonly centered: boolean },
): RowGroup[] | undefined {
  const rooms = row.intervals.flatMap((interval) => {
    const room = roomFor(row, count, interval)
    return room === undefined ? [] : [room]
  })
  const ordered = wish.centered ? rooms.toSorted((a, b) => b[1] - b[0] - (a[1] - a[0])) : rooms
  for (const room of ordered) {
    const nearFt = wish.centered ? (room[0] + room[1]) / 2 : (wish.nearFt ?? room[0])
    const xFt = bestPlace(row, count, room, { nearFt, strict: wish.centered })
    if (xFt !== undefined) return [{ fromFt: xFt, count }]
  }
  return rowPackings(row).get(count)?.slice()
}

/** A text that is the same for rows of one orientation that hold the same groups. */
export function likenessOf({ intervals, rafters, railsIn, ground }: RowOnRafters): string {
  const met = ground.obstructions.map((o) =>
    railsIn.some((yIn) => railOnObstructionIn(o, yIn, -Infinity, Infinity) > 0),
  )
  return `${intervals.flat().join()};${rafters.join(';')};${intervals.length > 1 ? met.join() : ''}`
}
