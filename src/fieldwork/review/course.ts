import { dateText } from '../../values/index.js'
import { daysOf, type Period } from './count-days.js'
import { kindsOfDay, type DayModel } from './day-model.js'
import { certainSum } from './expected-range.js'
import type { CumulativePoint } from './review-values.js'
import { quantileKwh, sumDistribution, type SumDistribution } from './sum-distribution.js'

/** Most points of the cumulative course. */
const COURSE_POINTS = 40

/** Distribution of the sum over all periods, and of the sum up to some of them. */
export interface Course {
  readonly total: SumDistribution
  /** By index of the period. */
  readonly at: ReadonlyMap<number, SumDistribution>
}

/** Days of unknown weather: each is one of the kinds of its month. */
export function luckyCourse(periods: readonly Period[], model: DayModel, correlation: number): Course {
  const odds = periods.flatMap((period) => daysOf(period).map((day) => ({ day, kindsKwh: kindsOfDay(model, day) })))
  const ends: number[] = []
  let count = 0
  for (const period of periods) ends.push((count += period.days) - 1)
  const shown = shownPeriods(periods.length)
  const { total, at } = sumDistribution(odds, correlation, new Set(shown.map((index) => ends[index]!)))
  return { total, at: new Map(shown.map((index) => [index, at.get(ends[index]!) ?? total])) }
}

/** Days whose energy is modelled from their own weather. */
export function certainCourse(periods: readonly Period[], kwhByDay: ReadonlyMap<number, number>): Course {
  const at = new Map<number, SumDistribution>()
  const shown = new Set(shownPeriods(periods.length))
  let sum = 0
  periods.forEach((period, index) => {
    for (const day of daysOf(period)) sum += kwhByDay.get(day) ?? 0
    if (shown.has(index)) at.set(index, certainSum(sum))
  })
  return { total: certainSum(sum), at }
}

function shownPeriods(count: number): number[] {
  const points = Math.min(count, COURSE_POINTS)
  return Array.from({ length: points }, (_, at) => Math.ceil(((at + 1) * count) / points) - 1)
}

/** Measured and expected sums side by side, as they grew. */
export function cumulativeCourse(
  periods: readonly Period[],
  at: ReadonlyMap<number, SumDistribution>,
  spread: number,
): CumulativePoint[] {
  let measured = 0
  return periods.flatMap((period, index): CumulativePoint[] => {
    measured += period.kwh
    const distribution = at.get(index)
    if (distribution === undefined) return []
    return [
      {
        date: dateText(period.firstDay + period.days - 1),
        measured_kwh: measured,
        expected_kwh: distribution.meanKwh,
        p10_kwh: quantileKwh(distribution, 0.1, spread),
        p90_kwh: quantileKwh(distribution, 0.9, spread),
      },
    ]
  })
}
