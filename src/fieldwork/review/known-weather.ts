import { REVIEW_DESIGN } from '../../tables/fieldwork/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { JudgedDay } from './judged-day.js'
import type { ReviewValues } from './review-values.js'

/** Share of the days from which those of known weather alone are looked through for dirt: the others are measured by another rule. */
const MOSTLY = 0.5

export function basisOf(modelled: number, days: number): ReviewValues['basis'] {
  if (modelled === 0) return 'long_term_days'
  return modelled === days ? 'weather_of_these_hours' : 'weather_of_some_days'
}

/** Whether days of known weather are so many that clear days are measured by it alone. */
export function isMostlyKnown(days: readonly JudgedDay[]): boolean {
  return days.filter((day) => day.modelled !== undefined).length >= Math.max(1, MOSTLY * days.length)
}

/**
 * What each day gives when it is clear: what its own weather lets expect, or the clearest kind of its season. One rule for a whole table,
 * as a day of one kind beside days of the other would look like a change; days for which it knows nothing are left out.
 */
export function clearestOf(days: readonly JudgedDay[]): (day: number) => number | undefined {
  const isKnown = isMostlyKnown(days)
  const levels = new Map(days.map((day) => [day.day, isKnown ? day.modelled?.kwh : day.kindsKwh.at(-1)]))
  return (day) => levels.get(day)
}

/** How far a stretch of days may lie off the estimate without a fault, as a share: less, the more of its days have weather of their own. */
export function seasonTolerance(days: readonly JudgedDay[]): (from: number, end: number) => number {
  const { seasonTolerance: unknown, seasonToleranceWeather: known } = REVIEW_DESIGN
  const counts = new Float64Array(days.length + 1)
  days.forEach((day, at) => {
    counts[at + 1] = counts[at]! + (day.modelled === undefined ? 0 : 1)
  })
  return (from, end) => unknown + ((known - unknown) * (counts[end]! - counts[from]!)) / (end - from)
}

/** Says how many days were judged by their own weather, where they are not all. */
export function tellPart({ basis, period }: ReviewValues, name: string, worksheet: Worksheet): void {
  if (basis !== 'weather_of_some_days') return
  const { days_by_weather: known, days_counted: days } = period
  worksheet.find({
    severity: 'note',
    id: 'output.weather-of-some-days',
    message: `${known} of ${days} days are judged by their own weather (${name}), the other ${days - known} by the long-term kinds of day`,
    where: '',
    fix: 'give a weather file that covers all measured days to narrow the range',
  })
}
