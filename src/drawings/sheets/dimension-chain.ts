import { feetInches, label, TYPE_PT } from '../layout/index.js'
import { xy, type Primitive, type XY } from '../model/index.js'

/** Distance of the first row of dimensions from the plane and between rows, on paper, points. */
export const FIRST_PT = 24
export const STEP_PT = 17
/** Equal distances in a row that are written as one. */
const LEAST_EQUAL = 3

/** Distance of a row of dimensions from what it measures, 0 for the nearest. */
export const rowPt = (row: number): number => FIRST_PT + row * STEP_PT

/** Ends of the groups of spans that lie apart by more than the gap between modules, with both ends of the whole. */
export function stops(spans: readonly (readonly [number, number])[], low: number, high: number): number[] {
  const found: number[] = [low]
  let end = Number.NEGATIVE_INFINITY
  for (const [from, to] of spans.toSorted((a, b) => a[0] - b[0])) {
    if (from > end + 0.34) {
      if (Number.isFinite(end)) found.push(end)
      found.push(from)
    }
    end = Math.max(end, to)
  }
  return [...found, end, high].filter((value, index, all) => index === 0 || value - (all[index - 1] ?? 0) > 1e-6)
}

/** Dimensions from point to point, equal ones in a row as one. */
export function chain(
  points: readonly XY[],
  offsetPt: number,
  optional = false,
  write: (ft: number) => string = feetInches,
): Primitive[] {
  return equalSpans(points).map((span): Primitive => {
    const [from, to] = [span[0] ?? xy(0, 0), span.at(-1) ?? xy(0, 0)]
    const length = Math.hypot(to.x - from.x, to.y - from.y)
    const parts = span.length - 1
    return {
      kind: 'dimension',
      from,
      to,
      offsetPt,
      text: parts === 1 ? write(length) : `${parts} at ${write(length / parts)} = ${write(length)}`,
      ...(optional ? { optional } : {}),
      ...(parts === 1 ? {} : { between: span.slice(1, -1) }),
    }
  })
}

/** Points of a chain in groups: each distance for itself, but some equal ones in a row together. */
function equalSpans(points: readonly XY[]): XY[][] {
  const groups: XY[][] = []
  const lengthOf = ([a, b]: readonly XY[]): number =>
    a === undefined || b === undefined ? 0 : Math.hypot(b.x - a.x, b.y - a.y)
  for (const [index, to] of points.entries()) {
    const from = points[index - 1]
    if (from === undefined) continue
    const last = groups.at(-1)
    // A sixteenth of an inch is what a chain is read to.
    if (last !== undefined && Math.abs(lengthOf(last) - lengthOf([from, to])) < 1 / 192) last.push(to)
    else groups.push([from, to])
  }
  return groups.flatMap((group) =>
    group.length > LEAST_EQUAL ? [group] : group.slice(1).map((to, index): XY[] => [group[index] ?? to, to]),
  )
}

/** What a chain measures, before its first point. */
export function chainName(start: XY | undefined, text: string, below: number): Primitive {
  const at = start ?? xy(0, 0)
  const look = { sizePt: TYPE_PT.small, align: 'right', valign: 'middle', optional: true } as const
  return label(at.x, at.y, text, { ...look, shifts: [-14, -30, -52, -66, -82, -98, -116].map((by) => xy(by, below)) })
}
