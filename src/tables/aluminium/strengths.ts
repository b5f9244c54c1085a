import type { SourceStanding } from '../../worksheet/index.js'

export type Alloy = '6005A-T5' | '6005A-T61' | '6005-T5' | '6105-T5' | '6061-T6' | '6063-T5' | '6063-T6'

/** Least strengths of an extrusion. */
export interface AlloyStrength {
  readonly ultimateKsi: number
  readonly yieldKsi: number
  readonly standing: SourceStanding
}

/**
 * Least tensile strengths of extrusions.
 *
 * @source ASTM B221 minima as listed by extruders (secondary); 6005-T5 from memory; of two values for 6105-T5 the lower one
 */
export const ALLOYS: Readonly<Record<Alloy, AlloyStrength>> = {
  '6005A-T5': { ultimateKsi: 38, yieldKsi: 31, standing: 'secondary' },
  '6005A-T61': { ultimateKsi: 38, yieldKsi: 35, standing: 'secondary' },
  '6005-T5': { ultimateKsi: 38, yieldKsi: 35, standing: 'from memory' },
  '6105-T5': { ultimateKsi: 35, yieldKsi: 28, standing: 'secondary' },
  '6061-T6': { ultimateKsi: 38, yieldKsi: 35, standing: 'secondary' },
  '6063-T5': { ultimateKsi: 22, yieldKsi: 16, standing: 'secondary' },
  '6063-T6': { ultimateKsi: 30, yieldKsi: 25, standing: 'secondary' },
}

/** Modulus of elasticity, psi. @source Aluminum Design Manual 2005, one sheet (secondary) */
export const ALUMINIUM_MODULUS_PSI = 10_100_000

/** Growth of aluminium with heat, per deg F (23.4e-6 per deg C). @source 12.8 to 13.1e-6 for alloys of the 6000 series (from memory) */
export const ALUMINIUM_EXPANSION_PER_F = 13e-6

/** Safety factors of allowable strength design. @source Aluminum Design Manual, section B.3 (from memory) */
export const ALUMINIUM_SAFETY = { yield: 1.65, rupture: 1.95 } as const

/** Shear yield over tensile yield. @source Aluminum Design Manual, von Mises (from memory) */
export const SHEAR_OVER_TENSION = 0.6
