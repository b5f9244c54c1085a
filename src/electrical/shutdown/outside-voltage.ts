import { necSource, OUTSIDE_BOUNDARY_V, rapidShutdownRules } from '../../tables/nec/index.js'
import type { Circuit, Job, StringValues } from '../system/index.js'

/** The units of one string and what each leaves on it after shutdown. */
interface Leftover {
  readonly units: number
  readonly eachV: number | undefined
  readonly where: string
}

/**
 * The voltage that strings with shutdown units or converters keep beyond the array boundary: units in series times what
 * each leaves. Inside a hazard control system, and where no units are named, it is not known.
 *
 * @source NEC 690.12(B)(1)
 */
export function checkOutsideVoltage(job: Job, circuits: readonly Circuit[], strings: readonly StringValues[]): void {
  const rule = rapidShutdownRules.find((candidate) => candidate.edition === job.edition)
  if (rule === undefined) return
  const source = necSource(job.edition, rule.section, rule.standing)
  const unknown = new Map<string, string[]>()
  for (const values of strings) {
    const leftover = leftoverOf(job, circuits, values)
    if (leftover === undefined) continue
    const { units, eachV, where } = leftover
    if (eachV === undefined) {
      unknown.set(where, [...(unknown.get(where) ?? []), values.id])
      continue
    }
    const leftV = job.worksheet.step({
      id: `wire.string.${values.id}.shutdown`,
      says: 'Voltage that stays on the string beyond the array boundary after rapid shutdown',
      formula: 'V = n x V_sd',
      inputs: [
        { symbol: 'n', value: units, unit: 'units', from: `wire.string.${values.id}` },
        { symbol: 'V_sd', value: eachV, unit: 'V', from: where },
      ],
      result: { symbol: 'V', value: units * eachV, unit: 'V' },
      check: { relation: '<=', limit: OUTSIDE_BOUNDARY_V, pass: units * eachV <= OUTSIDE_BOUNDARY_V },
      source,
    })
    if (leftV <= OUTSIDE_BOUNDARY_V) continue
    job.worksheet.find({
      severity: 'error',
      id: 'wire.shutdown-outside-voltage',
      message: `${units} units of ${eachV} V leave ${leftV.toFixed(1)} V on string ${values.id} after rapid shutdown; ${OUTSIDE_BOUNDARY_V} V is the most beyond the array boundary`,
      where,
      source,
      fix: 'Use shorter strings, or units that leave less',
    })
  }
  for (const [where, ids] of unknown)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.shutdown-voltage-unknown',
      message: `what a unit leaves on ${ids.join(', ')} after rapid shutdown is not stated, so ${OUTSIDE_BOUNDARY_V} V beyond the array boundary was not checked`,
      where,
      source,
      fix: 'It stands on the data sheet as output voltage after shutdown, often 1 V or less a unit',
    })
}

function leftoverOf(job: Job, circuits: readonly Circuit[], values: StringValues): Leftover | undefined {
  const string = circuits.find(({ id }) => id === values.id)?.string
  if (string === undefined) return undefined
  if (string.optimiser !== undefined) {
    const { id, sheet, units } = string.optimiser
    return { units, eachV: sheet.shutdown_v, where: `equipment.optimisers.${id}.shutdown_v` }
  }
  const equipment = job.electrical.rapid_shutdown?.equipment
  if (equipment === undefined) return undefined
  return {
    units: Math.ceil(string.modules / equipment.modules_per_unit),
    eachV: equipment.output_shutdown_v,
    where: 'electrical.rapid_shutdown.equipment.output_shutdown_v',
  }
}
