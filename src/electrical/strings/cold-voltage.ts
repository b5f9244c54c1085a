import type { PvModule } from '../../project/index.js'
import { vocCorrection } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import type { Celsius, Volts } from '../../values/index.js'

/** Open-circuit voltage of one module in the cold. */
export interface ColdVoltage {
  readonly moduleV: Volts
  /** Factor on the rated voltage. */
  readonly factor: number
  readonly method: 'maker coefficient' | 'code table'
  /** The same by the code table, when it applies, V. */
  readonly byTableV: Volts | undefined
}

/**
 * Open-circuit voltage of a module at the lowest expected ambient.
 *
 * @param lowestC Mean of the annual extreme minimum, deg C.
 * @throws StageError when the module states no open-circuit voltage or nothing to correct it with.
 * @source NEC 690.7(A)(1) maker's coefficient, 690.7(A)(2) table for crystalline silicon
 */
export function coldVoltage(module: PvModule, lowestC: Celsius, where: string): ColdVoltage {
  if (module.voc_v === undefined)
    throw new StageError(
      `${where}.voc_v`,
      'the open-circuit voltage is missing',
      "It stands on the module's data sheet as Voc",
    )
  const byTable = module.technology === 'thin_film' ? undefined : tableFactor(lowestC)
  const byTableV = byTable === undefined ? undefined : module.voc_v * byTable
  const byMaker = makerFactor(module, module.voc_v, lowestC)
  if (byMaker !== undefined)
    return { moduleV: module.voc_v * byMaker, factor: byMaker, method: 'maker coefficient', byTableV }
  if (byTable === undefined)
    throw new StageError(
      `${where}.voc_temp_coeff_pct_per_c`,
      `the temperature coefficient of Voc is missing and the code table does not reach ${lowestC} deg C or this technology`,
      "It stands on the module's data sheet, in percent or volts per deg C",
    )
  return { moduleV: module.voc_v * byTable, factor: byTable, method: 'code table', byTableV }
}

/** Warmer than 25 deg C never lowers the voltage that is designed for. */
function makerFactor(module: PvModule, vocV: Volts, lowestC: Celsius): number | undefined {
  const below = Math.min(0, lowestC - 25)
  if (module.voc_temp_coeff_v_per_c !== undefined) return 1 + (module.voc_temp_coeff_v_per_c / vocV) * below
  if (module.voc_temp_coeff_pct_per_c !== undefined) return 1 + (module.voc_temp_coeff_pct_per_c / 100) * below
  return undefined
}

/**
 * Factor of the code table; between two rows the colder one counts.
 *
 * @returns undefined below -40 deg C.
 * @source NEC Table 690.7(A)
 */
export function tableFactor(lowestC: Celsius): number | undefined {
  return vocCorrection.find((row) => lowestC >= row.fromC)?.factor
}
