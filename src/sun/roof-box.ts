import { radiansOf, type Degrees, type Feet } from '../values/index.js'

/**
 * A thing that stands on the roof plane with plumb sides: its footprint on the slope, ft in plane coordinates. All
 * heights are plumb, above the roof right below.
 */
export interface RoofBox {
  readonly xFt: number
  readonly yFt: number
  readonly widthFt: Feet
  readonly lengthFt: Feet
  /** Height of the top at the upper edge of the footprint. */
  readonly heightFt: Feet
  /** How much higher the top stands above the roof for each ft down the slope: the sine of the slope for a level top. */
  readonly risePerFt: number
}

/** How to get from plane coordinates to plumb ones, in which y is the foot of the plumb line and height is plumb. */
export interface PlumbFrame {
  /** ft down the slope for each ft away from the surface. */
  readonly shift: number
  /** Plumb ft for each ft away from the surface. */
  readonly stretch: number
}

/** On a steeper plane things stand at right angles to it, as on a wall. */
const WALL_DEG = 60

/** The plumb frame of a plane; on a wall, plane coordinates as they are. */
export function plumbFrame(tiltDeg: Degrees): PlumbFrame {
  if (tiltDeg > WALL_DEG) return { shift: 0, stretch: 1 }
  const tilt = radiansOf(tiltDeg)
  return { shift: Math.tan(tilt), stretch: 1 / Math.cos(tilt) }
}

/** Rise of a level top above a plane for each ft down its slope; 0 on a wall. */
export function levelRise(tiltDeg: Degrees): number {
  return tiltDeg > WALL_DEG ? 0 : Math.sin(radiansOf(tiltDeg))
}

/** The line towards a light source from points of one height, in plumb coordinates: see PlumbFrame. */
export interface PlumbRay {
  /** Plumb height of the points above the surface, ft. */
  readonly heightFt: Feet
  /** Direction: along the eave, up the slope, plumb away from the surface. */
  readonly alongX: number
  readonly alongY: number
  readonly away: number
}

/**
 * Whether a box on the roof stands in the line from a point of the same plane towards a light source. Everything in
 * plumb coordinates: see PlumbFrame.
 *
 * @param box Its footprint and heights, ft.
 * @param x Point along the eave, ft.
 * @param y Foot of the point up the slope, ft.
 * @param ray Height of the point and direction of the light; one object serves all points of a module.
 */
export function isBehindBox(box: RoofBox, x: number, y: number, ray: PlumbRay): boolean {
  const { heightFt: height, alongX, alongY, away } = ray
  const highest = box.heightFt + box.risePerFt * box.lengthFt
  if (height >= highest || away <= 0) return false
  const reach = (highest - height) / away
  // Where the line leaves the box's height it has run alongX * reach: the shadow is short or it misses.
  const endX = x + alongX * reach
  const endY = y + alongY * reach
  const right = box.xFt + box.widthFt
  const top = box.yFt + box.lengthFt
  if ((x < box.xFt && endX < box.xFt) || (x > right && endX > right)) return false
  if ((y < box.yFt && endY < box.yFt) || (y > top && endY > top)) return false
  let near = 0
  let far = reach
  if (Math.abs(alongX) > 1e-12) {
    const a = (box.xFt - x) / alongX
    const b = (right - x) / alongX
    near = Math.max(near, Math.min(a, b))
    far = Math.min(far, Math.max(a, b))
  }
  if (Math.abs(alongY) > 1e-12) {
    const a = (box.yFt - y) / alongY
    const b = (top - y) / alongY
    near = Math.max(near, Math.min(a, b))
    far = Math.min(far, Math.max(a, b))
  }
  if (near > far) return false
  // Line and top are both straight, so that the line is lowest against the top where it enters or leaves.
  const over = height - box.heightFt - box.risePerFt * (top - y)
  const overPerReach = away + box.risePerFt * alongY
  return over + overPerReach * (overPerReach > 0 ? near : far) <= 0
}
