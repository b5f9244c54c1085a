import { PEREZ_1990 } from '../tables/sky/perez-1990.js'

/** Diffuse sky on a tilted plane, split by where it comes from, as factors on the diffuse horizontal irradiance. */
export interface SkySplit {
  /** From the disc round the sun: shaded and reflected as the beam is. */
  circumsolar: number
  /** From the whole dome. */
  dome: number
  /** From the band along the horizon (may be negative). */
  horizon: number
}

const COS_85 = Math.cos((85 * Math.PI) / 180)
const COEFFICIENTS = Float64Array.from(PEREZ_1990.coefficients.flat())
const BIN_FROM = Float64Array.from(PEREZ_1990.binFrom)

/** The instant, as the sky models want it. */
export interface SkyInstant {
  /** Direct normal and diffuse horizontal irradiance, W/m2. */
  readonly dniWM2: number
  readonly dhiWM2: number
  /** Extraterrestrial normal irradiance, W/m2. */
  readonly extraterrestrialWM2: number
  readonly airMass: number
  /** Cosine of the zenith angle of the sun. */
  readonly cosZenith: number
  /** Cosine of the angle between sun and plane normal (negative behind the plane). */
  readonly cosIncidence: number
}

export type SkyModel = (into: SkySplit, instant: SkyInstant, cosTilt: number, sinTilt: number) => void

/**
 * Anisotropic sky with a bright disc and a bright horizon. Writes into `into`, which saves a million small objects.
 *
 * @source Perez et al. 1990, Solar Energy 44:271-289, eq. 9 and table 6.
 * @limits Diffuse of 0 leaves all factors 0.
 */
export const perez1990: SkyModel = (into, instant, cosTilt, sinTilt) => {
  const { dniWM2, dhiWM2, cosZenith } = instant
  if (dhiWM2 <= 0) {
    into.circumsolar = into.dome = into.horizon = 0
    return
  }
  const zenith = Math.acos(cosZenith > 1 ? 1 : cosZenith < 0 ? 0 : cosZenith)
  const cubic = 1.041 * zenith * zenith * zenith
  const clearness = ((dhiWM2 + dniWM2) / dhiWM2 + cubic) / (1 + cubic)
  const brightness = (dhiWM2 * instant.airMass) / instant.extraterrestrialWM2
  let bin = 0
  while (bin < 7 && clearness >= (BIN_FROM[bin] as number)) bin += 1
  const at = bin * 6
  const f1 =
    (COEFFICIENTS[at] as number) +
    (COEFFICIENTS[at + 1] as number) * brightness +
    (COEFFICIENTS[at + 2] as number) * zenith
  const f2 =
    (COEFFICIENTS[at + 3] as number) +
    (COEFFICIENTS[at + 4] as number) * brightness +
    (COEFFICIENTS[at + 5] as number) * zenith
  const disc = f1 > 0 ? f1 : 0
  const a = instant.cosIncidence > 0 ? instant.cosIncidence : 0
  const b = cosZenith > COS_85 ? cosZenith : COS_85
  into.circumsolar = (disc * a) / b
  into.dome = ((1 - disc) * (1 + cosTilt)) / 2
  into.horizon = f2 * sinTilt
}

/**
 * Sky with a bright disc only.
 *
 * @source Hay & Davies 1980 as in Duffie & Beckman, eq. 2.16.4 (from memory, unverified).
 */
export const hayDavies: SkyModel = (into, instant, cosTilt) => {
  const anisotropy = instant.dniWM2 / instant.extraterrestrialWM2
  const a = instant.cosIncidence > 0 ? instant.cosIncidence : 0
  const b = instant.cosZenith > COS_85 ? instant.cosZenith : COS_85
  into.circumsolar = (anisotropy * a) / b
  into.dome = ((1 - anisotropy) * (1 + cosTilt)) / 2
  into.horizon = 0
}

/**
 * Sky of even brightness: a lower bound.
 *
 * @source Liu & Jordan 1963 (Duffie & Beckman, eq. 2.15.1).
 */
export const isotropicSky: SkyModel = (into, _instant, cosTilt) => {
  into.circumsolar = 0
  into.dome = (1 + cosTilt) / 2
  into.horizon = 0
}
