import { designTemperatures } from '../../climate/index.js'
import { coldVoltage, hotVoltageV, optimiserLengths, riseFromNoctC, stringLimits } from '../../electrical/index.js'
import type { ArrayOfModules, Project } from '../../project/index.js'
import { DWELLING_DC_LIMIT_V } from '../../tables/nec/index.js'
import { StageError, Worksheet } from '../../worksheet/index.js'
import { own } from '../../values/index.js'

/** Rise of cells above the air in full sun where the module's sheet does not tell, K (as in the wiring stage). */
const USUAL_RISE_K = 35

/**
 * Shortest and longest string of an array by the voltages of its module and inverter in the cold and in the heat, or by the
 * limits of its converters.
 *
 * @returns Undefined behind module-level inverters.
 * @throws StageError when a voltage or a design temperature is missing.
 * @source NEC 690.7, as in the wiring stage
 */
export function stringLengths(project: Project, array: ArrayOfModules): ReturnType<typeof stringLimits> | undefined {
  const unit = array.strings?.[0]?.inverter_unit
  if (unit === undefined) return undefined
  const inverter = own(project.equipment.inverters, own(project.inverter_units, unit)?.inverter)
  const module = own(project.equipment.modules, array.module)
  if (inverter === undefined || module === undefined) return undefined
  const limitV = Math.min(
    DWELLING_DC_LIMIT_V,
    module.max_system_voltage_v ?? Infinity,
    inverter.max_dc_voltage_v ?? Infinity,
  )
  const optimiser = own(project.equipment.optimisers, array.optimiser)
  if (optimiser !== undefined) return optimiserLengths(optimiser, module.pmax_w, limitV)
  // The wiring stage reports how the temperatures were found; here they only bound a search.
  const { extremeLow, high2pct } = designTemperatures(project.site, new Worksheet())
  if (extremeLow === undefined || high2pct === undefined) {
    throw new StageError(
      'site.design_temperatures',
      'the design temperatures are not known for this site',
      'State extreme_low_c and high_2pct_c.',
    )
  }
  const where = `equipment.modules.${array.module}`
  const rise =
    project.electrical?.hot_cell_rise_c ?? (module.noct_c === undefined ? USUAL_RISE_K : riseFromNoctC(module.noct_c))
  return stringLimits(
    limitV,
    coldVoltage(module, extremeLow.valueC, where).moduleV,
    Math.max(inverter.mppt_min_v ?? 0, inverter.start_v ?? 0),
    hotVoltageV(module, high2pct.valueC + rise, where),
  )
}
