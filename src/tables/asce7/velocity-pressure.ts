import type { SourceStanding } from '../../worksheet/index.js'
import type { Exposure, LoadEdition } from './edition.js'

/** Constants of Kz = factor * (z / zg)^(2 / alpha). */
export interface ExposureConstants {
  readonly factor: number
  readonly alpha: number
  readonly gradientHeightFt: number
  readonly standing: SourceStanding
}

const EARLIER: Readonly<Record<Exposure, ExposureConstants>> = {
  B: { factor: 2.01, alpha: 7.0, gradientHeightFt: 1200, standing: 'secondary' },
  C: { factor: 2.01, alpha: 9.5, gradientHeightFt: 900, standing: 'secondary' },
  D: { factor: 2.01, alpha: 11.5, gradientHeightFt: 700, standing: 'secondary' },
}

/** From memory; they miss the printed 0.70 of exposure B at 30 ft by 0.01, so the larger of both sets is used for 7-22. */
const SET_OF_2022: Readonly<Record<Exposure, ExposureConstants>> = {
  B: { factor: 2.41, alpha: 7.5, gradientHeightFt: 3280, standing: 'from memory' },
  C: { factor: 2.41, alpha: 9.8, gradientHeightFt: 2460, standing: 'from memory' },
  D: { factor: 2.41, alpha: 11.5, gradientHeightFt: 1935, standing: 'from memory' },
}

/**
 * Exposure constants by edition; with two sets the larger Kz is taken.
 *
 * @source ASCE 7-10 and 7-16 table 26.9-1/26.11-1 (secondary); ASCE 7-22 table 26.11-1 (from memory)
 */
export const EXPOSURE_CONSTANTS: Readonly<
  Record<LoadEdition, readonly Readonly<Record<Exposure, ExposureConstants>>[]>
> = {
  'ASCE 7-10': [EARLIER],
  'ASCE 7-16': [EARLIER],
  'ASCE 7-22': [EARLIER, SET_OF_2022],
}

/** Below this height Kz stays constant, ft. @source ASCE 7-16 table 26.10-1 (secondary) */
export const LOWEST_HEIGHT_FT = 15

/** Kz of exposure B below 30 ft for components and cladding. @source ASCE 7-10 table 30.3-1 (secondary) */
export const EXPOSURE_B_FLOOR = 0.7

/** Directionality factor Kd of buildings, components and cladding. @source ASCE 7-16 table 26.6-1 (secondary) */
export const DIRECTIONALITY = 0.85

/** psf per mph squared. @source ASCE 7-16 eq. 26.10-1 (secondary) */
export const PRESSURE_PER_SPEED_SQUARED = 0.00256

/** Exponent of the ground elevation factor, 1/ft. @source ASCE 7-16 table 26.9-1 note (secondary) */
export const ELEVATION_EXPONENT_PER_FT = 0.0000362

/** Internal pressure coefficient of an enclosed building. @source ASCE 7-16 table 26.13-1 (secondary) */
export const INTERNAL_PRESSURE_ENCLOSED = 0.18

/** Least design pressure at strength level, psf. @source ASCE 7-22 30.2.2 (secondary); same in 7-10 and 7-16 (from memory) */
export const LEAST_PRESSURE_PSF = 16

/** Where each edition defines velocity pressure. */
export const VELOCITY_PRESSURE_PLACE: Readonly<Record<LoadEdition, string>> = {
  'ASCE 7-10': 'eq. 30.3-1',
  'ASCE 7-16': 'eq. 26.10-1',
  'ASCE 7-22': 'eq. 26.10-1 and 29.4-7 (Kd taken once, here)',
}
