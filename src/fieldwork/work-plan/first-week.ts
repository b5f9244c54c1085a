import { DAY_CORRELATION } from '../../tables/fieldwork/index.js'
import type { YieldRun } from '../../yield/index.js'
import { dayModel, kindsOfDay, methodSpread, quantileKwh, sumDistribution } from '../review/index.js'
import type { FirstWeek } from './plan-values.js'
import { daysInMonth, MS_PER_DAY } from '../../values/index.js'

/** A year without a leap day; only the days within months matter. */
const YEAR = 2026

/** What the first seven days give, by the month in which they fall: mean and 80 % range of weather and method. */
export function firstWeeks(run: YieldRun, correlation: number = DAY_CORRELATION.value): FirstWeek[] {
  return rangesByMonth(run, 12, () => 7, correlation)
}

/** What each month gives in a single year: mean and 80 % range of weather and method, kWh. */
export function monthRanges(run: YieldRun, correlation: number = DAY_CORRELATION.value): FirstWeek[] {
  return rangesByMonth(run, 1, daysInMonth, correlation)
}

function rangesByMonth(
  run: YieldRun,
  firstDay: number,
  daysOf: (month: number) => number,
  correlation: number,
): FirstWeek[] {
  const model = dayModel(run)
  const spread = methodSpread(run)
  return Array.from({ length: 12 }, (_, month) => {
    const first = Math.floor(Date.UTC(YEAR, month, firstDay) / MS_PER_DAY)
    const days = Array.from({ length: daysOf(month + 1) }, (__, at) => ({
      day: first + at,
      kindsKwh: kindsOfDay(model, first + at),
    }))
    const { total } = sumDistribution(days, correlation)
    return {
      month: month + 1,
      expected_kwh: total.meanKwh,
      p10_kwh: quantileKwh(total, 0.1, spread),
      p90_kwh: quantileKwh(total, 0.9, spread),
    }
  })
}
