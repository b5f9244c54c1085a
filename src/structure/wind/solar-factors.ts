import { ROOFTOP_SOLAR } from '../../tables/asce7/index.js'
import type { SquareFeet } from '../../values/index.js'

/**
 * Solar array pressure equalisation factor: wind reaches both faces of a module close to the roof.
 *
 * @param areaFt2 Effective wind area, ft2, over 0.
 * @returns Pure number, 0.8 for small areas to 0.4 for large ones.
 * @source ASCE 7-16 figure 29.4-8; ASCE 7-22 figure 29.4-8, solid line (secondary; the upper end of 7-22 is uncertain by 0.05)
 * @limits Only under the conditions of section 29.4.4.
 * @example solarEqualisation(19.8) is 0.68 in a published calculation.
 */
export function solarEqualisation(areaFt2: SquareFeet): number {
  const { lowAreaFt2, lowFactor, highAreaFt2, highFactor } = ROOFTOP_SOLAR.equalisation
  const share = Math.log10(areaFt2 / lowAreaFt2) / Math.log10(highAreaFt2 / lowAreaFt2)
  return lowFactor + (highFactor - lowFactor) * Math.min(1, Math.max(0, share))
}

/**
 * Array edge factor: modules along an exposed array edge take more wind.
 *
 * @source ASCE 7-16 and 7-22 section 29.4.4 (secondary). Taken for downward pressure too, on the safe side.
 */
export function arrayEdgeFactor(exposed: boolean): number {
  return exposed ? ROOFTOP_SOLAR.edgeFactor : 1
}
