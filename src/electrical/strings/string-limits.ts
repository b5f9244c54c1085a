import type { Volts } from '../../values/index.js'

/** Series length that an input takes. */
export interface StringLimits {
  readonly mostModules: number
  readonly leastModules: number
}

/**
 * Shortest and longest string.
 *
 * @param limitV Largest DC voltage allowed, V: the lowest of dwelling, inverter and module limit.
 * @param coldModuleV Open-circuit voltage of one module in the cold, V.
 * @param windowMinV Lower end of the tracking range, V; 0 when it is not stated.
 * @param hotModuleV Voltage at maximum power of one module in the heat, V.
 */
export function stringLimits(limitV: Volts, coldModuleV: Volts, windowMinV: Volts, hotModuleV: Volts): StringLimits {
  return {
    mostModules: Math.floor(limitV / coldModuleV),
    leastModules: Math.max(1, Math.ceil(windowMinV / hotModuleV)),
  }
}
