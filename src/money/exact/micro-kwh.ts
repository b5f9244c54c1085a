import { Decimal, decimal } from '../../values/decimal/index.js'
import type { KilowattHours } from '../../values/index.js'

const MICRO_PLACES = 6
const MICRO = decimal(0.000001)

/** Energy is added up in whole millionths of a kWh, which binary numbers hold exactly. */
export function microKwh(kwh: KilowattHours): KilowattHours {
  return Math.round(kwh * 1e6)
}

/** @param micro Whole millionths of a kWh. @returns kWh, exact. */
export function kwhDecimal(micro: number): Decimal {
  return Number.isSafeInteger(micro) ? new Decimal(micro, MICRO_PLACES) : decimal(micro).times(MICRO)
}

/**
 * Splits a total over weights in whole millionths of a kWh, so that the parts add up to it exactly (cumulative rounding).
 *
 * @param weights Not negative, with a sum above 0.
 */
export function splitMicroKwh(totalMicro: number, weights: readonly number[]): number[] {
  const whole = weights.reduce((a, b) => a + b, 0)
  let weighed = 0
  let given = 0
  return weights.map((weight, i) => {
    weighed += weight
    const upTo = i === weights.length - 1 ? totalMicro : Math.round((totalMicro * weighed) / whole)
    const part = upTo - given
    given = upTo
    return part
  })
}
