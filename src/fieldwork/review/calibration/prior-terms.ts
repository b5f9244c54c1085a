import { DAYS_IN_MONTH } from '../../../climate/index.js'
import { calendarDay } from '../../../values/index.js'
import { AGE_TERM, SNOW_TERM, WEATHER_TERMS, type YieldRun } from '../../../yield/index.js'
import type { PriorTerm } from './update.js'

/** The days that were measured. */
export interface MeasuredDays {
  /** Numbers of the days since 1970-01-01. */
  readonly days: readonly number[]
  readonly expectedKwh: number
  /** Whether they are held against their own weather. */
  readonly isWeatherKnown: boolean
  /** Mean new snow by month, in; undefined where nobody knows. */
  readonly snowIn: readonly number[] | undefined
}

/** The lasting causes of doubt of a year's energy, and how far the measured days tell of each. */
export function priorTerms(run: YieldRun, measured: MeasuredDays): PriorTerm[] {
  const { uncertainty, annual } = run.result.values
  return uncertainty
    .filter(({ term, lasts }) => lasts && term !== AGE_TERM)
    .map(({ term, percent }) => ({ term, prior: percent / 100, loading: loadingOf(term, measured, annual.ac_kwh) }))
}

function loadingOf(term: string, measured: MeasuredDays, yearKwh: number): number {
  if (measured.isWeatherKnown && WEATHER_TERMS.has(term)) return 0
  if (term !== SNOW_TERM) return 1
  return measured.expectedKwh > 0 ? (snowYears(measured) * yearKwh) / measured.expectedKwh : 0
}

/** Years' worth of snow that falls in the months of the measured days on the mean; 0 where nobody knows. */
function snowYears({ days, snowIn }: MeasuredDays): number {
  const year = snowIn?.reduce((sum, inches) => sum + inches, 0) ?? 0
  if (snowIn === undefined || year <= 0) return 0
  return days.reduce((sum, day) => {
    const { month } = calendarDay(day)
    return sum + (snowIn[month] ?? 0) / DAYS_IN_MONTH[month]! / year
  }, 0)
}

/** Share of the days of a year that were measured, of whatever year; 29 February counts as no day of its own. */
export function shareOfYear(days: readonly number[]): number {
  const found = new Set(
    days.map((day) => {
      const { month, dayOfMonth } = calendarDay(day)
      return `${month}-${dayOfMonth}`
    }),
  )
  found.delete('1-29')
  return found.size / 365
}
