import { dateText, type KilowattHours } from '../../values/index.js'
import { daysOf, type Period } from './count-days.js'
import { kindsOfDay, type DayModel } from './day-model.js'
import { certainSum } from './expected-range.js'
import type { CumulativePoint } from './review-values.js'
import { quantileKwh, sumDistribution, type DayOdds, type SumDistribution } from './sum-distribution.js'

/** Most points of the cumulative course. */
const COURSE_POINTS = 40

/** Distribution of the sum over all periods, and of the sum up to some of them. */
export interface Course {
  readonly total: SumDistribution
  /** By index of the period. */
  readonly at: ReadonlyMap<number, SumDistribution>
  /** Expected energy of the days that were modelled from their own weather, kWh. */
  readonly modelledKwh: KilowattHours
}

/**
 * Sums day by day: days of known weather give what is modelled, each of the others is one of the kinds of its month.
 *
 * @param kwhByDay Modelled energy of the days whose weather is known.
 */
export function courseOfDays(
  periods: readonly Period[],
  model: DayModel,
  correlation: number,
  kwhByDay: ReadonlyMap<number, number>,
): Course {
  const odds: DayOdds[] = []
  const modelled: number[] = []
  const ends: number[] = []
  let sum = 0
  for (const period of periods) {
    for (const day of daysOf(period)) {
      const kwh = kwhByDay.get(day)
      if (kwh === undefined) odds.push({ day, kindsKwh: kindsOfDay(model, day) })
      else sum += kwh
    }
    modelled.push(sum)
    ends.push(odds.length - 1)
  }
  const shown = shownPeriods(periods.length)
  const { total, at } = sumDistribution(odds, correlation, new Set(shown.map((index) => ends[index]!)))
  const onTop = (distribution: SumDistribution | undefined, kwh: number): SumDistribution =>
    distribution === undefined ? certainSum(kwh) : raised(distribution, kwh)
  return {
    total: onTop(odds.length === 0 ? undefined : total, sum),
    at: new Map(shown.map((index) => [index, onTop(at.get(ends[index]!), modelled[index]!)])),
    modelledKwh: sum,
  }
}

/** A sum with energy that is sure on top of it. */
function raised(distribution: SumDistribution, kwh: KilowattHours): SumDistribution {
  if (kwh === 0) return distribution
  return { ...distribution, lowestKwh: distribution.lowestKwh + kwh, meanKwh: distribution.meanKwh + kwh }
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
