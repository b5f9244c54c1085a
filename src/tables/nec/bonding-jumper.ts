import { electrodeConductor, type ElectrodeConductorRow } from './electrode-conductor.js'

/** Last row of Table 250.66 that the table of jumpers shares, thousand circular mils of copper. */
const SHARED_TO_KCMIL = 1100

/**
 * Least neutral, main bonding jumper and supply-side bonding jumper by the largest ungrounded conductor of the set. Up to
 * 1100 kcmil copper its rows are those of Table 250.66; beyond, 12.5 percent of the area, which is not covered here.
 *
 * @source NEC Table 250.102(C)(1); 2023 read. Numbered so since 2014.
 */
export const bondingJumper: readonly ElectrodeConductorRow[] = electrodeConductor.filter(
  (row) => row.toCopperKcmil <= SHARED_TO_KCMIL,
)
