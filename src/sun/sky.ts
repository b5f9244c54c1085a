import { PEREZ_1990 } from '../tables/sky/index.js'
import { radiansOf, type Radians } from '../values/index.js'

/**
 * The diffuse sky at an instant, whatever plane looks at it, W/m2. A plane of tilt t that sees the sun at incidence i gets
 * `disc max(0, cos i) + dome (1 + cos t)/2 + horizon sin t`.
 */
export interface SkyBrightness {
  /** Light from the disc round the sun, at right angles to it: shaded and reflected as the beam is. */
  disc: number
  /** Light of the whole dome on level ground. */
  dome: number
  /** Light of the band along the horizon (may be negative). */
  horizon: number
}

/** The instant, as the sky models want it. */
export interface SkyInstant {
  /** Direct normal and diffuse horizontal irradiance, W/m2. */
  readonly dniWM2: number
  readonly dhiWM2: number
  /** Extraterrestrial normal irradiance, W/m2. */
  readonly extraterrestrialWM2: number
  readonly airMass: number
  /** Zenith angle of the sun, radians, and its cosine. */
  readonly zenithRad: Radians
  readonly cosZenith: number
}

/** Writes the sky into an object that is used again and again, which saves a million small ones. */
export type SkyModel = (into: SkyBrightness, instant: SkyInstant) => void

const COS_85 = Math.cos(radiansOf(85))
const COEFFICIENTS = Float64Array.from(PEREZ_1990.coefficients.flat())
const BIN_FROM = Float64Array.from(PEREZ_1990.binFrom)

/**
 * Anisotropic sky with a bright disc and a bright horizon.
 *
 * @source Perez et al. 1990, Solar Energy 44:271-289, eq. 9 and table 6.
 * @limits No diffuse light leaves everything 0.
 */
export const perez1990: SkyModel = (into, instant) => {
  const { dniWM2, dhiWM2, cosZenith, zenithRad } = instant
  if (dhiWM2 <= 0) {
    into.disc = into.dome = into.horizon = 0
    return
  }
  const cubic = 1.041 * zenithRad * zenithRad * zenithRad
  const clearness = ((dhiWM2 + dniWM2) / dhiWM2 + cubic) / (1 + cubic)
  const brightness = (dhiWM2 * instant.airMass) / instant.extraterrestrialWM2
  let bin = 0
  while (bin < 7 && clearness >= BIN_FROM[bin]!) bin += 1
  const at = bin * 6
  const f1 = COEFFICIENTS[at]! + COEFFICIENTS[at + 1]! * brightness + COEFFICIENTS[at + 2]! * zenithRad
  const f2 = COEFFICIENTS[at + 3]! + COEFFICIENTS[at + 4]! * brightness + COEFFICIENTS[at + 5]! * zenithRad
  const share = f1 > 0 ? f1 : 0
  into.disc = (dhiWM2 * share) / (cosZenith > COS_85 ? cosZenith : COS_85)
  into.dome = dhiWM2 * (1 - share)
  into.horizon = dhiWM2 * f2
}

/**
 * Sky with a bright disc only.
 *
 * @source Hay & Davies 1980 as in Duffie & Beckman, eq. 2.16.4 (from memory, unverified).
 */
export const hayDavies: SkyModel = (into, { dniWM2, dhiWM2, extraterrestrialWM2, cosZenith }) => {
  const share = dniWM2 / extraterrestrialWM2
  into.disc = (dhiWM2 * share) / (cosZenith > COS_85 ? cosZenith : COS_85)
  into.dome = dhiWM2 * (1 - share)
  into.horizon = 0
}

/**
 * Sky of even brightness: a lower bound.
 *
 * @source Liu & Jordan 1963 (Duffie & Beckman, eq. 2.15.1).
 */
export const isotropicSky: SkyModel = (into, { dhiWM2 }) => {
  into.disc = 0
  into.dome = dhiWM2
  into.horizon = 0
}
