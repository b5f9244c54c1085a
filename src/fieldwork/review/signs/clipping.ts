import { REVIEW_THRESHOLDS } from '../../../tables/fieldwork/index.js'
import type { ProductionSeries } from '../../production/index.js'
import { MS_PER_HOUR, dayNumber, type Kilowatts } from '../../../values/index.js'

/** A flat top of the power at one level on several days. */
export interface FlatTop {
  readonly levelKw: Kilowatts
  readonly days: number
  readonly hours: number
}

/**
 * Looks for days whose power stays at the highest level of all.
 *
 * @returns undefined when there is no flat top, or readings are not of hours or shorter.
 * @limits Inverters that reach their limits at different times do not make one flat top of the sum.
 */
export function flatTop(series: ProductionSeries): FlatTop | undefined {
  if (series.resolution !== 'interval') return undefined
  const power = series.spans.map((span) => ({
    day: dayNumber(span.startMs),
    hours: (span.endMs - span.startMs) / MS_PER_HOUR,
    kw: (span.kwh * MS_PER_HOUR) / (span.endMs - span.startMs),
  }))
  // One reading may stick out over the limit for a moment; the level is one that is reached often.
  const levelKw = power.map((each) => each.kw).toSorted((a, b) => b - a)[2] ?? 0
  if (levelKw <= 0) return undefined
  const { clippingFlatness, clippingHours, clippingIntervals, clippingDays } = REVIEW_THRESHOLDS
  let [days, hours, run, runHours, runDay] = [new Set<number>(), 0, 0, 0, -1]
  for (const each of power) {
    if (each.day !== runDay || Math.abs(each.kw / levelKw - 1) > clippingFlatness) [run, runHours] = [0, 0]
    runDay = each.day
    if (Math.abs(each.kw / levelKw - 1) > clippingFlatness) continue
    run += 1
    runHours += each.hours
    if (run < clippingIntervals || runHours < clippingHours) continue
    hours += days.has(each.day) ? each.hours : runHours
    days = days.add(each.day)
  }
  return days.size >= clippingDays ? { levelKw, days: days.size, hours } : undefined
}
