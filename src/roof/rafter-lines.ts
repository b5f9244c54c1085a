import type { Obstruction } from '../project/index.js'
import { containsPoint, distanceToSegmentFt, feetOf, inchesOf, type Inches, type Point } from '../values/index.js'

/** Rafters that run up the slope at one distance. */
export interface RafterGrid {
  /** Centre to centre, in. */
  readonly spacingIn: Inches
  /** Centre of the first rafter from the left end of the eave, in. */
  readonly firstOffsetIn: Inches
}

/** A rafter that a mount may use. */
export interface RafterLine {
  /** Counted from the left end of the eave, 1 first. */
  readonly number: number
  readonly xIn: number
}

/** An edge of a plane, counter-clockwise from the left end of the eave, ft. */
export interface EdgeLine {
  readonly from: Point
  readonly to: Point
}

/** Where a mount may stand on a plane. */
export interface MountField {
  readonly plane: { readonly edges: readonly EdgeLine[] }
  readonly framing: RafterGrid
  readonly obstructions: readonly Obstruction[]
  /** Distance to keep from the edge of the plane, in. */
  readonly edgeIn: Inches
  /** Distance to keep from obstructions, in; an obstruction's own clearance wins when it is larger. */
  readonly clearanceIn: Inches
}

/** Number of the rafter at a place, 1 first. */
export function rafterNumber(grid: RafterGrid, xIn: number): number {
  return Math.round((xIn - grid.firstOffsetIn) / grid.spacingIn) + 1
}

/** Whether a point lies in a plane or on its edge. */
export function isOnPlane(edges: readonly EdgeLine[], point: Point): boolean {
  const onEdge = edges.some(({ from, to }) => distanceToSegmentFt(point, [from, to]) < 1e-6)
  return (
    onEdge ||
    containsPoint(
      edges.map((edge) => edge.from),
      point,
    )
  )
}

/**
 * Rafters under a rail where a mount may stand: inside the plane, off its edge, clear of obstructions.
 *
 * @param rail Its ends along the eave and its height up the slope, in.
 */
export function rafterPlaces(
  { plane, framing, obstructions, edgeIn, clearanceIn }: MountField,
  rail: { readonly startIn: Inches; readonly endIn: Inches; readonly yIn: number },
): RafterLine[] {
  const places: RafterLine[] = []
  const first = Math.max(1, rafterNumber(framing, rail.startIn) - 1)
  for (let number = first; ; number++) {
    const xIn = framing.firstOffsetIn + (number - 1) * framing.spacingIn
    if (xIn > rail.endIn + 1e-9) return places
    if (xIn < rail.startIn - 1e-9) continue
    const point = { xFt: feetOf(xIn), yFt: feetOf(rail.yIn) }
    if (!isOnPlane(plane.edges, point)) continue
    if (plane.edges.some((edge) => inchesOf(distanceToSegmentFt(point, [edge.from, edge.to])) < edgeIn - 1e-9)) continue
    const blocked = obstructions.some((o) => {
      const keep = Math.max(clearanceIn, o.clearance_in ?? 0)
      const [x, y] = [inchesOf(o.x_ft), inchesOf(o.y_ft)]
      return (
        xIn > x - keep &&
        xIn < x + inchesOf(o.width_ft) + keep &&
        rail.yIn > y - keep &&
        rail.yIn < y + inchesOf(o.length_ft) + keep
      )
    })
    if (!blocked) places.push({ number, xIn })
  }
}
