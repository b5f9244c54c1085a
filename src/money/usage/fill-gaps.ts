import { StageError } from '../../worksheet/index.js'
import { HOURS_PER_YEAR, type BillingCalendar } from '../calendar/index.js'
import type { KilowattHours } from '../../values/index.js'

/** Longest gap that is filled without being asked, hours. */
const SHORT_GAP_H = 24

export interface GapReport {
  readonly filledHours: number
  readonly longestGapHours: number
  /** When the longest gap begins, standard time; empty when there is none. */
  readonly longestFrom: string
  readonly filledKwh: KilowattHours
}

interface Run {
  readonly start: number
  readonly hours: number
}

/** Runs of missing hours; one over New Year is two. */
function missingRuns(usageKwh: Float64Array): Run[] {
  const runs: { start: number; hours: number }[] = []
  for (let h = 0; h < HOURS_PER_YEAR; h++) {
    if (!Number.isNaN(usageKwh[h])) continue
    const last = runs.at(-1)
    if (last !== undefined && last.start + last.hours === h) last.hours += 1
    else runs.push({ start: h, hours: 1 })
  }
  return runs
}

function dateOf(calendar: BillingCalendar, hour: number): string {
  const d = Math.floor(hour / 24)
  const pad = (n: number | undefined): string => String(n ?? 0).padStart(2, '0')
  return `${String(calendar.year[d])}-${pad(calendar.month[d])}-${pad(calendar.dayOfMonth[d])} ${pad(hour % 24)}:00`
}

/**
 * Fills missing hours in place with the mean of the same clock hour and kind of day (working day or weekend) of the month.
 *
 * @param usageKwh 8760 hours, NaN where missing.
 * @throws StageError for a gap of more than a day under `refuse`, or a month without anything to take a mean of.
 */
export function fillGaps(
  usageKwh: Float64Array,
  calendar: BillingCalendar,
  policy: 'refuse' | 'typical_day',
  where: string,
): GapReport {
  const runs = missingRuns(usageKwh)
  const longest = runs.reduce<Run>((a, b) => (b.hours > a.hours ? b : a), { start: 0, hours: 0 })
  const filledHours = runs.reduce((all, run) => all + run.hours, 0)
  if (policy === 'refuse' && longest.hours > SHORT_GAP_H) {
    throw new StageError(
      where,
      `${String(longest.hours)} hours are missing from ${dateOf(calendar, longest.start)} standard time (${String(filledHours)} hours in ${String(runs.length)} gaps in all)`,
      'Export the missing days again, or state usage.fill_gaps: typical_day.',
    )
  }
  const cellOf = (h: number, kind: boolean): number => {
    const d = calendar.clockDay[h] ?? 0
    const weekend = calendar.weekday[d] === 0 || calendar.weekday[d] === 6 ? 24 : 0
    return ((calendar.month[d] ?? 1) - 1) * 48 + (kind ? weekend : 0) + (calendar.clockHour[h] ?? 0)
  }
  const mean = (kind: boolean): Float64Array => {
    const sums = new Float64Array(12 * 48)
    const counts = new Float64Array(12 * 48)
    for (let h = 0; h < HOURS_PER_YEAR; h++) {
      const kwh = usageKwh[h] ?? Number.NaN
      if (Number.isNaN(kwh)) continue
      const cell = cellOf(h, kind)
      sums[cell] = (sums[cell] ?? 0) + kwh
      counts[cell] = (counts[cell] ?? 0) + 1
    }
    return sums.map((sum, cell) => sum / (counts[cell] ?? 0))
  }
  if (runs.length === 0) return { filledHours: 0, longestGapHours: 0, longestFrom: '', filledKwh: 0 }
  const ofKind = mean(true)
  const ofAll = mean(false)
  let filledKwh = 0
  for (const run of runs) {
    for (let h = run.start; h < run.start + run.hours; h++) {
      const exact = ofKind[cellOf(h, true)] ?? Number.NaN
      const value = Number.isNaN(exact) ? (ofAll[cellOf(h, false)] ?? Number.NaN) : exact
      if (Number.isNaN(value)) {
        throw new StageError(
          where,
          `the month of ${dateOf(calendar, h)} has no reading at this hour at all, so nothing can be filled in`,
          'Export a longer time, or state usage.monthly_kwh.',
        )
      }
      usageKwh[h] = Math.round(value * 1e6) / 1e6
      filledKwh += value
    }
  }
  return { filledHours, longestGapHours: longest.hours, longestFrom: dateOf(calendar, longest.start), filledKwh }
}
