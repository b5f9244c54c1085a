import { ALLOYS, ALUMINIUM_SAFETY, SHEAR_OVER_TENSION, type Alloy } from '../../tables/aluminium/index.js'
import type { PoundInches, Pounds } from '../../values/index.js'

/** What a rail can take, at allowable stress level. */
export interface RailStrength {
  readonly momentXLbIn: PoundInches
  /** Along the slope; undefined when the sheet does not give a section. */
  readonly momentYLbIn: PoundInches | undefined
  readonly shearLb: Pounds | undefined
  readonly momentOfInertiaXIn4: number
  /** n of the limit span / n. */
  readonly deflectionLimit: number
}

/**
 * Allowable bending stress of an extrusion in tension, ksi: the smaller of yield / 1.65 and rupture / 1.95.
 *
 * @source Aluminum Design Manual, section F and B.3: safety factors from memory; strengths ASTM B221
 * @limits Local and lateral buckling are not covered: where the sheet gives an allowable moment it is used instead.
 */
export function allowableBendingKsi(alloy: Alloy): number {
  const { yieldKsi, ultimateKsi } = ALLOYS[alloy]
  return Math.min(yieldKsi / ALUMINIUM_SAFETY.yield, ultimateKsi / ALUMINIUM_SAFETY.rupture)
}

/** Allowable shear stress, ksi. @source Aluminum Design Manual, 0.6 of yield over 1.65 (from memory) */
export function allowableShearKsi(alloy: Alloy): number {
  return (SHEAR_OVER_TENSION * ALLOYS[alloy].yieldKsi) / ALUMINIUM_SAFETY.yield
}
