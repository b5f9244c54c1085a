import type { ShutdownEquipment } from '../../project/index.js'
import { necSource, rapidShutdownRules } from '../../tables/nec/index.js'
import type { Source } from '../../worksheet/index.js'
import { own } from '../../values/index.js'
import { practice, ratedIsc, type Circuit, type Job, type StringFacts, type StringValues } from '../system/index.js'
import { checkTransmitter } from './transmitter.js'

const WHERE = 'electrical.rapid_shutdown.equipment'

/** Shutdown units behind the modules of plain strings: what their inputs take, their listing, and the transmitter. */
export function checkShutdownEquipment(job: Job, circuits: readonly Circuit[], strings: readonly StringValues[]): void {
  const equipment = job.electrical.rapid_shutdown?.equipment
  const plain = circuits.flatMap(({ id, string }) => {
    const values = strings.find((each) => each.id === id)
    return string === undefined || values === undefined || string.optimiser !== undefined ? [] : [{ string, values }]
  })
  checkConverters(job, circuits)
  if (equipment === undefined) return
  if (plain.length === 0) {
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.shutdown-equipment-unused',
      message: 'shutdown equipment is stated, and no string without converters has modules for it',
      where: WHERE,
      source: practice(''),
      fix: 'Take it out; module-level inverters, AC modules and converters are shut down without it',
    })
    return
  }
  for (const { string, values } of plain) checkUnits(job, equipment, string, values)
  tellUnknown(job, equipment)
  checkListing(job, equipment.listed, WHERE, 'the shutdown equipment')
  checkTransmitter(
    job,
    equipment,
    plain.map(({ string }) => string),
  )
}

/** Converters that stand for the shutdown of their modules are listed for it. */
function checkConverters(job: Job, circuits: readonly Circuit[]): void {
  if (job.electrical.rapid_shutdown?.inside_boundary !== 'module_level') return
  const seen = new Set<string>()
  for (const { string } of circuits) {
    const optimiser = string?.optimiser
    if (optimiser === undefined || seen.has(optimiser.id)) continue
    seen.add(optimiser.id)
    checkListing(
      job,
      optimiser.sheet.rapid_shutdown,
      `equipment.optimisers.${optimiser.id}.rapid_shutdown`,
      `converter ${optimiser.id}`,
    )
  }
}

function checkListing(job: Job, listed: boolean | undefined, where: string, what: string): void {
  const rule = rapidShutdownRules.find((candidate) => candidate.edition === job.edition)
  if (listed === true || rule === undefined) return
  job.worksheet.find({
    severity: listed === false ? 'error' : 'warning',
    id: 'wire.shutdown-listing',
    message: `${what} ${listed === false ? 'is not listed' : 'is not stated to be listed'} as rapid-shutdown equipment`,
    where,
    source: necSource(job.edition, rule.section, rule.standing),
    fix: 'Use listed equipment, and state it from the data sheet',
  })
}

/** Voltage and current of the modules on one unit, and the string voltage, which the units do not lower in operation. */
function checkUnits(job: Job, equipment: ShutdownEquipment, string: StringFacts, values: StringValues): void {
  const source = job.nec('listedEquipment')
  const fail = (key: 'voltage' | 'current' | 'system-voltage', message: string, fix: string): void => {
    job.worksheet.find({ severity: 'error', id: `wire.shutdown-${key}`, message, where: WHERE, source, fix })
  }
  const { input_max_v: mostV, input_max_a: mostA, max_system_voltage_v: systemV } = equipment
  const together = Math.min(equipment.modules_per_unit, string.modules)
  const unitV = (together * values.voc_cold_v) / string.modules
  const iscA = ratedIsc(string.module, own(job.project.arrays, string.array))?.iscA ?? Infinity
  recordUnit(job, values.id, { together, unitV, mostV }, source)
  if (mostV !== undefined && unitV > mostV)
    fail(
      'voltage',
      `${together} module(s) of string ${values.id} on one shutdown unit reach ${unitV.toFixed(1)} V in the cold, ${mostV} V is its limit`,
      'Use fewer modules on one unit, or another unit',
    )
  if (mostA !== undefined && iscA > mostA)
    fail(
      'current',
      `the modules of string ${values.id} give ${iscA.toFixed(1)} A, the shutdown units take ${mostA} A`,
      'Use a unit for a higher current',
    )
  if (systemV !== undefined && values.voc_cold_v > systemV)
    fail(
      'system-voltage',
      `string ${values.id} reaches ${values.voc_cold_v.toFixed(1)} V in operation, which the shutdown units do not lower; ${systemV} V is their limit`,
      'Use shorter strings, or units for a higher system voltage',
    )
}

interface UnitVoltage {
  readonly together: number
  readonly unitV: number
  readonly mostV: number | undefined
}

function recordUnit(job: Job, id: string, { together, unitV, mostV }: UnitVoltage, source: Source): void {
  job.worksheet.note({
    id: `wire.string.${id}.shutdown-unit`,
    says: 'Voltage of the modules on one shutdown unit in the cold; in operation the string keeps its full voltage',
    formula: 'V_unit = n x V_cold of one module',
    inputs: [{ symbol: 'n', value: together, unit: 'modules', from: `${WHERE}.modules_per_unit` }],
    result: { symbol: 'V_unit', value: unitV, unit: 'V' },
    ...(mostV === undefined ? {} : { check: { relation: '<=' as const, limit: mostV, pass: unitV <= mostV } }),
    source,
  })
}

function tellUnknown(job: Job, equipment: ShutdownEquipment): void {
  const missing = [
    ...(equipment.input_max_v === undefined ? ['input_max_v'] : []),
    ...(equipment.input_max_a === undefined ? ['input_max_a'] : []),
    ...(equipment.max_system_voltage_v === undefined ? ['max_system_voltage_v'] : []),
  ]
  if (missing.length > 0)
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.shutdown-limit-unknown',
      message: `${missing.join(', ')} of the shutdown equipment ${missing.length === 1 ? 'is' : 'are'} not stated, so the modules were not compared with ${missing.length === 1 ? 'it' : 'them'}`,
      where: WHERE,
      source: job.nec('listedEquipment'),
      fix: 'Take them from the data sheet of the units',
    })
}
