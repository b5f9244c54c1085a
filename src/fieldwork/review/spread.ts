import { DAYS_IN_MONTH } from '../../climate/index.js'
import { AGE_TERM, type YieldRun } from '../../yield/index.js'
import { KIND_COUNT, type DayModel } from './day-model.js'

/** What no further day of measuring makes smaller, as relative standard deviations. */
export interface LastingSpread {
  /** How sure the estimate is apart from the weather. */
  readonly method: number
  /** Weather that lasts longer than days: what a year's spread is known to be beyond that of its days. */
  readonly slowWeather: number
}

/**
 * Of days of which a share of the energy is modelled from their own weather. What both kinds of days are unsure of is the same method, so
 * that the two add up and do not even out.
 */
export function mixedSpread(longTerm: LastingSpread, weatherSpread: number, share: number): LastingSpread {
  return {
    method: share * weatherSpread + (1 - share) * longTerm.method,
    slowWeather: (1 - share) * longTerm.slowWeather,
  }
}

export function totalSpread({ method, slowWeather }: LastingSpread): number {
  return Math.hypot(method, slowWeather)
}

/** How sure the estimate is apart from the weather of a year: its terms without that of year to year, added as squares. */
export function methodSpread(run: YieldRun): number {
  const lasting = run.result.values.uncertainty.filter(({ term, lasts }) => lasts && term !== AGE_TERM)
  return Math.sqrt(lasting.reduce((sum, { percent }) => sum + (percent / 100) ** 2, 0))
}

/**
 * Spread of years beyond what the kinds of day give.
 *
 * Whole years differ by more than days in runs do, so that days alone would make long periods look too sure.
 *
 * @param correlation Of one day with the next.
 * @returns Relative standard deviation; 0 when the days alone spread as much as years are known to.
 */
export function slowWeatherSpread(run: YieldRun, model: DayModel, correlation: number): number {
  const known = (run.result.values.uncertainty.find(({ lasts }) => !lasts)?.percent ?? 0) / 100
  return Math.sqrt(Math.max(0, known ** 2 - yearSpreadOfDays(model, correlation) ** 2))
}

function yearSpreadOfDays(model: DayModel, correlation: number): number {
  let [variance, mean] = [0, 0]
  model.kindsKwh.forEach((kinds, month) => {
    const days = DAYS_IN_MONTH[month]!
    const average = model.meanKwh[month]!
    mean += days * average
    variance += (days * kinds.reduce((sum, kwh) => sum + (kwh - average) ** 2, 0)) / KIND_COUNT
  })
  return mean > 0 ? Math.sqrt((variance * (1 + correlation)) / (1 - correlation)) / mean : 0
}
