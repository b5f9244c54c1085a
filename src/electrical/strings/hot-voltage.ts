import type { PvModule } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import type { Celsius, Volts } from '../../values/index.js'

/**
 * Voltage of a module at maximum power in the heat.
 *
 * @param cellC Hottest cell temperature, deg C.
 * @returns V; the coefficient of power is used when that of Vmp is missing, which is on the low side.
 * @throws StageError when the voltage at maximum power is missing.
 */
export function hotVoltageV(module: PvModule, cellC: Celsius, where: string): Volts {
  if (module.vmp_v === undefined)
    throw new StageError(
      `${where}.vmp_v`,
      'the voltage at maximum power is missing',
      "It stands on the module's data sheet as Vmp",
    )
  return module.vmp_v * (1 + (hotCoefficient(module, where).value / 100) * (cellC - 25))
}

/** The coefficient of Vmp, or that of power where it is missing, with its path under `where`. */
export function hotCoefficient(
  { vmp_temp_coeff_pct_per_c: ofVmp, pmax_temp_coeff_pct_per_c: ofPower }: PvModule,
  where: string,
): { readonly value: number; readonly unit: string; readonly from: string } {
  return ofVmp === undefined
    ? { value: ofPower, unit: '%/C', from: `${where}.pmax_temp_coeff_pct_per_c` }
    : { value: ofVmp, unit: '%/C', from: `${where}.vmp_temp_coeff_pct_per_c` }
}

/**
 * Rise of the cells above the air in full sun from the nominal operating cell temperature.
 *
 * @param noctC Nominal operating cell temperature, deg C, measured at 800 W/m2 and 20 deg C.
 * @returns K at 1000 W/m2.
 * @source IEC 61215 nominal operating cell temperature (from memory)
 */
export function riseFromNoctC(noctC: Celsius): Celsius {
  return ((noctC - 20) * 1000) / 800
}
