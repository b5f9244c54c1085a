import {
  POINT_SIZE,
  ROUND,
  SEEN_AIM,
  SEEN_INSIDE,
  SEEN_SIZE,
  SEEN_SOLID,
  SOLID_DATA,
  SOLID_FACES,
  VIEW_POINTS,
  VIEW_SECTIONS,
  VIEW_SEEN,
  VIEW_SEEN_COUNT,
} from './layout.js'
import { ALONG, meets, TOUCH_FT } from './meets.js'
import { intAt, realAt, setReal, type Int, type Real } from './memory.js'

/** Points of a bypass section that are asked about. */
export const POINTS_PER_SECTION: Int = 16
/** Points from which one direction of the sky is looked at; the next pair of directions takes the next ones. */
export const POINTS_PER_LOOK: Int = 8

/** Works out how far inside of each face of each solid the points of a module lie, once for all directions. */
export function placePoints(view: Int): void {
  const points = intAt(view + VIEW_SECTIONS) * POINTS_PER_SECTION
  const first = intAt(view + VIEW_POINTS)
  const end = intAt(view + VIEW_SEEN) + intAt(view + VIEW_SEEN_COUNT) * SEEN_SIZE
  for (let seen = intAt(view + VIEW_SEEN); seen < end; seen += SEEN_SIZE) {
    const solid = intAt(seen + SEEN_SOLID)
    const count = intAt(solid + SOLID_FACES)
    let inside = intAt(seen + SEEN_INSIDE)
    for (let face: Int = 0; face < count; face += 1) {
      const at = solid + SOLID_DATA + (face << 5)
      for (let point: Int = 0; point < points; point += 1) {
        const here = first + point * POINT_SIZE
        const reach =
          realAt(at) * realAt(here) + realAt(at + 8) * realAt(here + 8) + realAt(at + 16) * realAt(here + 16)
        setReal(inside, realAt(at + 24) - reach)
        inside += 8
      }
    }
  }
}

/** Gets a solid ready for lines in one direction: 1 over the approach to each face, 0 along it. */
export function aim(seen: Int, east: Real, north: Real, up: Real): void {
  const solid = intAt(seen + SEEN_SOLID)
  const count = intAt(solid + SOLID_FACES)
  const into = intAt(seen + SEEN_AIM)
  for (let face: Int = 0; face < count; face += 1) {
    const at = solid + SOLID_DATA + (face << 5)
    const approach = realAt(at) * east + realAt(at + 8) * north + realAt(at + 16) * up
    setReal(into + (face << 3), approach > ALONG || approach < -ALONG ? 1 / approach : 0)
  }
}

/** 1 where a line from a point of the module, in the direction that the solid was aimed at, meets it. */
export function meetsPoint(view: Int, seen: Int, point: Int, east: Real, north: Real, up: Real): Int {
  const solid = intAt(seen + SEEN_SOLID)
  const count = intAt(solid + SOLID_FACES)
  if (count === ROUND) {
    const at = intAt(view + VIEW_POINTS) + point * POINT_SIZE
    return meets(solid, realAt(at), realAt(at + 8), realAt(at + 16), east, north, up, 0)
  }
  const step = (intAt(view + VIEW_SECTIONS) * POINTS_PER_SECTION) << 3
  let inside = intAt(seen + SEEN_INSIDE) + (point << 3)
  let aimed = intAt(seen + SEEN_AIM)
  const end = aimed + (count << 3)
  let near: Real = 0
  let far: Real = Infinity
  for (; aimed < end; aimed += 8) {
    const inverse = realAt(aimed)
    const way = realAt(inside) * inverse
    if (inverse > 0) {
      if (way < far) far = way
    } else if (inverse < 0) {
      if (way > near) near = way
    } else if (realAt(inside) < 0) return 0
    if (near > far + TOUCH_FT) return 0
    inside += step
  }
  return far > TOUCH_FT ? 1 : 0
}
