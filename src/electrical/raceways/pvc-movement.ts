import { EXPANSION_FITTING_FROM_IN, PVC_COEFFICIENT_PER_F, STEEL_SHARE_OF_PVC } from '../../tables/nec/index.js'
import type { Fahrenheit, Feet, Inches } from '../../values/index.js'

/**
 * Change of length of a straight raceway over its yearly temperature range.
 *
 * @param lengthFt Length between fixed points, ft.
 * @param rangeF Temperature range, deg F.
 * @returns in.
 * @source NEC 352.44 (PVC), 300.7(B) informational note (steel is 0.20 of PVC)
 */
export function lengthChangeIn(material: 'pvc' | 'steel', lengthFt: Feet, rangeF: Fahrenheit): Inches {
  const share = material === 'pvc' ? 1 : STEEL_SHARE_OF_PVC
  return lengthFt * 12 * PVC_COEFFICIENT_PER_F * share * rangeF
}

/** Whether PVC needs an expansion fitting: from 1/4 in of change on. @source NEC 352.44 */
export const needsExpansionFitting = (changeIn: Inches): boolean => changeIn >= EXPANSION_FITTING_FROM_IN
