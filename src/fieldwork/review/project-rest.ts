import type { Period } from './count-days.js'
import { kindsOfDay, type DayModel } from './day-model.js'
import type { Projection } from './review-values.js'
import { quantileKwh, sumDistribution } from './sum-distribution.js'
import { MS_PER_DAY, calendarDay, dateText, firstOfMonth } from '../../values/index.js'

/** What a projection rests on. */
export interface ProjectionBasis {
  readonly model: DayModel
  readonly correlation: number
  /** Relative standard deviation of the method. */
  readonly spread: number
}

/**
 * What a stretch of days will have given in the end: the measured days as measured, and every other day as the long-term
 * estimate expects it. A good week is not carried on.
 *
 * @param fromDay First day. @param toDay First day after it.
 */
export function projectRest(
  fromDay: number,
  toDay: number,
  periods: readonly Period[],
  basis: ProjectionBasis,
): Projection {
  const inside = periods.filter((period) => period.firstDay >= fromDay && period.firstDay + period.days <= toDay)
  const covered = new Set(
    inside.flatMap((period) => Array.from({ length: period.days }, (_, at) => period.firstDay + at)),
  )
  const measured = inside.reduce((sum, period) => sum + period.kwh, 0)
  const rest = Array.from({ length: toDay - fromDay }, (_, at) => fromDay + at).filter((day) => !covered.has(day))
  const { total } = sumDistribution(
    rest.map((day) => ({ day, kindsKwh: kindsOfDay(basis.model, day) })),
    basis.correlation,
  )
  const bound = (share: number): number => (rest.length === 0 ? 0 : quantileKwh(total, share, basis.spread))
  return {
    from: dateText(fromDay),
    to: dateText(toDay - 1),
    measured_kwh: measured,
    days_measured: covered.size,
    days_remaining: rest.length,
    expected_rest_kwh: total.meanKwh,
    projected_kwh: measured + total.meanKwh,
    p10_kwh: measured + bound(0.1),
    p90_kwh: measured + bound(0.9),
  }
}

/** The month of the last measured day. */
export function monthAround(lastDay: number): readonly [number, number] {
  return [firstOfMonth(lastDay), firstOfMonth(lastDay, 1)]
}

/** Twelve months from the first measured day; once these are over, the calendar year of the last day. */
export function yearAround(firstDay: number, lastDay: number): readonly [number, number] {
  const { year, month, dayOfMonth } = calendarDay(firstDay)
  const end = Math.floor(Date.UTC(year + 1, month, dayOfMonth) / MS_PER_DAY)
  if (lastDay < end) return [firstDay, end]
  const last = calendarDay(lastDay).year
  return [Math.floor(Date.UTC(last, 0, 1) / MS_PER_DAY), Math.floor(Date.UTC(last + 1, 0, 1) / MS_PER_DAY)]
}
