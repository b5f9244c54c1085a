import { REVIEW_DESIGN } from '../../tables/fieldwork/index.js'
import { daysOf, type Period } from './count-days.js'
import { kindsOfDay, KIND_COUNT, type DayModel } from './day-model.js'
import type { JudgedDay } from './judged-day.js'
import { normalBelow } from '../../values/index.js'

/** The single days of what was measured; days that were read together count where they gave nothing, each by itself. */
export function judgedDays(
  periods: readonly Period[],
  model: DayModel,
  modelledKwh: ReadonlyMap<number, number> | undefined,
): JudgedDay[] {
  return periods.flatMap((period) => {
    const days = Array.from({ length: period.days }, (_, at) => {
      const day = period.firstDay + at
      const kindsKwh = kindsOfDay(model, day)
      const mean = kindsKwh.reduce((sum, kwh) => sum + kwh, 0) / KIND_COUNT
      const kwh = modelledKwh?.get(day)
      const modelled = kwh === undefined ? undefined : { kwh, spread: daySpread(kwh, kindsKwh[KIND_COUNT - 1]!) }
      return { day, kwh: period.kwh / period.days, kindsKwh, expectedKwh: kwh ?? mean, modelled }
    })
    if (days.some(({ kindsKwh }) => kindsKwh[KIND_COUNT - 1]! <= 0)) return []
    const clearest = days.reduce((sum, { kindsKwh }) => sum + kindsKwh[KIND_COUNT - 1]!, 0)
    return period.days === 1 || period.kwh < REVIEW_DESIGN.noOutputShare * clearest ? days : []
  })
}

/** Relative standard deviation of the sum of periods by the weather; days that were read together count as so many days. */
export function weatherSpreadOf(
  periods: readonly Period[],
  model: DayModel,
  modelledKwh: ReadonlyMap<number, number> | undefined,
  correlation: number,
): number {
  const single = periods.flatMap((period) =>
    daysOf(period).map((day) => ({ ...period, firstDay: day, days: 1, kwh: period.kwh / period.days })),
  )
  return weatherSpread(judgedDays(single, model, modelledKwh), correlation)
}

/** How sure one modelled day is, relative: dull days are less so. */
function daySpread(kwh: number, clearestKwh: number): number {
  const { modelledDaySpread, modelledDayFloor } = REVIEW_DESIGN
  return kwh > 0 ? Math.hypot(modelledDaySpread, (modelledDayFloor * clearestKwh) / kwh) : 1
}

/** Relative standard deviation of the sum of days by the weather, days that hang together. */
export function weatherSpread(days: readonly JudgedDay[], correlation: number): number {
  let [mean, variance] = [0, 0]
  for (const { kindsKwh, expectedKwh, modelled } of days) {
    mean += expectedKwh
    variance +=
      modelled === undefined
        ? kindsKwh.reduce((sum, kwh) => sum + (kwh - expectedKwh) ** 2, 0) / KIND_COUNT
        : (modelled.kwh * modelled.spread) ** 2
  }
  return mean > 0 ? Math.sqrt((variance * (1 + correlation)) / (1 - correlation)) / mean : 0
}

/** Energy of days over what is expected of them. */
export function levelOfSums(days: readonly JudgedDay[]): number {
  const expected = expectedOf(days)
  return expected > 0 ? days.reduce((sum, { kwh }) => sum + kwh, 0) / expected : 0
}

/** Expected energy of days, kWh. */
export function expectedOf(days: readonly JudgedDay[]): number {
  return days.reduce((sum, { expectedKwh }) => sum + expectedKwh, 0)
}

/**
 * Healthy systems that would have given less in these days, %.
 *
 * @param lasting What no further day makes smaller (method, slow weather), relative standard deviation.
 * @limits A normal law: the sum of at least some weeks.
 */
export function percentileOfDays(days: readonly JudgedDay[], correlation: number, lasting: number): number {
  const spread = Math.hypot(weatherSpread(days, correlation), lasting)
  return spread > 0 ? 100 * normalBelow((levelOfSums(days) - 1) / spread) : 50
}
