import { ROUND, SOLID_DATA, SOLID_FACES } from './layout.js'
import { intAt, realAt, type Int, type Real } from './memory.js'

/** Less of a way than this inside a solid is a touch, ft. */
export const TOUCH_FT: Real = 1e-7
/** Below this a line runs along a face. */
export const ALONG: Real = 1e-12

/**
 * 1 where a line from a point meets a solid, else 0; see `isMet` of the scene, which asks the same of one solid.
 *
 * @param grow Moves every face outwards (negative: inwards), ft.
 */
export function meets(
  solid: Int,
  east: Real,
  north: Real,
  up: Real,
  toEast: Real,
  toNorth: Real,
  toUp: Real,
  grow: Real,
): Int {
  const count: Int = intAt(solid + SOLID_FACES)
  if (count === ROUND) return meetsRound(solid + SOLID_DATA, east, north, up, toEast, toNorth, toUp, grow)
  let near: Real = 0
  let far: Real = Infinity
  const end: Int = solid + SOLID_DATA + (count << 5)
  for (let at: Int = solid + SOLID_DATA; at < end; at += 32) {
    const faceEast = realAt(at)
    const faceNorth = realAt(at + 8)
    const faceUp = realAt(at + 16)
    const approach = faceEast * toEast + faceNorth * toNorth + faceUp * toUp
    const inside = realAt(at + 24) + grow - (faceEast * east + faceNorth * north + faceUp * up)
    if (approach > ALONG) {
      const leaves = inside / approach
      if (leaves < far) far = leaves
    } else if (approach < -ALONG) {
      const enters = inside / approach
      if (enters > near) near = enters
    } else if (inside < 0) return 0
    if (near > far + TOUCH_FT) return 0
  }
  return far > TOUCH_FT ? 1 : 0
}

function meetsRound(
  data: Int,
  east: Real,
  north: Real,
  up: Real,
  toEast: Real,
  toNorth: Real,
  toUp: Real,
  grow: Real,
): Int {
  const reach = realAt(data + 16) + grow
  if (reach <= 0) return 0
  const base = realAt(data + 24) - grow
  const top = realAt(data + 32) + grow
  const x = east - realAt(data)
  const y = north - realAt(data + 8)
  const level = toEast * toEast + toNorth * toNorth
  const along = x * toEast + y * toNorth
  const beside = x * x + y * y - reach * reach
  let near: Real = 0
  let far: Real = Infinity
  if (level > ALONG) {
    const under = along * along - level * beside
    if (under < 0) return 0
    const root = Math.sqrt(under)
    near = Math.max(0, (-along - root) / level)
    far = (root - along) / level
  } else if (beside > 0) return 0
  if (Math.abs(toUp) > ALONG) {
    const one = (base - up) / toUp
    const other = (top - up) / toUp
    near = Math.max(near, Math.min(one, other))
    far = Math.min(far, Math.max(one, other))
  } else if (up < base || up > top) return 0
  return near <= far + TOUCH_FT && far > TOUCH_FT ? 1 : 0
}
