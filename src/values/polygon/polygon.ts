import type { Feet, SquareFeet } from '../units/index.js'

/** A point of a roof plane, ft: x along the eave to the right, y up the slope. */
export interface Point {
  readonly xFt: number
  readonly yFt: number
}

/** An upright rectangle of a roof plane, ft. */
export interface Box {
  /** Lower left corner, ft. */
  readonly xFt: number
  readonly yFt: number
  /** Size along the eave, ft. */
  readonly widthFt: Feet
  /** Size up the slope, ft. */
  readonly heightFt: Feet
}

/** Lengths below this count as nothing, ft (far below the width of a pencil line). */
export const TOLERANCE_FT = 1e-7

/** Pairs of each corner with the next, round the polygon. */
export function segmentsOf(corners: readonly Point[]): [Point, Point][] {
  return corners.map((corner, index) => [corner, corners[(index + 1) % corners.length] ?? corner])
}

/** Area by the shoelace formula, square ft; positive when the corners run counter-clockwise. */
export function signedAreaFt2(corners: readonly Point[]): SquareFeet {
  return segmentsOf(corners).reduce((sum, [a, b]) => sum + (a.xFt * b.yFt - b.xFt * a.yFt) / 2, 0)
}

/** Whether a point lies inside a polygon; what lies on an edge may fall either way. */
export function containsPoint(corners: readonly Point[], point: Point): boolean {
  // Asked for tens of thousands of points of one sheet: makes no lists.
  let inside = false
  for (let index = 0; index < corners.length; index++) {
    const a = corners[index]
    const b = corners[index + 1] ?? corners[0]
    if (a === undefined || b === undefined || a.yFt > point.yFt === b.yFt > point.yFt) continue
    const crossing = a.xFt + ((point.yFt - a.yFt) / (b.yFt - a.yFt)) * (b.xFt - a.xFt)
    if (crossing > point.xFt) inside = !inside
  }
  return inside
}

/** Corners of a rectangle, counter-clockwise from the lower left. */
export function boxCorners({ xFt, yFt, widthFt, heightFt }: Box): Point[] {
  return [
    { xFt, yFt },
    { xFt: xFt + widthFt, yFt },
    { xFt: xFt + widthFt, yFt: yFt + heightFt },
    { xFt, yFt: yFt + heightFt },
  ]
}

/** Distance from a point to a segment, ft. */
export function distanceToSegmentFt(point: Point, [a, b]: readonly [Point, Point]): Feet {
  const [dx, dy] = [b.xFt - a.xFt, b.yFt - a.yFt]
  const squared = dx * dx + dy * dy
  const along = squared === 0 ? 0 : ((point.xFt - a.xFt) * dx + (point.yFt - a.yFt) * dy) / squared
  const t = Math.min(1, Math.max(0, along))
  return Math.hypot(point.xFt - a.xFt - t * dx, point.yFt - a.yFt - t * dy)
}

/** Smallest distance between the outlines of two figures that do not cross, ft. */
export function distanceBetweenFt(first: readonly Point[], second: readonly Point[]): Feet {
  return Math.min(toOutlineFt(first, second), toOutlineFt(second, first))
}

function toOutlineFt(points: readonly Point[], outline: readonly Point[]): Feet {
  let least = Infinity
  for (const segment of segmentsOf(outline)) {
    for (const point of points) least = Math.min(least, distanceToSegmentFt(point, segment))
  }
  return least
}

/**
 * How far a convex figure reaches along x between two heights, or undefined where it does not lie between them.
 * A rectangle of those heights meets the figure exactly when it meets this stretch.
 */
