import type { ModuleFace, Solid } from '../../scene/index.js'
import { dot, type HorizonPoint, type Point } from '../../sun/index.js'
import type { Feet } from '../../values/index.js'
import { facePoints, type FacePoints } from './face-points.js'

/** A cone of directions; none lies outside it in which a solid is seen. */
export interface Cone {
  readonly east: number
  readonly north: number
  readonly up: number
  /** Least cosine of the angle to its axis; below -1 for every direction. */
  readonly cosine: number
}

/** A solid that a module may see. */
export interface SeenSolid {
  readonly solid: Solid
  /** Where it is seen above level, and where it is seen at all. */
  readonly above: Cone
  readonly whole: Cone
  /** Whether it is the module's own roof, which reflects as the ground does. */
  readonly isOwnRoof: boolean
}

/** A module, and everything that may stand between it and the light. */
export interface ModuleView extends FacePoints {
  readonly face: ModuleFace
  /** Half of the diagonal of its face. */
  readonly radiusFt: Feet
  readonly sections: number
  readonly opaque: readonly SeenSolid[]
  /** Those that let some light through. */
  readonly porous: readonly SeenSolid[]
  readonly horizon: readonly HorizonPoint[]
}

/** Solids that reach less than this in front of a face are level with it, ft. */
const IN_FRONT_FT = 1e-6

/**
 * What a module sees.
 *
 * @param sections Bypass sections of the module.
 * @param sectionsAlongX Whether they lie side by side along the lower edge (portrait), or up the face (landscape).
 */
export function moduleView(
  face: ModuleFace,
  solids: readonly Solid[],
  horizon: readonly HorizonPoint[],
  sections: number,
  sectionsAlongX: boolean,
): ModuleView {
  const radiusFt = Math.hypot(face.widthFt, face.heightFt) / 2
  const seen = solids
    .filter((solid) => face.onRack || solid.bodyOf !== face.planeId)
    .filter((solid) => solid.arrays?.includes(face.array) !== false)
    .filter((solid) => reachesInFront(solid, face))
    .map((solid): SeenSolid => ({
      solid,
      above: coneOf(solid, face.middle, radiusFt, true),
      whole: coneOf(solid, face.middle, radiusFt, false),
      isOwnRoof: solid.bodyOf === face.planeId,
    }))
  return {
    face,
    radiusFt,
    ...facePoints(face, sections, sectionsAlongX),
    sections,
    opaque: seen.filter(({ solid }) => solid.transmittance === undefined),
    porous: seen.filter(({ solid }) => solid.transmittance !== undefined),
    horizon,
  }
}

function reachesInFront({ corners }: Solid, { middle, axes }: ModuleFace): boolean {
  const own = dot(axes.normal, middle)
  return corners.some((corner) => dot(axes.normal, corner) > own + IN_FRONT_FT)
}

const EVERYWHERE: Cone = { east: 0, north: 0, up: 1, cosine: -2 }

/**
 * The cone round a convex solid, as seen from anywhere within a radius of a point.
 *
 * @param above Whether only what stands above the lowest of these points matters.
 */
function coneOf({ corners, upright }: Solid, from: Point, radiusFt: Feet, above: boolean): Cone {
  const lowest = from.up - radiusFt
  const rays = corners.map((corner) => ({
    east: corner.east - from.east,
    north: corner.north - from.north,
    // Its sides are plumb, so that what is cut off below stands on the same footprint.
    up: (above && upright ? Math.max(corner.up, lowest) : corner.up) - from.up,
  }))
  const lengths = rays.map((ray) => Math.hypot(ray.east, ray.north, ray.up))
  if (lengths.some((length) => length <= radiusFt * 1.001 + 1e-6)) return EVERYWHERE
  const axis = { east: 0, north: 0, up: 0 }
  rays.forEach((ray, index) => {
    axis.east += ray.east / lengths[index]!
    axis.north += ray.north / lengths[index]!
    axis.up += ray.up / lengths[index]!
  })
  const size = Math.hypot(axis.east, axis.north, axis.up)
  if (size < 1e-6) return EVERYWHERE
  const [east, north, up] = [axis.east / size, axis.north / size, axis.up / size]
  let widest = 0
  rays.forEach((ray, index) => {
    const cosine = (ray.east * east + ray.north * north + ray.up * up) / lengths[index]!
    const half = Math.acos(Math.min(1, Math.max(-1, cosine)))
    widest = Math.max(widest, half)
  })
  if (widest >= Math.PI / 2) return EVERYWHERE
  // The module's own points see it from the side by as much as the nearest part of the solid allows.
  const nearest = nearestFt(rays)
  if (nearest <= radiusFt * 1.001 + 1e-6) return EVERYWHERE
  const whole = widest + Math.asin(radiusFt / nearest)
  return whole >= Math.PI ? EVERYWHERE : { east, north, up, cosine: Math.cos(whole) - 1e-9 }
}

/** At most the distance to the nearest point of the solid that is spanned by these corners. */
function nearestFt(corners: readonly Point[]): Feet {
  const middle = corners.reduce(
    (sum, corner) => ({ east: sum.east + corner.east, north: sum.north + corner.north, up: sum.up + corner.up }),
    { east: 0, north: 0, up: 0 },
  )
  const length = Math.hypot(middle.east, middle.north, middle.up)
  if (length === 0) return 0
  // What all corners have in front of them along one direction, the solid has too.
  return Math.max(
    0,
    Math.min(
      ...corners.map(
        (corner) => (corner.east * middle.east + corner.north * middle.north + corner.up * middle.up) / length,
      ),
    ),
  )
}
