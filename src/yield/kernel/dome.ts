import { isInCone } from './beam.js'
import { aim, meetsPoint, placePoints, POINTS_PER_LOOK, POINTS_PER_SECTION } from './face-points.js'
import {
  CELL_AXIS,
  CELL_CORNERS,
  CELL_COSINE,
  CELL_COUNT,
  CELL_RAYS,
  CELL_SINE,
  CELL_SIZE,
  OPAQUE,
  POINT_SIZE,
  RAY_NUMBER,
  RAY_PAIR,
  RAY_SIZE,
  SEEN_ABOVE,
  SEEN_OWN_ROOF,
  SEEN_SIZE,
  SEEN_SOLID,
  SEEN_THING,
  SEEN_WHOLE,
  VIEW_LOOKS,
  VIEW_MIDDLE,
  VIEW_RADIUS,
  VIEW_SECTIONS,
  VIEW_SEEN,
  VIEW_SEEN_COUNT,
  VIEW_TRANSMITTANCE,
} from './layout.js'
import { meets } from './meets.js'
import { byteAt, intAt, realAt, setInt, setReal, toReal, type Int, type Real } from './memory.js'

/**
 * Works out what solids and the horizon hide of a half of the directions over a plane.
 *
 * @param cells Address of the first of `count` cells.
 * @param isSky 1 for the sky, 0 for the ground, where the module's own roof does not count.
 * @param below A byte a direction, by its number: 1 where the far horizon hides it; 0 for no horizon.
 * @param near Room for twice as many whole numbers as the view has solids.
 * @param passes Room for twelve numbers.
 * @param months Twelve numbers; takes what things hide that let some light through, in directions.
 * @returns How many directions are hidden, each by the share of the face that it is hidden from.
 */
export function dome(
  view: Int,
  cells: Int,
  count: Int,
  isSky: Int,
  below: Int,
  near: Int,
  passes: Int,
  months: Int,
): Real {
  placePoints(view)
  const first = intAt(view + VIEW_SEEN)
  const seenEnd = first + intAt(view + VIEW_SEEN_COUNT) * SEEN_SIZE
  const touching = near + (intAt(view + VIEW_SEEN_COUNT) << 2)
  let sum: Real = 0
  for (let each: Int = 0; each < count; each += 1) {
    const cell = cells + each * CELL_SIZE
    let isWhole: Int = 0
    let nearCount: Int = 0
    for (let seen: Int = first; seen < seenEnd && isWhole === 0; seen += SEEN_SIZE) {
      if (isSky === 0 && intAt(seen + SEEN_OWN_ROOF) !== 0) continue
      if (isApart(cell, isSky === 0 ? seen + SEEN_WHOLE : seen + SEEN_ABOVE) !== 0) continue
      if (intAt(seen + SEEN_THING) === OPAQUE && isCovered(view, cell, intAt(seen + SEEN_SOLID)) !== 0) isWhole = 1
      setInt(near + (nearCount << 2), seen)
      nearCount += 1
    }
    if (isWhole !== 0) sum += toReal(intAt(cell + CELL_COUNT))
    else if (nearCount > 0 || below !== 0)
      sum += cellHidden(view, cell, isSky, below, near, nearCount, touching, passes, months)
  }
  return sum
}

/** 1 where no direction of a cell lies in the cone of a solid. */
function isApart(cell: Int, cone: Int): Int {
  const cosine = realAt(cone + 24)
  if (cosine < -1) return 0
  const half = realAt(cell + CELL_COSINE)
  const between =
    realAt(cone) * realAt(cell + CELL_AXIS) +
    realAt(cone + 8) * realAt(cell + CELL_AXIS + 8) +
    realAt(cone + 16) * realAt(cell + CELL_AXIS + 16)
  // Both angles together: beyond half a turn nothing is apart.
  if (cosine < -half) return 0
  const sine = Math.sqrt(Math.max(0, 1 - cosine * cosine))
  return between < cosine * half - sine * realAt(cell + CELL_SINE) - 1e-9 ? 1 : 0
}

/** 1 where a solid hides all directions of a cell from all of the face: those in which a line meets what is convex lie together. */
function isCovered(view: Int, cell: Int, solid: Int): Int {
  const radius = realAt(view + VIEW_RADIUS)
  const east = realAt(view + VIEW_MIDDLE)
  const north = realAt(view + VIEW_MIDDLE + 8)
  const up = realAt(view + VIEW_MIDDLE + 16)
  for (let corner: Int = cell + CELL_CORNERS; corner < cell + CELL_SIZE; corner += POINT_SIZE) {
    if (meets(solid, east, north, up, realAt(corner), realAt(corner + 8), realAt(corner + 16), -radius) === 0) return 0
  }
  return 1
}

