import { calendarDay, dateText } from '../../values/index.js'
import { daysOf, sumOf, type Period } from './count-days.js'
import { expectedRange, percentileOf } from './expected-range.js'
import type { Course } from './course.js'
import type { MonthReview } from './review-values.js'
import { totalSpread, type LastingSpread } from './spread.js'

/** Each month beside what its measured days should have given. A reading over the end of a month belongs to neither. */
export function reviewMonths(
  periods: readonly Period[],
  courseOf: (own: readonly Period[]) => Course,
  lastingOf: (course: Course) => LastingSpread,
): MonthReview[] {
  const byMonth = new Map<string, Period[]>()
  for (const period of periods) {
    const key = dateText(period.firstDay).slice(0, 7)
    if (calendarDay(period.firstDay + period.days - 1).month !== calendarDay(period.firstDay).month) continue
    const own = byMonth.get(key)
    if (own === undefined) byMonth.set(key, [period])
    else own.push(period)
  }
  return [...byMonth].map(([month, own]) => {
    const course = courseOf(own)
    const lasting = lastingOf(course)
    const measured = sumOf(own)
    return {
      month,
      days_counted: own.reduce((sum, period) => sum + period.days, 0),
      measured_kwh: measured,
      ...expectedRange(course.total, lasting),
      percentile: percentileOf(course.total, measured, totalSpread(lasting)),
    }
  })
}

/**
 * Sums of kinds of day, each worked out once: where only the days of the month count, one January is as another.
 *
 * @param isKept False where days have weather of their own, so that each month is another.
 */
export function keptByDays(
  courseOf: (own: readonly Period[]) => Course,
  isKept: boolean,
): (own: readonly Period[]) => Course {
  if (!isKept) return courseOf
  const known = new Map<string, Course>()
  return (own) => {
    const key = daysOfMonth(own)
    const found = known.get(key) ?? courseOf(own)
    known.set(key, found)
    return found
  }
}

function daysOfMonth(periods: readonly Period[]): string {
  const { month, daysInMonth } = calendarDay(periods[0]?.firstDay ?? 0)
  const days = periods.flatMap(daysOf).map((day) => calendarDay(day).dayOfMonth)
  return [month, daysInMonth, ...days].join(' ')
}
