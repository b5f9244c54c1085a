import { inverterPath } from '../../project/facts.js'
import type { Inverter } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import { own, type Amperes } from '../../values/index.js'
import { positive, type Job } from './job.js'
import { serviceOf, USUAL_SERVICE_V } from './service.js'

/** An inverter of the project, looked up by id. */
export function inverterById(job: Job, id: string, where: string): Inverter {
  const inverter = own(job.project.equipment.inverters, id)
  if (inverter !== undefined) return inverter
  throw new StageError(
    where,
    `there is no inverter '${id}' under equipment.inverters`,
    `Use one of: ${Object.keys(job.project.equipment.inverters ?? {}).join(', ') || '(none is stated)'}`,
  )
}

/**
 * Rated continuous output current of an inverter in each of its lines.
 *
 * @returns A, from the data sheet, or from its power and the voltage of the service when the sheet's current is missing.
 * @throws StageError for another voltage than that of the service, and for a three-phase inverter on a single phase.
 */
export function outputCurrentA(job: Job, id: string, inverter: Inverter): Amperes {
  const where = inverterPath(id)
  const { lineToLineV, phases } = serviceOf(job)
  checkVoltage(inverter, where, lineToLineV)
  const three = inverter.phases === 3
  if (three && phases === 1)
    throw new StageError(
      `${where}.phases`,
      'a three-phase inverter has no place on a single-phase service',
      'Use a single-phase inverter, or state electrical.service.phases: 3 and system: wye for a 208Y/120 V service',
    )
  if (inverter.ac_current_a !== undefined)
    return positive(inverter.ac_current_a, `${where}.ac_current_a`, 'the current')
  const overV = three ? Math.sqrt(3) * lineToLineV : lineToLineV
  const currentA = positive(inverter.ac_power_w, `${where}.ac_power_w`, 'the power') / overV
  return job.worksheet.assume({
    path: `${where}.ac_current_a`,
    value: currentA,
    unit: 'A',
    why: `The rated current is not stated, so it is the rated power over ${three ? 'sqrt(3) x ' : ''}${lineToLineV} V at power factor 1`,
    source: { document: 'P = V x I', standing: 'common practice, no source' },
  })
}

/** An inverter of another voltage than the service; one that states none on the usual service counts as made for it. */
function checkVoltage(inverter: Inverter, where: string, serviceV: number): void {
  const stated = inverter.ac_voltage_v
  if (stated === serviceV || (stated === undefined && serviceV === USUAL_SERVICE_V)) return
  if (stated !== undefined && serviceV === USUAL_SERVICE_V)
    throw new StageError(
      `${where}.ac_voltage_v`,
      `${stated} V is not covered; only single-phase 120/240 V services are`,
      stated === 208
        ? 'State electrical.service.voltage_v: 208 where the service is one, or use a 240 V inverter'
        : 'Ask an electrical engineer for another service',
    )
  throw new StageError(
    `${where}.ac_voltage_v`,
    stated === undefined
      ? `the AC voltage of the inverter is not stated, and the service has ${serviceV} V`
      : `the inverter gives ${stated} V, the service has ${serviceV} V`,
    `Use an inverter whose data sheet allows ${serviceV} V and state ac_voltage_v: ${serviceV} with its current at that voltage`,
  )
}

/**
 * Largest overcurrent device that the makers of the inverter and the trunk allow.
 *
 * @returns A.
 * @throws StageError when neither states one: it is a safety limit of the listing.
 * @source NEC 110.3(B)
 */
export function makerMaxDeviceA(id: string, inverter: Inverter, trunkMaxA: Amperes | undefined): Amperes {
  const limit = Math.min(inverter.max_branch_ocpd_a ?? Infinity, trunkMaxA ?? Infinity)
  if (limit < Infinity) return limit
  throw new StageError(
    `${inverterPath(id)}.max_branch_ocpd_a`,
    'the largest overcurrent device that the maker allows is not stated',
    "It stands on the inverter's data sheet or label as maximum overcurrent protection",
  )
}
