import { MS_PER_HOUR, type Milliseconds } from '../units/index.js'
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

/**
 * Standard time of a clock reading in the United States, ms as if UTC.
 *
 * @param clockMs Reading of the clock on the wall, as if UTC.
 * @param second Whether this is the second time that the clock shows it, in the hour that comes twice in autumn.
 * @returns undefined for the hour that does not exist in spring.
 * @source As above.
 * @limits Years from 2007.
 */
export function standardMs(clockMs: Milliseconds, second: boolean): Milliseconds | undefined {
  const { skippedMs, twiceMs } = changeHours(new Date(clockMs).getUTCFullYear())
  if (clockMs < skippedMs || clockMs >= twiceMs + MS_PER_HOUR) return clockMs
  if (clockMs < skippedMs + MS_PER_HOUR) return undefined
  return clockMs >= twiceMs && second ? clockMs : clockMs - MS_PER_HOUR
}

/** Beginning of the hours, as the clock shows them, that are skipped in spring and come twice in autumn. */
export function changeHours(year: number): { readonly skippedMs: Milliseconds; readonly twiceMs: Milliseconds } {
  return {
    skippedMs: Date.UTC(year, 2, nthWeekday(year, 3, 0, 2)) + 2 * MS_PER_HOUR,
    twiceMs: Date.UTC(year, 10, nthWeekday(year, 11, 0, 1)) + MS_PER_HOUR,
  }
}
