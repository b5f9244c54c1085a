import { REVIEW_THRESHOLDS } from '../../../tables/fieldwork/index.js'
import type { ProductionSeries } from '../../production/index.js'
import type { DayModel } from '../day-model.js'
import { solarNoonH, type Place } from '../daylight.js'
import type { ObservedDay } from './observed-day.js'
import { median } from './soiling.js'
import { MS_PER_DAY, MS_PER_HOUR, calendarDay, dayNumber, type KilowattHours } from '../../../values/index.js'

/** How far the clock of the readings is from the sun, on clear days. */
export interface MeasuredClockShift {
  /** Readings later than the sun are positive, h. */
  readonly shiftH: number
  readonly days: number
}

/**
 * Centre of gravity of the power of clear days against where the estimate has it.
 *
 * @returns undefined for days and months, and when fewer than five days can be compared.
 */
export function measuredClockShift(
  series: ProductionSeries,
  days: readonly ObservedDay[],
  model: DayModel,
  place: Place,
): MeasuredClockShift | undefined {
  if (series.resolution !== 'interval') return undefined
  const clear = days
    .toSorted((a, b) => b.ratio - a.ratio)
    .slice(0, Math.max(REVIEW_THRESHOLDS.clockShiftDays, Math.ceil(days.length / 4)))
  const wanted = new Set(clear.map((day) => day.day))
  const sums = new Map<number, { moment: number; kwh: KilowattHours }>()
  const { spans } = series
  for (let index = 0; index < spans.length; index += 1) {
    const span = spans.at(index)!
    const day = dayNumber(span.startMs)
    if (!wanted.has(day)) continue
    const sum = sums.get(day) ?? { moment: 0, kwh: 0 }
    const middleH = ((span.startMs + span.endMs) / 2 - day * MS_PER_DAY) / MS_PER_HOUR
    sum.moment += Math.max(0, span.kwh) * middleH
    sum.kwh += Math.max(0, span.kwh)
    sums.set(day, sum)
  }
  const shifts = [...sums].flatMap(([day, { moment, kwh }]) => {
    const modelled = model.centreSolarH[calendarDay(day).month]
    return modelled === undefined || kwh <= 0 ? [] : [moment / kwh - (solarNoonH(day, place) + modelled - 12)]
  })
  return shifts.length < REVIEW_THRESHOLDS.clockShiftDays ? undefined : { shiftH: median(shifts), days: shifts.length }
}