export function reachBetween(
  convex: readonly Point[],
  lowFt: Feet,
  highFt: Feet,
): readonly [leftFt: Feet, rightFt: Feet] | undefined {
  let left = Infinity
  let right = -Infinity
  const count = convex.length
  for (let index = 0; index < count; index++) {
    const a = convex[index]
    const b = convex[index + 1 === count ? 0 : index + 1]
    if (a === undefined || b === undefined) continue
    const bottom = Math.max(Math.min(a.yFt, b.yFt), lowFt)
    const top = Math.min(Math.max(a.yFt, b.yFt), highFt)
    // An edge along the very border of the band does not reach into it; the other edges tell.
    if (bottom > top || top <= lowFt + TOLERANCE_FT || bottom >= highFt - TOLERANCE_FT) continue
    const level = Math.abs(b.yFt - a.yFt) < TOLERANCE_FT
    const slope = level ? 0 : (b.xFt - a.xFt) / (b.yFt - a.yFt)
    const x0 = level ? a.xFt : a.xFt + slope * (bottom - a.yFt)
    const x1 = level ? b.xFt : a.xFt + slope * (top - a.yFt)
    left = Math.min(left, x0, x1)
    right = Math.max(right, x0, x1)
  }
  return right < left ? undefined : [left, right]
}

/**
 * Whether two convex figures overlap by more than a touch (separating axis test).
 *
 * @param slackFt Overlap that still counts as a touch, in the unit of the figures.
 */
export function convexOverlap(first: readonly Point[], second: readonly Point[], slackFt = TOLERANCE_FT): boolean {
  const pair = { first, second, slackFt }
  // Along x and along y first: that tells most figures of a roof apart.
  if (areApart(pair, 1, 0) || areApart(pair, 0, 1)) return false
  return !hasSeparatingEdge(first, pair) && !hasSeparatingEdge(second, pair)
}

interface Pair {
  readonly first: readonly Point[]
  readonly second: readonly Point[]
  readonly slackFt: Feet
}

function hasSeparatingEdge(outline: readonly Point[], pair: Pair): boolean {
  let before = outline.at(-1)
  for (const corner of outline) {
    const [dx, dy] = before === undefined ? [0, 0] : [corner.xFt - before.xFt, corner.yFt - before.yFt]
    before = corner
    const length = Math.hypot(dx, dy)
    if (length >= TOLERANCE_FT && areApart(pair, dy / length, -dx / length)) return true
  }
  return false
}

/** Whether two figures do not overlap along a direction of length 1. */
function areApart({ first, second, slackFt }: Pair, nx: number, ny: number): boolean {
  let [low1, high1, low2, high2] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const { xFt, yFt } of first) {
    const along = xFt * nx + yFt * ny
    if (along < low1) low1 = along
    if (along > high1) high1 = along
  }
  for (const { xFt, yFt } of second) {
    const along = xFt * nx + yFt * ny
    if (along < low2) low2 = along
    if (along > high2) high2 = along
  }
  return high1 <= low2 + slackFt || high2 <= low1 + slackFt
}

/** The first two edges that cross or touch away from a shared corner, as indices, or undefined for a simple polygon. */
export function crossingEdges(corners: readonly Point[]): readonly [number, number] | undefined {
  const segments = segmentsOf(corners)
  for (const [i, first] of segments.entries()) {
    for (let j = i + 1; j < segments.length; j++) {
      const second = segments[j]
      if (second === undefined) continue
      const adjacent = j === i + 1 || (i === 0 && j === segments.length - 1)
      if (adjacent ? foldsBack(first, second) : segmentsMeet(first, second)) return [i, j]
    }
  }
  return undefined
}

function turn(a: Point, b: Point, c: Point): number {
  return (b.xFt - a.xFt) * (c.yFt - a.yFt) - (b.yFt - a.yFt) * (c.xFt - a.xFt)
}

function segmentsMeet([a, b]: [Point, Point], [c, d]: [Point, Point]): boolean {
  const crosses = turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0
  const touches = [distanceToSegmentFt(a, [c, d]), distanceToSegmentFt(b, [c, d]), distanceToSegmentFt(c, [a, b])]
  return crosses || Math.min(...touches, distanceToSegmentFt(d, [a, b])) < TOLERANCE_FT
}

/** Neighbouring edges that run back over each other. */
function foldsBack([a, b]: [Point, Point], [c, d]: [Point, Point]): boolean {
  const [shared, before, after] = Math.hypot(b.xFt - c.xFt, b.yFt - c.yFt) < TOLERANCE_FT ? [b, a, d] : [a, b, c]
  const dot =
    (before.xFt - shared.xFt) * (after.xFt - shared.xFt) + (before.yFt - shared.yFt) * (after.yFt - shared.yFt)
  return Math.abs(turn(before, shared, after)) < TOLERANCE_FT && dot > 0
}
