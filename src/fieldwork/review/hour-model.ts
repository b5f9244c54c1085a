import type { YieldRun } from '../../yield/index.js'
import type { ProductionSeries } from '../production/index.js'
import { kindsOfDay, KIND_COUNT, type DayModel } from './day-model.js'
import { solarNoonH, type Place } from './daylight.js'
import { calendarDay, dayNumber, MS_PER_DAY, MS_PER_HOUR, radiansOf } from '../../values/index.js'

/** Slots of solar time in a day: half an hour each. */
const SLOTS = 48

/** Power of the clearest kind of day by month and half hour of solar time, kW. */
export type HourModel = readonly Float64Array[]

/** Clear-day power from an energy estimate: the highest that each half hour of solar time reaches among the clear days. */
export function hourModel({ steps, system, climate }: YieldRun): HourModel {
  const phi = radiansOf(climate.latitudeDeg)
  const months = Array.from({ length: 12 }, () => new Float64Array(SLOTS))
  const held = Array.from({ length: 12 }, () => Array.from({ length: SLOTS }, (): number[] => []))
  for (let step = 0; step < steps.length; step += 1) {
    const [east, north, up] = [steps.sunEast[step]!, steps.sunNorth[step]!, steps.sunUp[step]!]
    const hourAngle = Math.atan2(-east, up * Math.cos(phi) - north * Math.sin(phi))
    const slot = Math.min(SLOTS - 1, Math.max(0, Math.floor(2 * (12 + (hourAngle * 12) / Math.PI))))
    held[steps.month[step]!]![slot]!.push(system.acW[step]! / 1000)
  }
  held.forEach((slots, month) => {
    slots.forEach((powers, slot) => {
      // The clearest kind of day of a monthly climate, or the upper tenth of the hours of a file.
      const sorted = powers.toSorted((a, b) => a - b)
      months[month]![slot] = Math.max(0, sorted[Math.floor(0.95 * (sorted.length - 1))] ?? 0)
    })
    fillGaps(months[month]!)
  })
  return months
}

/** Hours of a file may leave every second half hour empty. */
function fillGaps(slots: Float64Array): void {
  for (let slot = 1; slot < SLOTS - 1; slot += 1) {
    if (slots[slot] === 0) slots[slot] = (slots[slot - 1]! + slots[slot + 1]!) / 2
  }
}

/** Readings while a clear sun would give power, one entry each. */
export interface LitReadings {
  readonly length: number
  readonly day: Int32Array
  readonly hours: Float64Array
  /** Solar time at the middle, h. */
  readonly solarH: Float64Array
  readonly kw: Float64Array
  /** What a clear day would give then, and the most of that day, kW. */
  readonly clearKw: Float64Array
  readonly peakKw: Float64Array
}

/** Sets each reading of an interval table beside the power of a clear day; empty for days and months. */
export function litReadings(series: ProductionSeries, hours: HourModel, model: DayModel, place: Place): LitReadings {
  const count = series.resolution === 'interval' ? series.spans.length : 0
  const columns = {
    day: new Int32Array(count),
    hours: new Float64Array(count),
    solarH: new Float64Array(count),
    kw: new Float64Array(count),
    clearKw: new Float64Array(count),
    peakKw: new Float64Array(count),
  }
  let length = 0
  let [today, noonH, factor, month, peak] = [Number.NaN, 0, 1, 0, 0]
  for (let at = 0; at < count; at += 1) {
    const { startMs, endMs, kwh } = series.spans.at(at)!
    if (endMs - startMs > 2 * MS_PER_HOUR) continue
    const day = dayNumber(startMs)
    if (day !== today) {
      today = day
      month = calendarDay(day).month
      noonH = solarNoonH(day, place)
      const best = model.kindsKwh[month]![KIND_COUNT - 1]!
      factor = best > 0 ? kindsOfDay(model, day)[KIND_COUNT - 1]! / best : 1
      peak = factor * Math.max(...hours[month]!)
    }
    const solarH = ((startMs + endMs) / 2 - day * MS_PER_DAY) / MS_PER_HOUR - noonH + 12
    const slot = Math.floor(2 * solarH)
    const clear = slot < 0 || slot >= SLOTS ? 0 : factor * hours[month]![slot]!
    if (clear < 0.1 * peak || clear <= 0) continue
    columns.day[length] = day
    columns.hours[length] = (endMs - startMs) / MS_PER_HOUR
    columns.solarH[length] = solarH
    columns.kw[length] = (kwh * MS_PER_HOUR) / (endMs - startMs)
    columns.clearKw[length] = clear
    columns.peakKw[length] = peak
    length += 1
  }
  return { length, ...columns }
}
