import type { Optimiser } from '../../project/index.js'
import type { Volts, Watts } from '../../values/index.js'
import type { StringLimits } from './string-limits.js'

/**
 * Shortest and longest string with converters: number of units and power that the maker allows, and without a listed
 * regulated voltage all units at their largest output within the limit.
 *
 * @param pmaxW Rated power of one module, W.
 * @param limitV Lowest of dwelling, module and inverter limit, V.
 * @returns Infinity for the longest where nothing limits it.
 */
export function optimiserLengths(sheet: Optimiser, pmaxW: Watts, limitV: Volts): StringLimits {
  const each = sheet.modules_per_unit ?? 1
  const byPower = (sheet.max_string_power_w ?? Infinity) / pmaxW
  const byVoltage =
    sheet.regulated_string_v === undefined ? Math.floor(limitV / (sheet.output_max_v ?? Infinity) + 1e-9) : Infinity
  return {
    leastModules: each * (sheet.min_per_string ?? 1),
    mostModules: Math.min(
      each * (sheet.max_per_string ?? Infinity),
      each * byVoltage,
      byPower === Infinity ? Infinity : Math.floor(byPower + 1e-9),
    ),
  }
}
