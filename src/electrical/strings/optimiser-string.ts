import { listedWith } from './optimiser-listing.js'
import type { Volts } from '../../values/index.js'
import type { Circuit, Job } from '../system/index.js'
import { optimiserLengths } from './optimiser-lengths.js'
import type { OptimiserCase } from './optimiser-case.js'
import { tellVoltageUnknown } from './voltage-unknown.js'

/** How long a string with converters may be, and whether nothing is passed. */
export interface OptimiserLimits {
  readonly leastModules: number
  readonly mostModules: number
  readonly holds: boolean
}

/**
 * Whether a string of converters suits its maker's limits and its inverter: number of units, power, voltage, listing.
 *
 * @source NEC 110.3(B), 690.7
 */
export function checkOptimiserString(
  job: Job,
  one: OptimiserCase,
  { highestV, limitV }: { readonly highestV: Volts; readonly limitV: Volts },
  circuits: readonly Circuit[],
): OptimiserLimits {
  const { id, where, string, optimiser, inverterId, inverter } = one
  const { sheet, units } = optimiser
  let holds = listedWith(job, one, circuits)
  const fail = (key: 'units' | 'string-power' | 'string-voltage', message: string, fix: string): void => {
    holds = false
    job.worksheet.find({
      severity: 'error',
      id: `wire.optimiser-${key}`,
      message,
      where,
      source: job.nec('listedEquipment'),
      fix,
    })
  }
  const { leastModules, mostModules } = optimiserLengths(sheet, string.module.pmax_w, limitV)
  const least = sheet.min_per_string ?? 1
  if (units < least || units > (sheet.max_per_string ?? Infinity))
    fail(
      'units',
      `string ${id} has ${units} converters in series, its maker allows ${least} to ${sheet.max_per_string ?? 'any number'}`,
      'Change the number of modules of the string',
    )
  const powerW = string.modules * string.module.pmax_w
  if (sheet.max_string_power_w !== undefined && powerW > sheet.max_string_power_w)
    fail(
      'string-power',
      `string ${id} has ${powerW} W of modules, ${sheet.max_string_power_w} W is the limit`,
      'Divide it into more strings',
    )
  if (highestV > limitV)
    fail(
      'string-voltage',
      `string ${id} can reach ${highestV.toFixed(1)} V, ${limitV} V is the limit`,
      'Use fewer converters in series, or state regulated_string_v where the listing of converter and inverter does',
    )
  tellUnknown(job, one)
  tellVoltageUnknown(job, inverterId, inverter)
  return { leastModules, mostModules: Number.isFinite(mostModules) ? mostModules : string.modules, holds }
}

const LIMITS = {
  min_per_string: 'fewest units in a string',
  max_per_string: 'most units in a string',
  max_string_power_w: 'largest power of a string',
} as const

/** Limits of the maker that the project does not state. */
function tellUnknown(job: Job, { id, optimiser }: OptimiserCase): void {
  const { sheet } = optimiser
  const missing = [
    ...(sheet.min_per_string === undefined ? [LIMITS.min_per_string] : []),
    ...(sheet.max_per_string === undefined ? [LIMITS.max_per_string] : []),
    ...(sheet.max_string_power_w === undefined ? [LIMITS.max_string_power_w] : []),
  ]
  if (missing.length > 0)
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.optimiser-limit-unknown',
      message: `string ${id} was not checked against ${missing.join(', ')}, which converter ${optimiser.id} does not state`,
      where: `equipment.optimisers.${optimiser.id}`,
      source: job.nec('listedEquipment'),
      fix: 'Take min_per_string, max_per_string and max_string_power_w from the data sheet',
    })
}
