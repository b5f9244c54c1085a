import type { LoadShape } from '../../tables/money/index.js'
import { HOURS_PER_YEAR, type BillingCalendar } from '../calendar/index.js'
import { microKwh, splitMicroKwh } from '../exact/index.js'
import type { KilowattHours } from '../../values/index.js'

/**
 * Spreads monthly totals over the hours of their months of clock time, so that each month adds up exactly.
 *
 * @param monthlyKwh Twelve totals, January first, kWh.
 * @param shape Built-in profile, or `even` for the same use in every hour of a month.
 * @returns 8760 hours of local standard time, kWh.
 */
export function spreadMonths(
  monthlyKwh: readonly KilowattHours[],
  shape: LoadShape | 'even',
  calendar: BillingCalendar,
): Float64Array {
  const hoursOf: number[][] = Array.from({ length: 12 }, () => [])
  for (let h = 0; h < HOURS_PER_YEAR; h++) {
    const month = calendar.month[calendar.clockDay[h] ?? 0] ?? 1
    hoursOf[month - 1]?.push(h)
  }
  const usageKwh = new Float64Array(HOURS_PER_YEAR)
  for (const [m, hours] of hoursOf.entries()) {
    const weights = hours.map((h) => {
      if (shape === 'even') return 1
      const weekday = calendar.weekday[calendar.clockDay[h] ?? 0]
      const row = shape.rows[m * 2 + (weekday === 0 || weekday === 6 ? 1 : 0)]
      return row?.[calendar.clockHour[h] ?? 0] ?? 0
    })
    const parts = splitMicroKwh(microKwh(monthlyKwh[m] ?? 0), weights)
    for (const [i, h] of hours.entries()) usageKwh[h] = (parts[i] ?? 0) / 1e6
  }
  return usageKwh
}

/** Splits a year's use over the months of a shape (by days for `even`), exact to a millionth of a kWh. */
export function spreadYear(annualKwh: KilowattHours, shape: LoadShape | 'even'): number[] {
  const weights = shape === 'even' ? [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] : shape.monthShares
  return splitMicroKwh(microKwh(annualKwh), weights).map((micro) => micro / 1e6)
}
