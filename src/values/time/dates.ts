import { MS_PER_DAY } from '../units/index.js'
const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const

/** Days of the month in a year of 365 days. @param month 1 to 12. */
export function daysInMonth(month: number): number {
  return MONTH_DAYS[month - 1] ?? 0
}

/** Day of a 365-day year, 0 = 1 January; 29 February counts as 28 February. @param month 1 to 12. */
export function dayOfYear(month: number, day: number): number {
  let before = 0
  for (let m = 1; m < month; m++) before += daysInMonth(m)
  return before + Math.min(day, daysInMonth(month)) - 1
}

/** @returns 0 = Sunday to 6 = Saturday. @param month 1 to 12. */
export function weekdayOf(year: number, month: number, day: number): number {
  return new Date(Date.UTC(year, month - 1, day)).getUTCDay()
}

/** Date of the nth weekday of a month (-1 = last). @param weekday 0 = Sunday. @returns Day of the month. */
export function nthWeekday(year: number, month: number, weekday: number, nth: number): number {
  if (nth > 0) return 1 + ((weekday - weekdayOf(year, month, 1) + 7) % 7) + 7 * (nth - 1)
  const last = new Date(Date.UTC(year, month, 0)).getUTCDate()
  return last - ((weekdayOf(year, month, last) - weekday + 7) % 7)
}

/** Whole days from one `YYYY-MM-DD` to another. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / MS_PER_DAY)
}

/** The `YYYY-MM-DD` that lies a number of days later. */
export function addDays(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * MS_PER_DAY).toISOString().slice(0, 10)
}

/** Whether a `YYYY-MM-DD` is a day that there is. */
export function isDay(date: string): boolean {
  const at = Date.parse(`${date}T00:00:00Z`)
  return /^\d{4}-\d{2}-\d{2}$/u.test(date) && !Number.isNaN(at) && new Date(at).toISOString().startsWith(date)
}
