import { REVIEW_THRESHOLDS } from '../../../tables/fieldwork/index.js'
import type { ProductionSeries, Span, SpanList } from '../../production/index.js'
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
  const { spans } = series
  const kwOf = ({ startMs, endMs, kwh }: Span): Kilowatts => (kwh * MS_PER_HOUR) / (endMs - startMs)
  // One reading may stick out over the limit for a moment; the level is one that is reached often.
  const levelKw = thirdHighest(spans, kwOf)
  if (levelKw <= 0) return undefined
  const { clippingFlatness, clippingHours, clippingIntervals, clippingDays } = REVIEW_THRESHOLDS
  let [days, hours, run, runHours, runDay] = [new Set<number>(), 0, 0, 0, -1]
  for (let index = 0; index < spans.length; index += 1) {
    const span = spans.at(index)!
    const day = dayNumber(span.startMs)
    const isLevel = Math.abs(kwOf(span) / levelKw - 1) <= clippingFlatness
    if (day !== runDay || !isLevel) [run, runHours] = [0, 0]
    runDay = day
    if (!isLevel) continue
    const hoursOfSpan = (span.endMs - span.startMs) / MS_PER_HOUR
    run += 1
    runHours += hoursOfSpan
    if (run < clippingIntervals || runHours < clippingHours) continue
    hours += days.has(day) ? hoursOfSpan : runHours
    days = days.add(day)
  }
  return days.size >= clippingDays ? { levelKw, days: days.size, hours } : undefined
}

function thirdHighest(spans: SpanList, kwOf: (span: Span) => Kilowatts): number {
  let [first, second, third] = [-Infinity, -Infinity, -Infinity]
  for (let index = 0; index < spans.length; index += 1) {
    const value = kwOf(spans.at(index)!)
    if (value > first) [first, second, third] = [value, first, second]
    else if (value > second) [second, third] = [value, second]
    else if (value > third) third = value
  }
  return Number.isFinite(third) ? third : 0
}
