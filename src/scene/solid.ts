import type { Direction, Point } from '../sun/index.js'
import type { Feet } from '../values/index.js'

/**
 * A convex thing in space, ft east, north and up: everything on the inner side of all its faces. What is not convex is
 * several of them.
 */
export interface Solid {
  /** Path of the thing in the project file, such as `site.obstacles.maple`. */
  readonly path: string
  /** Four numbers a face: outward normal of length 1 (east, north, up), and its distance from the origin along it, ft. */
  readonly faces: Float64Array
  readonly corners: readonly Point[]
  /** Whether its sides are plumb. */
  readonly upright: boolean
  /** Share of light that passes, twelve months; undefined where none does. */
  readonly transmittance: readonly number[] | undefined
  /** Arrays that it shades; undefined for all. */
  readonly arrays: readonly string[] | undefined
  /** Roof plane whose body it is: it does not shade modules on that plane. */
  readonly bodyOf?: string
  /** Module that is this plate: it does not shade itself. */
  readonly moduleId?: string
}

/** Less of a way than this inside a solid is a touch, ft. */
const TOUCH_FT = 1e-7

/**
 * Whether a line from a point meets a solid.
 *
 * @param growFt Moves every face outwards (negative: inwards), ft.
 */
export function isMet(
  { faces }: Pick<Solid, 'faces'>,
  east: number,
  north: number,
  up: number,
  towards: Direction,
  growFt = 0,
): boolean {
  let near = 0
  let far = Infinity
  for (let at = 0; at < faces.length; at += 4) {
    const approach = faces[at]! * towards.east + faces[at + 1]! * towards.north + faces[at + 2]! * towards.up
    const inside = faces[at + 3]! + growFt - (faces[at]! * east + faces[at + 1]! * north + faces[at + 2]! * up)
    if (approach > 1e-12) {
      const leaves = inside / approach
      if (leaves < far) far = leaves
    } else if (approach < -1e-12) {
      const enters = inside / approach
      if (enters > near) near = enters
    } else if (inside < 0) return false
    if (near > far + TOUCH_FT) return false
  }
  return far > TOUCH_FT
}

/** How deep a point lies in a solid, ft: the distance to the nearest face; below zero outside. */
export function depthFt({ faces }: Pick<Solid, 'faces'>, { east, north, up }: Point): Feet {
  let least = Infinity
  for (let at = 0; at < faces.length; at += 4) {
    const inside = faces[at + 3]! - (faces[at]! * east + faces[at + 1]! * north + faces[at + 2]! * up)
    if (inside < least) least = inside
  }
  return least
}
