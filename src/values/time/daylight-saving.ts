import { nthWeekday } from './dates.js'

/**
 * Whether US daylight saving time is in force: second Sunday of March 02:00 to first Sunday of November 02:00 local clock time.
 *
 * @param month 1 to 12. @param standardHour Hour of local STANDARD time, 0 to 23 (fractions allowed).
 * @source Rule codes 360E2000 and B40E2000 of published ESPI sample files (second Sunday of March, first of November).
 * @limits Years from 2007; the United States only.
 */
export function isDaylightSaving(year: number, month: number, day: number, standardHour: number): boolean {
  if (month < 3 || month > 11) return false
  if (month > 3 && month < 11) return true
  if (month === 3) {
    const start = nthWeekday(year, 3, 0, 2)
    return day > start || (day === start && standardHour >= 2)
  }
  const end = nthWeekday(year, 11, 0, 1)
  return day < end || (day === end && standardHour < 1)
}
