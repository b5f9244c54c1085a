import {
  POINT_SIZE,
  SEEN_ABOVE,
  SEEN_SIZE,
  SEEN_SOLID,
  SEEN_THING,
  VIEW_LOOKS,
  VIEW_MIDDLE,
  VIEW_NORMAL,
  VIEW_OPAQUE_COUNT,
  VIEW_RADIUS,
  VIEW_SECTIONS,
  VIEW_SEEN,
  VIEW_SEEN_COUNT,
} from './layout.js'
import { aim, meetsPoint, placePoints, POINTS_PER_LOOK, POINTS_PER_SECTION } from './face-points.js'
import { meets } from './meets.js'
import { byteAt, intAt, realAt, setByte, setFloat, setInt, toReal, type Int, type Real } from './memory.js'

/** Points of the face that are asked about things that let light through: two looks, which are mirror images. */
const POROUS_POINTS: Int = 2 * POINTS_PER_LOOK

/**
 * Works out the shadows on a module for every place of the sun.
 *
 * @param places Addresses of the directions of the sun (see `POINT_SIZE`) are `directions + 24 * place`; `places` lists `count` of
 *   them, 32 bits each.
 * @param below A byte a place: 1 where the far horizon hides the sun; 0 for no horizon.
 * @param near Room for as many whole numbers as the view has solids.
 * @param lit Single precision a place: share of the face that is lit. @param free A byte a place: sections without shadow.
 * @param touched A byte a place: 1 where anything shades.
 * @param behind Single precision a place, thing after thing, each of `size` places.
 * @returns 1 where solids shade anywhere, plus 2 where things that let light through do.
 */
export function beam(
  view: Int,
  directions: Int,
  places: Int,
  count: Int,
  below: Int,
  near: Int,
  lit: Int,
  free: Int,
  touched: Int,
  behind: Int,
  size: Int,
): Int {
  placePoints(view)
  const sections = intAt(view + VIEW_SECTIONS)
  for (let place: Int = 0; place < size; place += 1) {
    setFloat(lit + (place << 2), 1)
    setByte(free + place, sections)
    setByte(touched + place, 0)
  }
  const opaqueEnd = intAt(view + VIEW_SEEN) + intAt(view + VIEW_OPAQUE_COUNT) * SEEN_SIZE
  const seenEnd = intAt(view + VIEW_SEEN) + intAt(view + VIEW_SEEN_COUNT) * SEEN_SIZE
  const normalEast = realAt(view + VIEW_NORMAL)
  const normalNorth = realAt(view + VIEW_NORMAL + 8)
  const normalUp = realAt(view + VIEW_NORMAL + 16)
  let found: Int = 0
  for (let each: Int = 0; each < count; each += 1) {
    const place = intAt(places + (each << 2))
    const at = directions + place * POINT_SIZE
    const east = realAt(at)
    const north = realAt(at + 8)
    const up = realAt(at + 16)
    if (normalEast * east + normalNorth * north + normalUp * up <= 0) continue
    const isBelow: Int = below === 0 ? 0 : byteAt(below + place)
    if (shadeOpaque(view, east, north, up, isBelow, near, lit + (place << 2), free + place) !== 0) {
      found |= 1
      setByte(touched + place, 1)
    }
    // Things in turn; the parts of each stand in a row.
    for (let seen: Int = opaqueEnd; seen < seenEnd;) {
      const thing = intAt(seen + SEEN_THING)
      let end: Int = seen
      while (end < seenEnd && intAt(end + SEEN_THING) === thing) end += SEEN_SIZE
      const share = shareBehind(view, seen, end, east, north, up, near)
      setFloat(behind + ((thing * size + place) << 2), share)
      if (share > 0) {
        found |= 2
        setByte(touched + place, 1)
      }
      seen = end
    }
  }
  return found
}

/** 1 where a direction lies in the cone of a solid. */
export function isInCone(cone: Int, east: Real, north: Real, up: Real): Int {
  return realAt(cone) * east + realAt(cone + 8) * north + realAt(cone + 16) * up >= realAt(cone + 24) ? 1 : 0
}

