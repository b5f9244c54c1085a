import { powerOf } from './kernel/index.js'
import type { Celsius, Percent, Watts } from '../values/index.js'

/** Power of one module as a function of light and temperature. */
export interface ModuleModel {
  readonly pmaxW: Watts
  /** Per K, negative. */
  readonly powerCoefficientPerK: number
  /** Change of relative efficiency per e-fold of irradiance; 0 when the data sheet tells nothing. */
  readonly lowLightSlope: number
}

/**
 * Slope of the relative efficiency against the logarithm of irradiance that meets the data sheet's value at 200 W/m2.
 *
 * @param efficiencyAt200Pct Efficiency at 200 W/m2 relative to the rating, percent.
 * @source Voltage falls with the logarithm of current (diode law); one-point fit (common practice, no source).
 */
export function lowLightSlope(efficiencyAt200Pct: Percent): number {
  return (efficiencyAt200Pct / 100 - 1) / Math.log(0.2)
}

/**
 * DC power at the rated conditions of a module, before any loss of the system.
 *
 * @param irradianceWM2 Light that works in the cell, W/m2.
 * @param cellC Cell temperature, deg C.
 * @returns W.
 * @source P = Pmax E/1000 (1 + gamma (Tc - 25)), data-sheet form.
 */
export function modulePowerW(model: ModuleModel, irradianceWM2: number, cellC: Celsius): Watts {
  return powerOf(model.pmaxW, model.powerCoefficientPerK, model.lowLightSlope, irradianceWM2, cellC)
}
