import { ampacityFreeAir, ampacityRaceway, type ConductorMaterial, type ConductorSize } from '../../tables/nec/index.js'
import type { Amperes } from '../../values/index.js'

/** The conductor: size and metal. */
export interface Conductor {
  readonly size: ConductorSize
  readonly material: ConductorMaterial
}

/**
 * Ampacity from the table, before any factor.
 *
 * @param column Temperature column, deg C.
 * @param freeAir Whether it is a single conductor in free air (exposed array wiring) and not in a raceway.
 * @returns Ampacity, A, or undefined when that metal is not made so small.
 * @source NEC Table 310.16 and 310.17 (2020, 2023), Table 310.15(B)(16) and (17) (2011 to 2017)
 */
export function baseAmpacityA(
  { size, material }: Conductor,
  column: 60 | 75 | 90,
  freeAir: boolean,
): Amperes | undefined {
  const row = (freeAir ? ampacityFreeAir : ampacityRaceway).find((candidate) => candidate.size === size)
  return row?.[material]?.[column === 60 ? 0 : column === 75 ? 1 : 2]
}
