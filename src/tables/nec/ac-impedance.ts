import type { ConductorSize } from './conductor-sizes.js'

/** Values in PVC, aluminum and steel conduit, ohm to neutral per 1000 ft; undefined where the table has no cell. */
type InConduit = readonly [pvc: number, aluminum: number, steel: number]
export interface AcImpedanceRow {
  readonly size: ConductorSize
  /** Reactance in PVC or aluminum conduit, and in steel conduit. */
  readonly reactance: readonly [pvcOrAluminum: number, steel: number]
  readonly copperResistance: InConduit
  readonly aluminumResistance: InConduit | undefined
  /** Effective impedance at power factor 0.85, as printed. */
  readonly copperZ085: InConduit
  readonly aluminumZ085: InConduit | undefined
}

const row = (
  size: ConductorSize,
  reactance: readonly [number, number],
  copperResistance: InConduit,
  aluminumResistance: InConduit | undefined,
  copperZ085: InConduit,
  aluminumZ085: InConduit | undefined,
): AcImpedanceRow => ({ size, reactance, copperResistance, aluminumResistance, copperZ085, aluminumZ085 })

/**
 * Alternating-current resistance and reactance, 60 Hz, 75 deg C, three single conductors in conduit.
 *
 * @source NEC Chapter 9 Table 9; effective impedance R cos(phi) + X sin(phi), note 2.
 */
export const acImpedance: readonly AcImpedanceRow[] = [
  row('14', [0.058, 0.073], [3.1, 3.1, 3.1], undefined, [2.7, 2.7, 2.7], undefined),
  row('12', [0.054, 0.068], [2, 2, 2], [3.2, 3.2, 3.2], [1.7, 1.7, 1.7], [2.8, 2.8, 2.8]),
  row('10', [0.05, 0.063], [1.2, 1.2, 1.2], [2, 2, 2], [1.1, 1.1, 1.1], [1.8, 1.8, 1.8]),
  row('8', [0.052, 0.065], [0.78, 0.78, 0.78], [1.3, 1.3, 1.3], [0.69, 0.69, 0.7], [1.1, 1.1, 1.1]),
  row('6', [0.051, 0.064], [0.49, 0.49, 0.49], [0.81, 0.81, 0.81], [0.44, 0.45, 0.45], [0.71, 0.72, 0.72]),
  row('4', [0.048, 0.06], [0.31, 0.31, 0.31], [0.51, 0.51, 0.51], [0.29, 0.29, 0.3], [0.46, 0.46, 0.46]),
  row('3', [0.047, 0.059], [0.25, 0.25, 0.25], [0.4, 0.41, 0.4], [0.23, 0.24, 0.24], [0.37, 0.37, 0.37]),
  row('2', [0.045, 0.057], [0.19, 0.2, 0.2], [0.32, 0.32, 0.32], [0.19, 0.19, 0.2], [0.3, 0.3, 0.3]),
  row('1', [0.046, 0.057], [0.15, 0.16, 0.16], [0.25, 0.26, 0.25], [0.16, 0.16, 0.16], [0.24, 0.24, 0.25]),
  row('1/0', [0.044, 0.055], [0.12, 0.13, 0.12], [0.2, 0.21, 0.2], [0.13, 0.13, 0.13], [0.19, 0.2, 0.2]),
  row('2/0', [0.043, 0.054], [0.1, 0.1, 0.1], [0.16, 0.16, 0.16], [0.11, 0.11, 0.11], [0.16, 0.16, 0.16]),
  row('3/0', [0.042, 0.052], [0.077, 0.082, 0.079], [0.13, 0.13, 0.13], [0.088, 0.092, 0.094], [0.13, 0.13, 0.14]),
  row('4/0', [0.041, 0.051], [0.062, 0.067, 0.063], [0.1, 0.11, 0.1], [0.074, 0.078, 0.08], [0.11, 0.11, 0.11]),
  row(
    '250 kcmil',
    [0.041, 0.052],
    [0.052, 0.057, 0.054],
    [0.085, 0.09, 0.086],
    [0.066, 0.07, 0.073],
    [0.094, 0.098, 0.1],
  ),
  row(
    '300 kcmil',
    [0.041, 0.051],
    [0.044, 0.049, 0.045],
    [0.071, 0.076, 0.072],
    [0.059, 0.063, 0.065],
    [0.082, 0.086, 0.088],
  ),
  row(
    '350 kcmil',
    [0.04, 0.05],
    [0.038, 0.043, 0.039],
    [0.061, 0.066, 0.063],
    [0.053, 0.058, 0.06],
    [0.073, 0.077, 0.08],
  ),
  row(
    '400 kcmil',
    [0.04, 0.049],
    [0.033, 0.038, 0.035],
    [0.054, 0.059, 0.055],
    [0.049, 0.053, 0.056],
    [0.066, 0.071, 0.073],
  ),
  row(
    '500 kcmil',
    [0.039, 0.048],
    [0.027, 0.032, 0.029],
    [0.043, 0.048, 0.045],
    [0.043, 0.048, 0.05],
    [0.057, 0.061, 0.064],
  ),
]
