import { SHORT_CIRCUIT_FACTOR } from '../../tables/nec/index.js'
import type { Amperes, Volts, Watts } from '../../values/index.js'
import type { Job } from '../system/index.js'
import type { OptimiserCase } from './optimiser-case.js'

/** What the modules of one converter bring to its input. */
export interface UnitInput {
  readonly coldV: Volts
  readonly hotV: Volts
  /** Highest rated short-circuit current, without 125 percent. */
  readonly iscA: Amperes
  readonly powerW: Watts
  /** Whether the last unit of the string has fewer modules. */
  readonly lastIsShort: boolean
}

/**
 * Whether the input of a converter takes its modules: voltage in the cold, short-circuit current, power and the heat.
 *
 * @returns Whether no limit is passed.
 * @source NEC 110.3(B), limits of the data sheet
 */
export function checkOptimiserInput(job: Job, { id, where, optimiser }: OptimiserCase, input: UnitInput): boolean {
  const { sheet } = optimiser
  const place = `equipment.optimisers.${optimiser.id}`
  const source = job.nec('listedEquipment')
  let holds = true
  const fail = (key: 'voltage' | 'current' | 'power' | 'low', message: string, fix: string): void => {
    holds = false
    job.worksheet.find({ severity: 'error', id: `wire.optimiser-${key}`, message, where, source, fix })
  }
  const factor = sheet.isc_with_125_pct === false ? 1 : SHORT_CIRCUIT_FACTOR
  const iscA = factor * input.iscA
  if (sheet.isc_with_125_pct === undefined)
    job.worksheet.assume({
      path: `${place}.isc_with_125_pct`,
      value: 'yes',
      unit: '',
      why: 'The largest short-circuit current is compared with 125 percent of that of the modules, unless the sheet says that it need not be',
      source,
    })
  job.worksheet.note({
    id: `wire.string.${id}.unit-current`,
    says: 'Short-circuit current at the input of one converter',
    formula: factor === 1 ? 'I_sc <= max_isc_a' : '1.25 x I_sc <= max_isc_a',
    inputs: [{ symbol: 'I_sc', value: input.iscA, unit: 'A', from: 'highest rated current of its modules' }],
    result: { symbol: 'I_in', value: iscA, unit: 'A' },
    check: { relation: '<=', limit: sheet.max_isc_a, pass: iscA <= sheet.max_isc_a },
    source,
  })
  if (input.coldV > sheet.input_max_v)
    fail(
      'voltage',
      `the modules on one converter of ${id} reach ${input.coldV.toFixed(1)} V in the cold, ${sheet.input_max_v} V is the limit of its input`,
      'Use a converter for a higher voltage, or fewer modules on one',
    )
  if (iscA > sheet.max_isc_a)
    fail(
      'current',
      `the modules on one converter of ${id} count with ${iscA.toFixed(2)} A short-circuit current${factor === 1 ? '' : ' (with 125 percent)'}, ${sheet.max_isc_a} A is the limit of its input`,
      'Use a converter for a higher current, or state isc_with_125_pct: false where its sheet compares the rated current itself',
    )
  if (sheet.max_input_power_w !== undefined && input.powerW > sheet.max_input_power_w)
    fail(
      'power',
      `one converter of ${id} gets modules of ${input.powerW} W, ${sheet.max_input_power_w} W is the limit`,
      'Use a larger converter, or another module',
    )
  if (sheet.input_min_v !== undefined && input.hotV < sheet.input_min_v)
    fail(
      'low',
      `the modules on one converter of ${id} fall to ${input.hotV.toFixed(1)} V in the heat, it works from ${sheet.input_min_v} V`,
      'Use a converter that works from a lower voltage',
    )
  if (input.lastIsShort)
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.optimiser-odd-module',
      message: `string ${id} does not fill its last converter, which takes ${sheet.modules_per_unit ?? 1} modules`,
      where,
      source,
      fix: 'Read in its instructions whether one unit of a string may have fewer modules, or change their number',
    })
  return holds
}
