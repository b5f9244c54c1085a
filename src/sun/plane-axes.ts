import type { Direction } from './direction.js'
import { RADIANS_PER_DEGREE, type Degrees } from '../values/index.js'

/** The three axes of a roof plane in local east, north, up: along the eave, up the slope, away from the surface. */
export interface PlaneAxes {
  readonly x: Direction
  readonly y: Direction
  readonly normal: Direction
}

/**
 * Axes of a plane.
 *
 * @param tiltDeg From level, degrees.
 * @param azimuthDeg Direction that the plane faces, degrees clockwise from true north.
 */
export function planeAxes(tiltDeg: Degrees, azimuthDeg: Degrees): PlaneAxes {
  const sinTilt = Math.sin(tiltDeg * RADIANS_PER_DEGREE)
  const cosTilt = Math.cos(tiltDeg * RADIANS_PER_DEGREE)
  const sinAzimuth = Math.sin(azimuthDeg * RADIANS_PER_DEGREE)
  const cosAzimuth = Math.cos(azimuthDeg * RADIANS_PER_DEGREE)
  return {
    // Facing the slope from outside, right is 90 degrees anticlockwise from the direction that the plane faces.
    x: { east: -cosAzimuth, north: sinAzimuth, up: 0 },
    y: { east: -sinAzimuth * cosTilt, north: -cosAzimuth * cosTilt, up: sinTilt },
    normal: { east: sinAzimuth * sinTilt, north: cosAzimuth * sinTilt, up: cosTilt },
  }
}
