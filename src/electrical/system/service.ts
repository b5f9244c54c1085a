import { StageError } from '../../worksheet/index.js'
import type { Volts } from '../../values/index.js'
import { isAc, polesOf, type Circuit } from './circuit.js'
import type { Job } from './job.js'

/** The service as the circuits see it. */
export interface Service {
  /** Between two lines, V. */
  readonly lineToLineV: Volts
  readonly phases: 1 | 3
  /** Whether two lines of it with the neutral are part of a wye, whose neutral carries current even when both are equal. */
  readonly wye: boolean
}

/** Line-to-line voltage of a service that states none, V. */
export const USUAL_SERVICE_V = 240

/** Line-to-line voltage of a 208Y/120 V service, V. */
const WYE_V = 208

/**
 * Voltage and phases of the service: 120/240 V in one phase, 208Y/120 V in three phases, or two lines and neutral of it.
 *
 * @throws StageError for deltas, and for a three-phase service whose kind is not stated.
 */
export function serviceOf(job: Pick<Job, 'electrical'>): Service {
  const { voltage_v: lineToLineV = USUAL_SERVICE_V, phases = 1, system } = job.electrical.service ?? {}
  const where = 'electrical.service'
  if (system === 'high_leg_delta' || system === 'open_delta')
    throw new StageError(
      `${where}.system`,
      `a ${system.replaceAll('_', ' ')} is not covered: its lines are not alike, and one of them is 208 V to neutral or has no transformer of its own`,
      'Ask an electrical engineer and the utility',
    )
  if (phases === 3 && lineToLineV !== WYE_V)
    throw new StageError(
      `${where}.voltage_v`,
      `${lineToLineV} V in three phases is a delta, which is not covered; 208 V is`,
      'State voltage_v: 208 for a 208Y/120 V service, or ask an electrical engineer',
    )
  if (phases === 3 && system === undefined)
    throw new StageError(
      `${where}.system`,
      'the kind of the three-phase service is not stated, and a delta of the same number of wires is not covered',
      'Measure each line to neutral: 120 V on all three is system: wye; 208 V on one is a high-leg delta',
    )
  if (phases === 1 && lineToLineV === USUAL_SERVICE_V && system === 'wye')
    throw new StageError(
      `${where}.system`,
      'a wye of 120 V has 208 V between its lines, the service states 240 V',
      'State voltage_v: 208, or take system out for a single-phase 120/240 V service',
    )
  return { lineToLineV, phases, wye: lineToLineV === WYE_V }
}

/**
 * Current-carrying conductors that a circuit brings into a raceway. The neutral counts only beside two lines of a wye,
 * where it carries about as much as they do.
 *
 * @source NEC 310.15(B)(5)(b) to 2017, 310.15(E) since 2020 (from memory)
 */
export function countedConductors(job: Pick<Job, 'electrical'>, circuit: Circuit, neutral: boolean): number {
  const lines = polesOf(circuit)
  return neutral && isAc(circuit) && lines === 2 && serviceOf(job).wye ? lines + 1 : lines
}
