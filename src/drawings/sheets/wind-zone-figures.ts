import type { ArrangedPlane, Point } from '../../roof/index.js'
import { containsPoint, type Feet } from '../../values/index.js'

/** A part of a roof plane that lies in one wind zone. */
export interface ZoneArea {
  readonly zone: string
  /** A point well inside it, ft in the plane. */
  readonly middle: Point
  /** Points as far from its border, near ones first: along the middle of a strip. */
  readonly along: readonly Point[]
}

/** Distance of the points at which a plane is asked for its zone, ft. */
const STEP_FT = 0.25
/** A part smaller than this many points is a rim of rounding. */
const LEAST_POINTS = 8

/**
 * The connected parts of a plane by wind zone, each with the points that lie farthest from its border.
 *
 * @param zoneOf Zone of a point of the plane.
 */
export function zoneAreas({ corners }: Pick<ArrangedPlane, 'corners'>, zoneOf: (at: Point) => string): ZoneArea[] {
  const xs = corners.map(({ xFt }) => xFt)
  const ys = corners.map(({ yFt }) => yFt)
  const [left, low] = [Math.min(...xs), Math.min(...ys)]
  const columns = Math.ceil((Math.max(...xs) - left) / STEP_FT)
  const rows = Math.ceil((Math.max(...ys) - low) / STEP_FT)
  const at = (cell: number): Point => ({
    xFt: left + ((cell % columns) + 0.5) * STEP_FT,
    yFt: low + (Math.floor(cell / columns) + 0.5) * STEP_FT,
  })
  const zones = Array.from({ length: columns * rows }, (_, cell) => {
    const point = at(cell)
    return containsPoint(corners, point) ? zoneOf(point) : undefined
  })
  const beside = (cell: number): (number | undefined)[] => [
    cell % columns === 0 ? undefined : cell - 1,
    cell % columns === columns - 1 ? undefined : cell + 1,
    cell - columns < 0 ? undefined : cell - columns,
    cell + columns >= zones.length ? undefined : cell + columns,
  ]
  const seen = new Set<number>()
  return zones.flatMap((zone, start): ZoneArea[] => {
    if (zone === undefined || seen.has(start)) return []
    const cells = [start]
    seen.add(start)
    for (const cell of cells) {
      for (const next of beside(cell)) {
        if (next === undefined || seen.has(next) || zones[next] !== zone) continue
        seen.add(next)
        cells.push(next)
      }
    }
    if (cells.length < LEAST_POINTS) return []
    const inner = innermost(cells, beside).map(at)
    const middle = inner[Math.floor(inner.length / 2)] ?? at(start)
    const far = ({ xFt, yFt }: Point): number => Math.hypot(xFt - middle.xFt, yFt - middle.yFt)
    return [{ zone, middle, along: inner.toSorted((a, b) => far(a) - far(b)) }]
  })
}

/** The cells that are left last when the part is peeled from its border: a line of them where it is a strip. */
function innermost(cells: readonly number[], beside: (cell: number) => (number | undefined)[]): readonly number[] {
  // A cell is peeled in the round after the first of its neighbours, one at the border in the first.
  const part = new Set(cells)
  const rounds = new Map<number, number>()
  let peeled = cells.filter((cell) => beside(cell).some((next) => next === undefined || !part.has(next)))
  for (let round = 0; ; round++) {
    for (const cell of peeled) rounds.set(cell, round)
    const following = new Set<number>()
    for (const cell of peeled)
      for (const next of beside(cell))
        if (next !== undefined && part.has(next) && !rounds.has(next)) following.add(next)
    if (following.size === 0) return cells.filter((cell) => rounds.get(cell) === round)
    peeled = [...following]
  }
}

/** A line along an edge at the width of its strip, ft in the plane. */
export interface StripLine {
  readonly from: Point
  readonly to: Point
}

/**
 * Inner borders of the strips along edges that have zones of their own, cut to the plane.
 *
 * @param stripFt Width of the strips, level.
 * @param flatten cos of the slope: what makes a distance up the slope level.
 */
export function stripLines(
  { edges, corners }: Pick<ArrangedPlane, 'edges' | 'corners'>,
  stripFt: Feet,
  flatten: number,
): StripLine[] {
  return edges
    .filter(({ kind }) => kind !== 'valley')
    .flatMap(({ from, to }): StripLine[] => {
      // Level: x stays, y shrinks by the slope. Inside lies on the left of an edge.
      const [dx, dy] = [to.xFt - from.xFt, (to.yFt - from.yFt) * flatten]
      const length = Math.hypot(dx, dy)
      if (length === 0) return []
      const shift = { xFt: (-dy / length) * stripFt, yFt: ((dx / length) * stripFt) / flatten }
      const moved = (point: Point): Point => ({ xFt: point.xFt + shift.xFt, yFt: point.yFt + shift.yFt })
      return insideOf(corners, moved(from), moved(to))
    })
}

/** The pieces of a line that lie inside a figure. */
function insideOf(corners: readonly Point[], from: Point, to: Point): StripLine[] {
  const along = (share: number): Point => ({
    xFt: from.xFt + share * (to.xFt - from.xFt),
    yFt: from.yFt + share * (to.yFt - from.yFt),
  })
  const cuts = corners.flatMap((a, index) => {
    const b = corners[(index + 1) % corners.length] ?? a
    const [ax, ay] = [b.xFt - a.xFt, b.yFt - a.yFt]
    const [bx, by] = [to.xFt - from.xFt, to.yFt - from.yFt]
    const cross = bx * ay - by * ax
    if (Math.abs(cross) < 1e-9) return []
    const share = ((a.xFt - from.xFt) * ay - (a.yFt - from.yFt) * ax) / cross
    const onEdge = ((a.xFt - from.xFt) * by - (a.yFt - from.yFt) * bx) / cross
    return share > 0 && share < 1 && onEdge >= 0 && onEdge <= 1 ? [share] : []
  })
  const stops = [0, ...cuts.toSorted((a, b) => a - b), 1]
  return stops.slice(1).flatMap((end, index): StripLine[] => {
    const begin = stops[index] ?? 0
    if (end - begin < 1e-6 || !containsPoint(corners, along((begin + end) / 2))) return []
    return [{ from: along(begin), to: along(end) }]
  })
}
