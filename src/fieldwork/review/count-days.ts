import { StageError } from '../../worksheet/index.js'
import type { ProductionSeries, Span } from '../production/index.js'
import { daylight, type Place } from './daylight.js'
import { MS_PER_DAY, dayNumber, type KilowattHours, type Milliseconds } from '../../values/index.js'

/** Whole days with their measured energy: one day, or several that were read together. */
export interface Period {
  readonly firstDay: number
  readonly days: number
  readonly kwh: KilowattHours
  /** kWh of each module, in the order of the series. */
  readonly moduleKwh: readonly (number | undefined)[]
}

export interface CountedDays {
  readonly periods: readonly Period[]
  /** Days between the first and the last that no period covers. */
  readonly missing: readonly number[]
  /** Energy of days that are not wholly covered, kWh. */
  readonly leftOutKwh: KilowattHours
}

/** Share of daylight that readings must cover for a day to count; less than a quarter of an hour may lack. */
const COVERED = 0.985
/** Sun too low to matter, ms after sunrise and before sunset. */
const LOW_SUN_MS = 1_200_000

/** Sums readings to whole days. A day counts only when readings cover its daylight; nights may be missing. */
export function countDays(series: ProductionSeries, place: Place): CountedDays {
  const periods =
    series.resolution === 'interval'
      ? daysOfIntervals(series, place)
      : { whole: series.spans.map(periodOf), leftOutKwh: 0 }
  const whole = periods.whole.filter((period) => period.days > 0)
  const covered = new Set(
    whole.flatMap((period) => Array.from({ length: period.days }, (_, at) => period.firstDay + at)),
  )
  // Spans are in order and do not overlap.
  const first = dayNumber(series.spans.at(0)?.startMs ?? 0)
  const last = dayNumber((series.spans.at(-1)?.endMs ?? 0) - 1)
  const missing: number[] = []
  for (let day = first; day <= last; day += 1) if (!covered.has(day)) missing.push(day)
  return { periods: whole, missing, leftOutKwh: periods.leftOutKwh }
}

function periodOf(span: Span): Period {
  const firstDay = Math.round(span.startMs / MS_PER_DAY)
  return { firstDay, days: Math.round(span.endMs / MS_PER_DAY) - firstDay, kwh: span.kwh, moduleKwh: span.moduleKwh }
}

function daysOfIntervals(series: ProductionSeries, place: Place): { whole: Period[]; leftOutKwh: KilowattHours } {
  const byDay = new Map<number, DaySum>()
  const lightOf = daylightByDay(place)
  const sumOfDay = (day: number): DaySum => {
    const found = byDay.get(day)
    if (found !== undefined) return found
    const begun = { covered: 0, kwh: 0, modules: series.moduleIds.map(() => 0), split: false }
    byDay.set(day, begun)
    return begun
  }
  const { spans } = series
  for (let index = 0; index < spans.length; index += 1) {
    const span = spans.at(index)!
    const [first, last] = [dayNumber(span.startMs), dayNumber(span.endMs - 1)]
    const lit: { readonly day: number; readonly ms: Milliseconds }[] = []
    for (let day = first; day <= last; day += 1) {
      const ms = overlapMs(span, lightOf(day))
      if (ms > 0) lit.push({ day, ms })
      sumOfDay(day).covered += ms
    }
    // One reading over the daylight of two days: nobody knows how much belongs to which.
    if (lit.length > 1) for (const { day } of lit) sumOfDay(day).split = true
    const entry = sumOfDay(lit.length === 1 ? lit[0]!.day : first)
    entry.kwh += span.kwh
    if (entry.modules.length > 0) entry.modules = entry.modules.map((sum, at) => addKnown(sum, span.moduleKwh[at]))
  }
  const whole: Period[] = []
  let leftOutKwh = 0
  for (const [day, entry] of byDay) {
    const { riseMs, setMs } = lightOf(day)
    const needed = Math.max(0, setMs - riseMs - 2 * LOW_SUN_MS)
    if (!entry.split && entry.covered >= COVERED * needed)
      whole.push({ firstDay: day, days: 1, kwh: entry.kwh, moduleKwh: entry.modules })
    else leftOutKwh += entry.kwh
  }
  return { whole, leftOutKwh }
}

interface DaySum {
  covered: Milliseconds
  kwh: KilowattHours
  modules: (number | undefined)[]
  split: boolean
}

type Daylight = ReturnType<typeof daylight>

/** Sunrise and sunset of each day, worked out once: a day has hundreds of readings. */
function daylightByDay(place: Place): (day: number) => Daylight {
  const known = new Map<number, Daylight>()
  return (day) => {
    const found = known.get(day)
    if (found !== undefined) return found
    const reckoned = daylight(day, place)
    known.set(day, reckoned)
    return reckoned
  }
}

function overlapMs(span: Span, { riseMs, setMs }: Daylight): Milliseconds {
  return Math.max(0, Math.min(span.endMs, setMs - LOW_SUN_MS) - Math.max(span.startMs, riseMs + LOW_SUN_MS))
}

function addKnown(sum: number | undefined, value: number | undefined): number | undefined {
  return sum === undefined || value === undefined ? undefined : sum + value
}

/** Numbers of the days of a period. */
export function daysOf(period: Period): number[] {
  return Array.from({ length: period.days }, (_, at) => period.firstDay + at)
}

/** Measured energy of several periods, kWh. */
export function sumOf(periods: readonly Period[]): number {
  return periods.reduce((sum, period) => sum + period.kwh, 0)
}

/** The first and the last day that count, and how many there are. @throws StageError when there is none. */
export function wholeDays(periods: readonly Period[]): { firstDay: number; lastDay: number; days: number } {
  const days = periods.flatMap(daysOf)
  const [firstDay, lastDay] = [days[0], days.at(-1)]
  if (firstDay === undefined || lastDay === undefined) {
    throw new StageError(
      'production',
      'no whole day was measured, so that there is nothing to compare',
      'give at least one day from before sunrise to after sunset',
    )
  }
  return { firstDay, lastDay, days: days.length }
}
