import { StageError } from '../../worksheet/index.js'
import { POINT_TO_POINT } from '../../tables/nec/index.js'
import type { ServiceTransformer } from '../../project/index.js'
import { USUAL_SERVICE_V, positive, type Job } from '../system/index.js'
import type { FaultRun } from './fault-down.js'
import { governingFaultA, type FaultPair } from './fault-pair.js'
import { recordRun, recordTransformer } from './record-fault.js'
import { faultAtTransformer } from './transformer-fault.js'

const STATED = 'electrical.service.available_fault_current_a'
const TRANSFORMER = 'electrical.service.transformer'

/** Available fault current at the service. */
export interface ServiceFault extends FaultPair {
  /** The larger of the two, A. */
  readonly governsA: number
  /** Where it comes from, one phrase. */
  readonly how: string
}

/**
 * Available fault current at the service: worked out from the transformer, or as the project states it.
 *
 * @returns undefined when the project tells neither. A stated current counts for faults to the neutral too; beside a transformer the
 * larger of both counts.
 * @throws StageError when the run from the transformer is told in part only.
 * @source NEC 110.9
 */
export function faultAtService(job: Job): ServiceFault | undefined {
  const { service } = job.electrical
  const stated = service?.available_fault_current_a
  const worked = service?.transformer === undefined ? undefined : fromTransformer(job, service.transformer)
  if (worked === undefined)
    return stated === undefined
      ? undefined
      : withLarger(
          { lineToLineA: stated, lineToNeutralA: stated },
          `${stated} A as stated, from line to line and to the neutral alike`,
        )
  const how = `worked out from the transformer of ${service?.transformer?.rating_kva} kVA and ${service?.transformer?.impedance_pct} percent`
  if (stated === undefined) return withLarger(worked, how)
  job.worksheet.find({
    severity: 'note',
    id: 'wire.fault-current-twice',
    message: `a fault current of ${stated} A is stated, and ${worked.lineToLineA.toFixed(0)} A from line to line and ${worked.lineToNeutralA.toFixed(0)} A to the neutral follow from the transformer; the larger counts`,
    where: STATED,
    source: job.nec('interruptingRating'),
    fix: 'Take out the one that is out of date; ask the utility',
  })
  return withLarger(
    {
      lineToLineA: Math.max(stated, worked.lineToLineA),
      lineToNeutralA: Math.max(stated, worked.lineToNeutralA),
    },
    `the larger of ${stated} A as stated and of what is ${how}`,
  )
}

const withLarger = (pair: FaultPair, how: string): ServiceFault => ({ ...pair, governsA: governingFaultA(pair), how })

function fromTransformer(job: Job, transformer: ServiceTransformer): FaultPair {
  const kva = positive(transformer.rating_kva, `${TRANSFORMER}.rating_kva`, 'the rating of the transformer, kVA,')
  const pct = positive(transformer.impedance_pct, `${TRANSFORMER}.impedance_pct`, 'the impedance, percent,')
  const volts: number = job.electrical.service?.voltage_v ?? USUAL_SERVICE_V
  if (volts !== USUAL_SERVICE_V)
    throw new StageError(
      TRANSFORMER,
      `the fault current is worked out behind a single-phase transformer of ${USUAL_SERVICE_V} V only, the service has ${volts} V`,
      'Ask the utility for the available fault current and state available_fault_current_a',
    )
  const run = runOf(transformer)
  const terminals = faultAtTransformer(kva, pct)
  recordTransformer(job, transformer, terminals)
  if (run !== undefined) return recordRun(job, 'wire.fault.service', 'the service', terminals, run)
  job.worksheet.assume({
    path: `${TRANSFORMER}.run_ft`,
    value: 0,
    unit: 'ft',
    why: 'The fault current at the transformer itself is taken, which is the largest',
    source: POINT_TO_POINT,
  })
  return terminals
}

/** The conductors from the transformer; undefined when nothing is told of them. */
function runOf({ run_ft: lengthFt, size, material, sets }: ServiceTransformer): FaultRun | undefined {
  if (lengthFt !== undefined && size !== undefined && material !== undefined && sets !== undefined)
    return { lengthFt, size, material, sets }
  const keys = { run_ft: lengthFt, size, material, sets }
  const missing = Object.entries(keys).flatMap(([key, value]) => (value === undefined ? [key] : []))
  if (missing.length === Object.keys(keys).length) return undefined
  throw new StageError(
    TRANSFORMER,
    `${missing.join(', ')} of the conductors from the transformer to the service is not stated`,
    'State run_ft, size, material and sets together, or none of them; then the fault current at the transformer is taken',
  )
}