/** Shadow of horizon and solids on the face: 1 where there is any. */
function shadeOpaque(view: Int, east: Real, north: Real, up: Real, isBelow: Int, near: Int, lit: Int, free: Int): Int {
  if (isBelow !== 0) {
    setFloat(lit, 0)
    setByte(free, 0)
    return 1
  }
  const middleEast = realAt(view + VIEW_MIDDLE)
  const middleNorth = realAt(view + VIEW_MIDDLE + 8)
  const middleUp = realAt(view + VIEW_MIDDLE + 16)
  const radius = realAt(view + VIEW_RADIUS)
  const first = intAt(view + VIEW_SEEN)
  const end = first + intAt(view + VIEW_OPAQUE_COUNT) * SEEN_SIZE
  let nearCount: Int = 0
  for (let seen: Int = first; seen < end; seen += SEEN_SIZE) {
    if (isInCone(seen + SEEN_ABOVE, east, north, up) === 0) continue
    const solid = intAt(seen + SEEN_SOLID)
    if (meets(solid, middleEast, middleNorth, middleUp, east, north, up, radius) === 0) continue
    if (meets(solid, middleEast, middleNorth, middleUp, east, north, up, -radius) !== 0) {
      setFloat(lit, 0)
      setByte(free, 0)
      return 1
    }
    aim(seen, east, north, up)
    setInt(near + (nearCount << 2), seen)
    nearCount += 1
  }
  if (nearCount === 0) return 0
  const sections = intAt(view + VIEW_SECTIONS)
  let point: Int = 0
  let shaded: Int = 0
  let shadedSections: Int = 0
  for (let section: Int = 0; section < sections; section += 1) {
    let inSection: Int = 0
    for (let each: Int = 0; each < POINTS_PER_SECTION; each += 1) {
      inSection += isHidden(view, near, nearCount, point, east, north, up)
      point += 1
    }
    shaded += inSection
    if (inSection > 0) shadedSections += 1
  }
  if (shaded === 0) return 0
  setFloat(lit, 1 - toReal(shaded) / toReal(sections * POINTS_PER_SECTION))
  setByte(free, sections - shadedSections)
  return 1
}

/** 1 where any of some solids hides a direction from a point. */
function isHidden(view: Int, near: Int, count: Int, point: Int, east: Real, north: Real, up: Real): Int {
  for (let each: Int = 0; each < count; each += 1) {
    if (meetsPoint(view, intAt(near + (each << 2)), point, east, north, up) !== 0) return 1
  }
  return 0
}

/** Share of the face behind the parts of one thing. */
function shareBehind(view: Int, from: Int, to: Int, east: Real, north: Real, up: Real, near: Int): Real {
  const middleEast = realAt(view + VIEW_MIDDLE)
  const middleNorth = realAt(view + VIEW_MIDDLE + 8)
  const middleUp = realAt(view + VIEW_MIDDLE + 16)
  const radius = realAt(view + VIEW_RADIUS)
  let nearCount: Int = 0
  for (let seen: Int = from; seen < to; seen += SEEN_SIZE) {
    if (isInCone(seen + SEEN_ABOVE, east, north, up) === 0) continue
    const solid = intAt(seen + SEEN_SOLID)
    if (meets(solid, middleEast, middleNorth, middleUp, east, north, up, radius) === 0) continue
    if (meets(solid, middleEast, middleNorth, middleUp, east, north, up, -radius) !== 0) return 1
    aim(seen, east, north, up)
    setInt(near + (nearCount << 2), seen)
    nearCount += 1
  }
  if (nearCount === 0) return 0
  const points = intAt(view + VIEW_LOOKS)
  let hidden: Int = 0
  for (let each: Int = 0; each < POROUS_POINTS; each += 1)
    hidden += isHidden(view, near, nearCount, intAt(points + (each << 2)), east, north, up)
  return toReal(hidden) / toReal(POROUS_POINTS)
}
