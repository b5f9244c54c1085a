import { RADIANS_PER_DEGREE, type Degrees } from '../values/index.js'

/** Glass of the physical model: refractive index, extinction 4 per m, 2 mm (De Soto et al. 2006; from memory, unverified). */
const INDEX = 1.526
const EXTINCTION_LENGTH = 4 * 0.002

/** Transmitted and absorbed share of light through the cover, for a cosine of incidence above 0. */
function coverTransmittance(cosIncidence: number): number {
  const sine2 = 1 - cosIncidence * cosIncidence
  const cosRefracted = Math.sqrt(1 - sine2 / (INDEX * INDEX))
  // Fresnel for both polarisations, in cosines only.
  const s = (cosIncidence - INDEX * cosRefracted) / (cosIncidence + INDEX * cosRefracted)
  const p = (INDEX * cosIncidence - cosRefracted) / (INDEX * cosIncidence + cosRefracted)
  return Math.exp(-EXTINCTION_LENGTH / cosRefracted) * (1 - (s * s + p * p) / 2)
}

const AT_NORMAL = coverTransmittance(1)

/**
 * Incidence-angle modifier of a glass cover: light let through, relative to light that falls straight on.
 *
 * @param cosIncidence Cosine of the angle of incidence; 0 or less gives 0.
 * @source De Soto, Klein & Beckman 2006: Snell, Fresnel and Bouguer (from memory, unverified).
 * @example glassLayerModifier(Math.cos(60 * Math.PI / 180)) // 0.9460
 */
export function glassLayerModifier(cosIncidence: number): number {
  if (cosIncidence <= 0) return 0
  return coverTransmittance(cosIncidence > 1 ? 1 : cosIncidence) / AT_NORMAL
}

/**
 * Incidence-angle modifier in its one-constant form.
 *
 * @param cosIncidence Cosine of the angle of incidence.
 * @param b0 Constant, 0.05 for glass (from memory, unverified).
 * @source ASHRAE Standard 93 form, 1 - b0 (1/cos - 1); fails above 80 degrees, where it is cut off at 0.
 * @example oneCoefficientModifier(0.5, 0.05) // 0.95
 */
export function oneCoefficientModifier(cosIncidence: number, b0: number): number {
  if (cosIncidence <= 0) return 0
  return Math.max(0, 1 - b0 * (1 / cosIncidence - 1))
}

/**
 * Angle at which beam light has the same modifier as diffuse light from the sky dome.
 *
 * @param tiltDeg Tilt of the plane, degrees.
 * @returns Degrees.
 * @source Brandemuehl & Beckman 1980 (Duffie & Beckman, eq. 5.4.2; from memory, unverified).
 */
export function effectiveSkyAngleDeg(tiltDeg: Degrees): Degrees {
  return 59.7 - 0.1388 * tiltDeg + 0.001497 * tiltDeg * tiltDeg
}

/**
 * Angle at which beam light has the same modifier as light reflected by the ground.
 *
 * @param tiltDeg Tilt of the plane, degrees.
 * @returns Degrees.
 * @source Brandemuehl & Beckman 1980 (Duffie & Beckman, eq. 5.4.1; from memory, unverified).
 */
export function effectiveGroundAngleDeg(tiltDeg: Degrees): Degrees {
  return 90 - 0.5788 * tiltDeg + 0.002693 * tiltDeg * tiltDeg
}

/** Cosine of an angle in degrees. */
export function cosDeg(angleDeg: Degrees): Degrees {
  return Math.cos(angleDeg * RADIANS_PER_DEGREE)
}