/** What is hidden of the directions of one cell. */
function cellHidden(
  view: Int,
  cell: Int,
  isSky: Int,
  below: Int,
  near: Int,
  nearCount: Int,
  touching: Int,
  passes: Int,
  months: Int,
): Real {
  const middleEast = realAt(view + VIEW_MIDDLE)
  const middleNorth = realAt(view + VIEW_MIDDLE + 8)
  const middleUp = realAt(view + VIEW_MIDDLE + 16)
  const radius = realAt(view + VIEW_RADIUS)
  const cone: Int = isSky === 0 ? SEEN_WHOLE : SEEN_ABOVE
  let sum: Real = 0
  const first = cell + intAt(cell + CELL_RAYS)
  const end = first + intAt(cell + CELL_COUNT) * RAY_SIZE
  for (let ray = first; ray < end; ray += RAY_SIZE) {
    const east = realAt(ray)
    const north = realAt(ray + 8)
    const up = realAt(ray + 16)
    let isHidden: Int = isSky === 0 || below === 0 ? 0 : byteAt(below + intAt(ray + RAY_NUMBER))
    let count: Int = 0
    for (let each: Int = 0; each < nearCount && isHidden === 0; each += 1) {
      const seen = intAt(near + (each << 2))
      if (isInCone(seen + cone, east, north, up) === 0) continue
      const solid = intAt(seen + SEEN_SOLID)
      // From most directions a thing hides all of the face, or nothing.
      if (meets(solid, middleEast, middleNorth, middleUp, east, north, up, radius) === 0) continue
      if (
        intAt(seen + SEEN_THING) === OPAQUE &&
        meets(solid, middleEast, middleNorth, middleUp, east, north, up, -radius) !== 0
      )
        isHidden = 1
      aim(seen, east, north, up)
      setInt(touching + (count << 2), seen)
      count += 1
    }
    if (isHidden !== 0) sum += 1
    else if (count > 0) sum += hiddenFromFace(view, ray, touching, count, passes, months)
  }
  return sum
}

/** Share of some points of the face from which solids hide a direction; what lets light through goes into the months. */
function hiddenFromFace(view: Int, ray: Int, touching: Int, count: Int, passes: Int, months: Int): Real {
  const east = realAt(ray)
  const north = realAt(ray + 8)
  const up = realAt(ray + 16)
  if (count === 1) {
    const only = intAt(touching)
    const thing = intAt(only + SEEN_THING)
    if (
      thing !== OPAQUE &&
      meets(
        intAt(only + SEEN_SOLID),
        realAt(view + VIEW_MIDDLE),
        realAt(view + VIEW_MIDDLE + 8),
        realAt(view + VIEW_MIDDLE + 16),
        east,
        north,
        up,
        -realAt(view + VIEW_RADIUS),
      ) !== 0
    ) {
      addMonths(months, intAt(view + VIEW_TRANSMITTANCE) + thing * 96, 1)
      return 0
    }
  }
  const looks = (intAt(view + VIEW_SECTIONS) * POINTS_PER_SECTION) / POINTS_PER_LOOK
  // Mirrored directions look from mirrored points, so that a mirrored house is as bright.
  const pair = intAt(ray + RAY_PAIR)
  const look = ((pair >> 1) % looks) ^ (pair & 1)
  const from = intAt(view + VIEW_LOOKS) + ((look * POINTS_PER_LOOK) << 2)
  const end = from + (POINTS_PER_LOOK << 2)
  const share: Real = 1 / toReal(POINTS_PER_LOOK)
  let hidden: Real = 0
  for (let at = from; at < end; at += 4) {
    const point = intAt(at)
    let things: Int = 0
    let passed: Int = OPAQUE
    let isHidden: Int = 0
    for (let each: Int = 0; each < count && isHidden === 0; each += 1) {
      const seen = intAt(touching + (each << 2))
      const thing = intAt(seen + SEEN_THING)
      // Parts of one thing stand in a row, and light passes it once.
      if (thing !== OPAQUE && thing === passed) continue
      if (meetsPoint(view, seen, point, east, north, up) === 0) continue
      if (thing === OPAQUE) isHidden = 1
      else {
        passThrough(passes, intAt(view + VIEW_TRANSMITTANCE) + thing * 96, things)
        things += 1
        passed = thing
      }
    }
    if (isHidden !== 0) hidden += share
    else if (things > 0) addMonths(months, passes, share)
  }
  return hidden
}

/** Light that passes one thing more, by month. */
function passThrough(passes: Int, transmittance: Int, before: Int): void {
  for (let month: Int = 0; month < 96; month += 8) {
    const through = realAt(transmittance + month)
    setReal(passes + month, before === 0 ? through : realAt(passes + month) * through)
  }
}

function addMonths(months: Int, through: Int, share: Real): void {
  for (let month: Int = 0; month < 96; month += 8) {
    setReal(months + month, realAt(months + month) + share * (1 - realAt(through + month)))
  }
}
