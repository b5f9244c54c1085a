import type { Inverter } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import { own, type Amperes } from '../../values/index.js'
import { SERVICE_VOLTAGE_V } from './circuit.js'
import { positive, type Job } from './job.js'

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
 * Rated continuous output current of an inverter.
 *
 * @returns A, from the data sheet, or power over 240 V when the sheet's current is missing.
 * @throws StageError for another voltage than 240 V.
 */
export function outputCurrentA(job: Job, id: string, inverter: Inverter): Amperes {
  const where = `equipment.inverters.${id}`
  if (inverter.ac_voltage_v !== undefined && inverter.ac_voltage_v !== SERVICE_VOLTAGE_V)
    throw new StageError(
      `${where}.ac_voltage_v`,
      `${inverter.ac_voltage_v} V is not covered; only single-phase 120/240 V services are`,
      'Ask an electrical engineer for another service',
    )
  if (inverter.ac_current_a !== undefined)
    return positive(inverter.ac_current_a, `${where}.ac_current_a`, 'the current')
  const currentA = positive(inverter.ac_power_w, `${where}.ac_power_w`, 'the power') / SERVICE_VOLTAGE_V
  return job.worksheet.assume({
    path: `${where}.ac_current_a`,
    value: currentA,
    unit: 'A',
    why: 'The rated current is not stated, so it is the rated power over 240 V at power factor 1',
    source: { document: 'P = V x I', standing: 'common practice, no source' },
  })
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
    `equipment.inverters.${id}.max_branch_ocpd_a`,
    'the largest overcurrent device that the maker allows is not stated',
    "It stands on the inverter's data sheet or label as maximum overcurrent protection",
  )
}
