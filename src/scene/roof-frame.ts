import { tiltDegOf } from '../project/facts.js'
import type { SpaceProject, RoofPlane } from '../project/index.js'
import { planeAxes, type PlaneAxes, type Point } from '../sun/index.js'
import { own, type Degrees, type Feet, type Point as PlanePoint } from '../values/index.js'
import { planToGround } from './plan-axes.js'
import type { Sheet } from './prism.js'

/** Where a roof plane lies in space. */
export interface RoofFrame {
  readonly planeId: string
  /** Left end of its eave, ft. */
  readonly origin: Point
  readonly axes: PlaneAxes
  readonly tiltDeg: Degrees
  readonly azimuthDeg: Degrees
  /** Whether its place and height are known; otherwise its eave's left end is the origin of a world of its own. */
  readonly placed: boolean
}

/** A roof plane in space: at its place where the project knows it and its eave's height, else about its own origin. */
export function roofFrame(project: Pick<SpaceProject, 'site_plan'>, planeId: string, plane: RoofPlane): RoofFrame {
  const tiltDeg = tiltDegOf(plane, `roof_planes.${planeId}`)
  const place = own(project.site_plan?.roof_planes, planeId)?.eave_left ?? plane.eave_left
  const axes = planeAxes(tiltDeg, plane.azimuth_deg)
  const known = place !== undefined && plane.eave_height_ft !== undefined
  const ground = place === undefined ? undefined : planToGround(project)(place)
  const origin =
    known && ground !== undefined
      ? { east: ground.xFt, north: ground.yFt, up: plane.eave_height_ft ?? 0 }
      : { east: 0, north: 0, up: 0 }
  return { planeId, origin, axes, tiltDeg, azimuthDeg: plane.azimuth_deg, placed: known }
}

/**
 * A point of the plane in space.
 *
 * @param heightFt Above the surface, at right angles to it.
 */
export function onRoof({ origin, axes }: RoofFrame, { xFt, yFt }: PlanePoint, heightFt: Feet = 0): Point {
  const { x, y, normal } = axes
  return {
    east: origin.east + xFt * x.east + yFt * y.east + heightFt * normal.east,
    north: origin.north + xFt * x.north + yFt * y.north + heightFt * normal.north,
    up: origin.up + xFt * x.up + yFt * y.up + heightFt * normal.up,
  }
}

/** The surface of a plane as a sheet over the plan; undefined for a wall. */
export function roofSheet({ origin, axes }: RoofFrame): Sheet | undefined {
  const { normal } = axes
  if (normal.up < 1e-6) return undefined
  const perEast = -normal.east / normal.up
  const perNorth = -normal.north / normal.up
  return { perEast, perNorth, up: origin.up - perEast * origin.east - perNorth * origin.north }
}
