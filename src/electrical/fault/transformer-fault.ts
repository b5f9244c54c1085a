import { IMPEDANCE_TOLERANCE, NEUTRAL_FAULT_RATIO } from '../../tables/nec/index.js'
import type { Percent } from '../../values/index.js'
import { USUAL_SERVICE_V } from '../system/index.js'
import type { FaultPair } from './fault-pair.js'

/**
 * Fault current at the secondary terminals of a single-phase 120/240 V transformer that an unlimited grid feeds.
 *
 * @param kva Its rating, kVA.
 * @param impedancePct On its nameplate; 10 percent less is reckoned with.
 * @limits Without what inverters and motors of the house add.
 */
export function faultAtTransformer(kva: number, impedancePct: Percent): FaultPair {
  const ratedA = (kva * 1000) / USUAL_SERVICE_V
  const lineToLineA = (ratedA * 100) / (impedancePct * (1 - IMPEDANCE_TOLERANCE))
  return { lineToLineA, lineToNeutralA: NEUTRAL_FAULT_RATIO * lineToLineA }
}
