// Vectors of the ray caster: east, north, up, in ft or without a unit. Written apart from the program on purpose.
export type Vec = readonly [east: number, north: number, up: number]

export const add = (a: Vec, b: Vec): Vec => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
export const less = (a: Vec, b: Vec): Vec => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const times = (a: Vec, k: number): Vec => [a[0] * k, a[1] * k, a[2] * k]
export const inner = (a: Vec, b: Vec): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const outer = (a: Vec, b: Vec): Vec => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
export const unit = (a: Vec): Vec => times(a, 1 / Math.hypot(...a))
export const UP: Vec = [0, 0, 1]

const RAD = Math.PI / 180
export const sinDeg = (angle: number): number => Math.sin(angle * RAD)
export const cosDeg = (angle: number): number => Math.cos(angle * RAD)

/** Level unit vector towards a compass bearing, degrees clockwise from true north. */
export const towards = (bearingDeg: number): Vec => [sinDeg(bearingDeg), cosDeg(bearingDeg), 0]

/** A place on a sloping surface. */
export interface Frame {
  readonly origin: Vec
  /** To the right for one who looks at the slope from outside, and up the slope: unit vectors. */
  readonly right: Vec
  readonly upSlope: Vec
  /** Away from the surface. */
  readonly away: Vec
}

/** Surface through a point that faces a bearing and rises behind it. */
export function frameAt(origin: Vec, tiltDeg: number, facesDeg: number): Frame {
  const downhill = towards(facesDeg)
  const upSlope = add(times(downhill, -cosDeg(tiltDeg)), times(UP, sinDeg(tiltDeg)))
  const away = add(times(downhill, sinDeg(tiltDeg)), times(UP, cosDeg(tiltDeg)))
  return { origin, right: outer(upSlope, away), upSlope, away }
}

/** Point of a surface, lifted away from it. */
export const onFrame = (frame: Frame, x: number, y: number, lift = 0): Vec =>
  add(add(frame.origin, times(frame.right, x)), add(times(frame.upSlope, y), times(frame.away, lift)))
