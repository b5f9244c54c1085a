import {
  LOW_SLOPE_SNOW,
  RAIN_SLOPE_DIVISOR,
  SNOW_IMPORTANCE,
  SNOW_RULES,
  type LoadEdition,
} from '../../tables/asce7/index.js'
import type { Degrees, Feet, PoundsPerSquareFoot } from '../../values/index.js'

/**
 * The separate uniform load of a low slope, psf; 0 on slopes of 15 degrees and more.
 *
 * @param groundPsf Ground snow at the level of the edition's maps.
 * @param capPsf Most of it; that of Risk Category II when missing.
 * @source ASCE 7-16 and 7-22 7.3.4 (secondary)
 * @limits Not combined with drifts, unbalanced or sliding snow or rain.
 */
export function minimumSnowPsf(
  edition: LoadEdition,
  groundPsf: PoundsPerSquareFoot,
  tiltDeg: Degrees,
  capPsf: PoundsPerSquareFoot = SNOW_RULES[edition].minimumCapPsf,
): PoundsPerSquareFoot {
  return tiltDeg < LOW_SLOPE_SNOW.belowDeg ? SNOW_IMPORTANCE * Math.min(groundPsf, capPsf) : 0
}

/**
 * Rain on snow, psf, added to balanced snow alone; 0 where the roof is steeper than W / 50 or the ground snow is large.
 *
 * @param eaveToRidgeFt W, horizontal.
 * @param upToPsf Largest ground snow with rain; that of Risk Category II when missing.
 * @source ASCE 7-16 and 7-22 7.10 (secondary)
 */
export function rainOnSnowPsf(
  edition: LoadEdition,
  groundPsf: PoundsPerSquareFoot,
  tiltDeg: Degrees,
  eaveToRidgeFt: Feet,
  upToPsf: PoundsPerSquareFoot = SNOW_RULES[edition].rainUpToPsf,
): PoundsPerSquareFoot {
  const rules = SNOW_RULES[edition]
  const wet = groundPsf > 0 && groundPsf <= upToPsf && tiltDeg < eaveToRidgeFt / RAIN_SLOPE_DIVISOR
  return wet ? rules.rainPsf : 0
}
