import type { Decimal } from '../../values/decimal/index.js'
import type { Threshold } from '../tariff/index.js'

/** A threshold in kWh for some days of a bill. */
export function thresholdKwh(threshold: Threshold, days: number, billDays: number): Decimal {
  if (threshold.per === 'day') return threshold.kwh.times(days)
  return days === billDays ? threshold.kwh : threshold.kwh.times(days).div(billDays)
}
