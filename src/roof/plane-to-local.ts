import type { Direction, PlaneAxes } from '../sun/index.js'
import type { Point } from '../values/index.js'

/**
 * Place of a point of the plane, from the left end of the eave (x = y = 0), in the unit of the point.
 *
 * @param axes Unit vectors of the plane.
 * @param point Plane coordinates, ft.
 * @param heightFt Height above the surface, at right angles to it, ft.
 * @returns East, north and up of the plane's origin, ft.
 */
export function planeToLocalFt(axes: PlaneAxes, point: Point, heightFt = 0): Direction {
  const part = (key: keyof Direction): number =>
    axes.x[key] * point.xFt + axes.y[key] * point.yFt + axes.normal[key] * heightFt
  return { east: part('east'), north: part('north'), up: part('up') }
}
