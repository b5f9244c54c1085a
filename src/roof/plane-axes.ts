import type { Point } from './polygon.js'

/** A vector or point: east, north and up. */
export interface Vector3 {
  readonly east: number
  readonly north: number
  readonly up: number
}

/** Unit vectors of a roof plane. */
export interface PlaneAxes {
  /** Along the eave to the right, seen from outside facing the slope. */
  readonly x: Vector3
  /** Up the slope. */
  readonly y: Vector3
  /** Out of the roof. */
  readonly normal: Vector3
}

/**
 * Unit vectors of a plane in east, north and up.
 *
 * @param azimuthDeg Direction that the plane faces (downhill), degrees clockwise from true north.
 * @param tiltDeg Slope from level, degrees, 0 to 90.
 */
export function planeAxes(azimuthDeg: number, tiltDeg: number): PlaneAxes {
  const [a, t] = [(azimuthDeg * Math.PI) / 180, (tiltDeg * Math.PI) / 180]
  const [sinA, cosA, sinT, cosT] = [Math.sin(a), Math.cos(a), Math.sin(t), Math.cos(t)]
  return {
    x: { east: -cosA, north: sinA, up: 0 },
    y: { east: -sinA * cosT, north: -cosA * cosT, up: sinT },
    normal: { east: sinA * sinT, north: cosA * sinT, up: cosT },
  }
}

/**
 * Place of a point of the plane, from the left end of the eave (x = y = 0), in the unit of the point.
 *
 * @param axes Unit vectors of the plane.
 * @param point Plane coordinates, ft.
 * @param heightFt Height above the surface, at right angles to it, ft.
 * @returns East, north and up of the plane's origin, ft.
 */
export function planeToLocalFt(axes: PlaneAxes, point: Point, heightFt = 0): Vector3 {
  const part = (key: keyof Vector3) => axes.x[key] * point.xFt + axes.y[key] * point.yFt + axes.normal[key] * heightFt
  return { east: part('east'), north: part('north'), up: part('up') }
}
