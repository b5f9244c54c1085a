import type { Obstruction } from '../../project/index.js'
import type { FramingSpec } from './framing-spec.js'
import { distanceToSegmentFt, isInPlane, type PlaneGeometry } from '../model/index.js'

/** A rafter that a mount may use. */
export interface RafterPlace {
  /** Counted from the left end of the eave, 1 first. */
  readonly number: number
  readonly xIn: number
}

/** Number of the rafter at a place, 1 first. */
export function rafterNumber(framing: Pick<FramingSpec, 'spacingIn' | 'firstOffsetIn'>, xIn: number): number {
  return Math.round((xIn - framing.firstOffsetIn) / framing.spacingIn) + 1
}

/**
 * Rafters under a rail where a mount may stand: inside the plane, off its edge, clear of obstructions.
 *
 * @param yIn Height of the rail up the slope, in.
 * @param edgeIn Distance to keep from the edge of the plane, in.
 * @param clearanceIn Distance to keep from obstructions, in; an obstruction's own clearance wins when it is larger.
 */
export function rafterPlaces(
  plane: PlaneGeometry,
  framing: Pick<FramingSpec, 'spacingIn' | 'firstOffsetIn'>,
  obstructions: readonly Obstruction[],
  rail: { readonly startIn: number; readonly endIn: number; readonly yIn: number },
  edgeIn: number,
  clearanceIn: number,
): RafterPlace[] {
  const places: RafterPlace[] = []
  const first = Math.max(1, rafterNumber(framing, rail.startIn) - 1)
  for (let number = first; ; number++) {
    const xIn = framing.firstOffsetIn + (number - 1) * framing.spacingIn
    if (xIn > rail.endIn + 1e-9) return places
    if (xIn < rail.startIn - 1e-9) continue
    const point = { xFt: xIn / 12, yFt: rail.yIn / 12 }
    if (!isInPlane(plane, point)) continue
    if (plane.edges.some((edge) => distanceToSegmentFt(point, edge.from, edge.to) * 12 < edgeIn - 1e-9)) continue
    const blocked = obstructions.some((o) => {
      const keep = Math.max(clearanceIn, o.clearance_in ?? 0)
      const [x, y] = [o.x_ft * 12, o.y_ft * 12]
      return (
        xIn > x - keep &&
        xIn < x + o.width_ft * 12 + keep &&
        rail.yIn > y - keep &&
        rail.yIn < y + o.length_ft * 12 + keep
      )
    })
    if (!blocked) places.push({ number, xIn })
  }
}
