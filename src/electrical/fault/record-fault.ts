import type { ServiceTransformer } from '../../project/index.js'
import { IMPEDANCE_TOLERANCE, NEUTRAL_FAULT_RATIO, POINT_TO_POINT } from '../../tables/nec/index.js'
import { USUAL_SERVICE_V, type Job } from '../system/index.js'
import { conductorConstant } from './conductor-constant.js'
import { faultDown, NEUTRAL_VOLTAGE_V, type FaultRun } from './fault-down.js'
import type { FaultPair } from './fault-pair.js'

const LIMITS = 'Without what inverters and motors of the house add'

/** The two steps at the transformer. */
export function recordTransformer(job: Job, transformer: ServiceTransformer, at: FaultPair): void {
  const where = 'electrical.service.transformer'
  job.worksheet.note({
    id: 'wire.fault.transformer.line',
    says: 'Fault current from line to line at the transformer, its impedance 10 percent below the nameplate, behind a grid without limit',
    formula: 'I = 1000 * S / V * 100 / (Z * (1 - t))',
    inputs: [
      { symbol: 'S', value: transformer.rating_kva, unit: 'kVA', from: `${where}.rating_kva` },
      { symbol: 'V', value: USUAL_SERVICE_V, unit: 'V', from: 'voltage of the service' },
      { symbol: 'Z', value: transformer.impedance_pct, unit: '%', from: `${where}.impedance_pct` },
      { symbol: 't', value: IMPEDANCE_TOLERANCE, unit: '', from: 'tolerance of the nameplate' },
    ],
    result: { symbol: 'I', value: at.lineToLineA, unit: 'A' },
    source: POINT_TO_POINT,
    limits: LIMITS,
  })
  job.worksheet.note({
    id: 'wire.fault.transformer.neutral',
    says: 'Fault current from a line to the neutral at the transformer',
    formula: 'I_n = r * I',
    inputs: [
      { symbol: 'r', value: NEUTRAL_FAULT_RATIO, unit: '', from: 'ratio at a centre-tapped transformer' },
      { symbol: 'I', value: at.lineToLineA, unit: 'A', from: 'wire.fault.transformer.line' },
    ],
    result: { symbol: 'I_n', value: at.lineToNeutralA, unit: 'A' },
    source: POINT_TO_POINT,
    limits: LIMITS,
  })
}

/**
 * Records the fault current at the end of a run, and hands it back.
 *
 * @param id Of the two steps, without `.line` and `.neutral`.
 * @param place What stands at its end: `the service`.
 */
export function recordRun(job: Job, id: string, place: string, at: FaultPair, run: FaultRun): FaultPair {
  const end = faultDown(at, run)
  const both = [
    ['line', 'line to line', at.lineToLineA, USUAL_SERVICE_V, end.lineToLineA],
    ['neutral', 'a line to the neutral', at.lineToNeutralA, NEUTRAL_VOLTAGE_V, end.lineToNeutralA],
  ] as const
  for (const [way, words, startA, voltageV, endA] of both)
    job.worksheet.note({
      id: `${id}.${way}`,
      says: `Fault current from ${words} at ${place}, behind ${run.lengthFt} ft of ${run.size} ${run.material}`,
      formula: 'I_end = I / (1 + 2 * L * I / (n * C * V))',
      inputs: [
        { symbol: 'I', value: startA, unit: 'A', from: 'fault current at the start of the run' },
        { symbol: 'L', value: run.lengthFt, unit: 'ft', from: 'length of the run' },
        { symbol: 'n', value: run.sets, unit: '', from: 'sets in parallel' },
        { symbol: 'C', value: conductorConstant(run), unit: 'ft/ohm', from: 'Chapter 9 Table 8 at 25 deg C' },
        { symbol: 'V', value: voltageV, unit: 'V', from: 'voltage of the service' },
      ],
      result: { symbol: 'I_end', value: endA, unit: 'A' },
      source: POINT_TO_POINT,
      limits: LIMITS,
    })
  return end
}
