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
  /** Of a round thing these are those of a figure round it. */
  readonly corners: readonly Point[]
  /** An upright round thing, which has no faces. */
  readonly round?: Round
  /** Whether its sides are plumb. */
  readonly upright: boolean
  /** Share of light that passes, twelve months; undefined where none does. */
  readonly transmittance: readonly number[] | undefined
  /** Arrays that it shades; undefined for all. */
  readonly arrays: readonly string[] | undefined
  /** Roof plane whose body it is: it shades modules on that plane only where racks turn them. */
  readonly bodyOf?: string
  /** Whether it is a row of modules on racks. */
  readonly isRack?: boolean
}

/** A plumb cylinder with level ends, ft. */
export interface Round {
  readonly east: number
  readonly north: number
  readonly radiusFt: Feet
  readonly base: number
  readonly top: number
}

/** Less of a way than this inside a solid is a touch, ft. */
const TOUCH_FT = 1e-7

/**
 * Whether a line from a point meets a solid.
 *
 * @param growFt Moves every face outwards (negative: inwards), ft.
 */
export function isMet(
  { faces, round }: Pick<Solid, 'faces' | 'round'>,
  east: number,
  north: number,
  up: number,
  towards: Direction,
  growFt = 0,
): boolean {
  if (round !== undefined) return isRoundMet(round, east, north, up, towards, growFt)
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

function isRoundMet(
  { east: middleEast, north: middleNorth, radiusFt, base, top }: Round,
  east: number,
  north: number,
  up: number,
  towards: Direction,
  growFt: Feet,
): boolean {
  const reach = radiusFt + growFt
  if (reach <= 0) return false
  const [x, y] = [east - middleEast, north - middleNorth]
  const level = towards.east * towards.east + towards.north * towards.north
  const along = x * towards.east + y * towards.north
  const beside = x * x + y * y - reach * reach
  let near = 0
  let far = Infinity
  if (level > 1e-12) {
    const under = along * along - level * beside
    if (under < 0) return false
    const root = Math.sqrt(under)
    near = Math.max(0, (-along - root) / level)
    far = (root - along) / level
  } else if (beside > 0) return false
  if (Math.abs(towards.up) > 1e-12) {
    const one = (base - growFt - up) / towards.up
    const other = (top + growFt - up) / towards.up
    near = Math.max(near, Math.min(one, other))
    far = Math.min(far, Math.max(one, other))
  } else if (up < base - growFt || up > top + growFt) return false
  return near <= far + TOUCH_FT && far > TOUCH_FT
}

/** How deep a point lies in a solid, ft: the distance to the nearest face; below zero outside. */
export function depthFt({ faces, round }: Pick<Solid, 'faces' | 'round'>, { east, north, up }: Point): Feet {
  if (round !== undefined) {
    const aside = Math.hypot(east - round.east, north - round.north)
    return Math.min(round.radiusFt - aside, up - round.base, round.top - up)
  }
  let least = Infinity
  for (let at = 0; at < faces.length; at += 4) {
    const inside = faces[at + 3]! - (faces[at]! * east + faces[at + 1]! * north + faces[at + 2]! * up)
    if (inside < least) least = inside
  }
  return least
}
