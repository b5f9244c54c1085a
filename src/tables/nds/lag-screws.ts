export type LagSize = '1/4' | '5/16' | '3/8'

/** Standard lag screw: thread length T = min(6 in, L / 2 + 1/2 in), of which the tip E does not hold. */
export interface LagDimensions {
  readonly diameterIn: number
  readonly rootDiameterIn: number
  readonly tipIn: number
  /** Bending yield strength Fyb, psi. */
  readonly bendingYieldPsi: number
}

/**
 * Lag screw dimensions and bending yield strength.
 *
 * @source NDS 2018 appendix L, table L2, and table 12K footnote 2 (secondary; reproduces table 12K)
 */
export const LAG_SCREWS: Readonly<Record<LagSize, LagDimensions>> = {
  '1/4': { diameterIn: 0.25, rootDiameterIn: 0.173, tipIn: 5 / 32, bendingYieldPsi: 70000 },
  '5/16': { diameterIn: 0.3125, rootDiameterIn: 0.227, tipIn: 3 / 16, bendingYieldPsi: 60000 },
  '3/8': { diameterIn: 0.375, rootDiameterIn: 0.265, tipIn: 7 / 32, bendingYieldPsi: 45000 },
}

/** Allowable tension of the root: ultimate strength over safety factor, psi. @source ASTM A307 grade A, 60 ksi, and AISC 360 factor 2.00 (from memory) */
export const LAG_ROOT_TENSION_PSI = 60000 / 2

export type SidePlate = 'steel_14_ga' | 'steel_12_ga' | 'steel_10_ga' | 'steel_quarter_inch'

/** Thickness and dowel bearing strength of steel side plates. @source NDS 2018 tables 12B and 12K, footnotes 2 (secondary; reproduces table 12K) */
export const SIDE_PLATES: Readonly<Record<SidePlate, { readonly thicknessIn: number; readonly bearingPsi: number }>> = {
  steel_14_ga: { thicknessIn: 0.075, bearingPsi: 61850 },
  steel_12_ga: { thicknessIn: 0.105, bearingPsi: 61850 },
  steel_10_ga: { thicknessIn: 0.134, bearingPsi: 61850 },
  steel_quarter_inch: { thicknessIn: 0.25, bearingPsi: 87000 },
}

/** Lead hole for the thread as share of the diameter, by specific gravity. @source NDS 2018 12.1.4.2 (from memory) */
export const LEAD_HOLES: readonly { readonly gravityOver: number; readonly least: number; readonly most: number }[] = [
  { gravityOver: 0.6, least: 0.65, most: 0.85 },
  { gravityOver: 0.5, least: 0.6, most: 0.75 },
  { gravityOver: 0, least: 0.4, most: 0.7 },
]

/** Distances in diameters. @source NDS 2018 tables 12.5.1A to E and 12.1.4.6 (secondary) */
export const LAG_GEOMETRY = { edge: 1.5, spacing: 4, leastPenetration: 4, fullLateralPenetration: 8 } as const
