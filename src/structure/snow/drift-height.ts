import { DRIFT_HEIGHT, SNOW_DENSITY, SNOW_IMPORTANCE, type LoadEdition } from '../../tables/asce7/index.js'
import type { Feet, PoundsPerSquareFoot } from '../../values/index.js'

/** Ground snow at the level of the edition's maps, and the wind that drives it. */
export interface DriftingSnow {
  readonly edition: LoadEdition
  readonly groundPsf: PoundsPerSquareFoot
  /** W2 of 7-22; undefined when it is not stated or the edition has none. */
  readonly winterWind: number | undefined
}

/** Density of snow, lb/ft3: gamma = 0.13 pg + 14, at most 30. @source ASCE 7-16 eq. 7.7-1 (secondary) */
export function snowDensityPcf(groundPsf: PoundsPerSquareFoot): number {
  return Math.min(SNOW_DENSITY.most, SNOW_DENSITY.perPsf * groundPsf + SNOW_DENSITY.least)
}

/**
 * Height of a leeward drift, ft.
 *
 * @param fetchFt Length of roof from which the wind takes the snow, lu.
 * @returns 0 or more; undefined when the edition needs W2 and it is not stated.
 * @source ASCE 7-10 and 7-16 figure 7.6-1; ASCE 7-22 eq. 7.6-1 (secondary, checked against the commentary examples)
 * @limits The least fetch is the caller's; the lower height that 7-16 permits for short fetches is not used.
 */
export function driftHeightFt({ edition, groundPsf, winterWind }: DriftingSnow, fetchFt: Feet): Feet | undefined {
  if (groundPsf <= 0 || fetchFt <= 0) return 0
  if (edition !== 'ASCE 7-22') {
    const { factor, addedPsf, lessFt } = DRIFT_HEIGHT.service
    const height = factor * fetchFt ** (1 / 3) * (groundPsf + addedPsf) ** (1 / 4) - lessFt
    return Math.max(0, Math.sqrt(SNOW_IMPORTANCE) * height)
  }
  if (winterWind === undefined) return undefined
  const { factor, groundPower, fetchPower, windPower } = DRIFT_HEIGHT.strength
  const carried = groundPsf ** groundPower * fetchFt ** fetchPower * winterWind ** windPower
  return factor * Math.sqrt(carried / snowDensityPcf(groundPsf))
}

/** The formula of the height as text. */
export function driftHeightFormula(edition: LoadEdition): string {
  return edition === 'ASCE 7-22'
    ? 'hd = 1.5 sqrt(pg^0.74 lu^0.70 W2^1.7 / gamma)'
    : 'hd = 0.43 lu^(1/3) (pg + 10)^(1/4) - 1.5'
}
