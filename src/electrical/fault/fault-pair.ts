import type { Amperes } from '../../values/index.js'

/** Available fault current at one place: a device there interrupts the larger. */
export interface FaultPair {
  readonly lineToLineA: Amperes
  readonly lineToNeutralA: Amperes
}

/** The larger of the two, A. */
export const governingFaultA = ({ lineToLineA, lineToNeutralA }: FaultPair): Amperes =>
  Math.max(lineToLineA, lineToNeutralA)
