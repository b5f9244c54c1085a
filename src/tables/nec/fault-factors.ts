import type { Source } from '../../worksheet/index.js'

/** Share by which the impedance of a transformer may lie under that of its nameplate. */
export const IMPEDANCE_TOLERANCE = 0.1

/**
 * Fault current from a line to the neutral at the terminals of a centre-tapped transformer, as a multiple of that from line to line;
 * published between 1.33 and 1.67.
 */
export const NEUTRAL_FAULT_RATIO = 1.5

/** Temperature at which a cold conductor carries the fault, deg C; a warm one carries less. */
export const FAULT_CONDUCTOR_C = 25

/** Temperature coefficient of resistance at 75 deg C, 1/K. @source NEC Chapter 9 Table 8 note 2 (2017 read) */
export const RESISTANCE_COEFFICIENT_PER_K = { copper: 0.00323, aluminum: 0.0033 } as const

/** Where the point-to-point method and its ratio at the transformer stand. */
export const POINT_TO_POINT: Source = {
  document: 'point-to-point method of fault currents, published calculation sheet',
  place: 'single-phase, centre-tapped transformer',
  standing: 'secondary',
}
