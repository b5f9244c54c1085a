import {
  DIRECTIONALITY,
  ELEVATION_EXPONENT_PER_FT,
  EXPOSURE_B_FLOOR,
  EXPOSURE_CONSTANTS,
  LOWEST_HEIGHT_FT,
  PRESSURE_PER_SPEED_SQUARED,
  type Exposure,
  type LoadEdition,
} from '../../tables/asce7/index.js'
import type { Feet, MilesPerHour, PoundsPerSquareFoot } from '../../values/index.js'

/** What velocity pressure depends on. */
export interface WindExposure {
  readonly edition: LoadEdition
  /** 3-second gust, Risk Category II, mph. */
  readonly speedMph: MilesPerHour
  readonly exposure: Exposure
  /** ft above ground. */
  readonly meanRoofHeightFt: Feet
  /** ft above sea level; 0 is the safe side. */
  readonly groundElevationFt: Feet
  /** Keep Kz at 0.70 in exposure B below 30 ft (always so in 7-10). */
  readonly keepExposureBFloor: boolean
}

/**
 * Velocity pressure exposure coefficient Kz at the mean roof height.
 *
 * @param wind Edition, exposure and height (ft; constant below 15 ft).
 * @returns Kz, a pure number; with two published sets of constants (7-22) the larger.
 * @source ASCE 7-10 table 30.3-1, ASCE 7-16 and 7-22 table 26.10-1 (formula in note 1)
 * @limits Heights up to 60 ft are used here.
 */
export function exposureCoefficient(
  wind: Pick<WindExposure, 'edition' | 'exposure' | 'meanRoofHeightFt' | 'keepExposureBFloor'>,
): number {
  const z = Math.max(wind.meanRoofHeightFt, LOWEST_HEIGHT_FT)
  const values = EXPOSURE_CONSTANTS[wind.edition].map((set) => {
    const { factor, alpha, gradientHeightFt } = set[wind.exposure]
    return factor * (z / gradientHeightFt) ** (2 / alpha)
  })
  const kz = Math.max(...values)
  const floor = wind.exposure === 'B' && (wind.keepExposureBFloor || wind.edition === 'ASCE 7-10')
  return floor ? Math.max(kz, EXPOSURE_B_FLOOR) : kz
}

/**
 * Ground elevation factor Ke: thinner air presses less.
 *
 * @param groundElevationFt ft above sea level, 0 or more.
 * @returns Ke, 1 at sea level; 1 in 7-10, which has none.
 * @source ASCE 7-16 table 26.9-1, note
 */
export function elevationFactor(edition: LoadEdition, groundElevationFt: Feet): number {
  return edition === 'ASCE 7-10' ? 1 : Math.exp(-ELEVATION_EXPONENT_PER_FT * groundElevationFt)
}

/**
 * Velocity pressure qh at the mean roof height with the directionality factor taken once, psf, strength level.
 *
 * @returns psf; in 7-22 this is qh * Kd, since that edition moves Kd into the pressure equation.
 * @source ASCE 7-10 eq. 30.3-1; ASCE 7-16 eq. 26.10-1; ASCE 7-22 eq. 26.10-1 with 29.4-7
 * @limits Kzt = 1: not on a hill, ridge or escarpment.
 */
export function velocityPressurePsf(wind: WindExposure): PoundsPerSquareFoot {
  return (
    PRESSURE_PER_SPEED_SQUARED *
    exposureCoefficient(wind) *
    DIRECTIONALITY *
    elevationFactor(wind.edition, wind.groundElevationFt) *
    wind.speedMph ** 2
  )
}
