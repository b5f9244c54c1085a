import type { ConductorSize } from './conductor-sizes.js'

/** Direct-current resistance at 75 deg C, ohm per 1000 ft. `strands` 1 is solid. */
export interface DcResistanceRow {
  readonly size: ConductorSize
  readonly circularMils: number
  readonly strands: number
  readonly diameterIn: number
  readonly copper: number
  readonly coatedCopper: number
  readonly aluminum: number
}

const row = (
  size: ConductorSize,
  circularMils: number,
  strands: number,
  diameterIn: number,
  copper: number,
  coatedCopper: number,
  aluminum: number,
): DcResistanceRow => ({ size, circularMils, strands, diameterIn, copper, coatedCopper, aluminum })

/**
 * Direct-current resistance of conductors at 75 deg C.
 *
 * @source NEC Chapter 9 Table 8 (the same 2011 to 2023).
 * @limits 10 AWG solid aluminum is printed 2.00 in the 2017 text and 1.99 in a 2023 data copy; the formula gives 2.00.
 */
export const dcResistance: readonly DcResistanceRow[] = [
  row('14', 4110, 1, 0.064, 3.07, 3.19, 5.06),
  row('14', 4110, 7, 0.073, 3.14, 3.26, 5.17),
  row('12', 6530, 1, 0.081, 1.93, 2.01, 3.18),
  row('12', 6530, 7, 0.092, 1.98, 2.05, 3.25),
  row('10', 10380, 1, 0.102, 1.21, 1.26, 2),
  row('10', 10380, 7, 0.116, 1.24, 1.29, 2.04),
  row('8', 16510, 1, 0.128, 0.764, 0.786, 1.26),
  row('8', 16510, 7, 0.146, 0.778, 0.809, 1.28),
  row('6', 26240, 7, 0.184, 0.491, 0.51, 0.808),
  row('4', 41740, 7, 0.232, 0.308, 0.321, 0.508),
  row('3', 52620, 7, 0.26, 0.245, 0.254, 0.403),
  row('2', 66360, 7, 0.292, 0.194, 0.201, 0.319),
  row('1', 83690, 19, 0.332, 0.154, 0.16, 0.253),
  row('1/0', 105600, 19, 0.372, 0.122, 0.127, 0.201),
  row('2/0', 133100, 19, 0.418, 0.0967, 0.101, 0.159),
  row('3/0', 167800, 19, 0.47, 0.0766, 0.0797, 0.126),
  row('4/0', 211600, 19, 0.528, 0.0608, 0.0626, 0.1),
  row('250 kcmil', 250000, 37, 0.575, 0.0515, 0.0535, 0.0847),
  row('300 kcmil', 300000, 37, 0.63, 0.0429, 0.0446, 0.0707),
  row('350 kcmil', 350000, 37, 0.681, 0.0367, 0.0382, 0.0605),
  row('400 kcmil', 400000, 37, 0.728, 0.0321, 0.0331, 0.0529),
  row('500 kcmil', 500000, 37, 0.813, 0.0258, 0.0265, 0.0424),
]

/** Temperature at which the resistances hold, deg C. */
export const RESISTANCE_TEMPERATURE_C = 75
