import { MS_PER_DAY } from '../units/index.js'
/** Number of a day, counted from 1970-01-01. */
export function dayNumber(ms: number): number {
  return Math.floor(ms / MS_PER_DAY)
}

/** `2026-07-31` */
export function dateText(day: number): string {
  return new Date(day * MS_PER_DAY).toISOString().slice(0, 10)
}

export interface CalendarDay {
  readonly year: number
  /** 0 to 11. */
  readonly month: number
  readonly dayOfMonth: number
  readonly daysInMonth: number
}

export function calendarDay(day: number): CalendarDay {
  const date = new Date(day * MS_PER_DAY)
  const [year, month] = [date.getUTCFullYear(), date.getUTCMonth()]
  return {
    year,
    month,
    dayOfMonth: date.getUTCDate(),
    daysInMonth: new Date(Date.UTC(year, month + 1, 0)).getUTCDate(),
  }
}

/** First day of the month that holds a day, or of a month some months later. */
export function firstOfMonth(day: number, monthsLater = 0): number {
  const { year, month } = calendarDay(day)
  return dayNumber(Date.UTC(year, month + monthsLater, 1))
}

/** Day of the year as the sun's tables count it, 0 = 1 January; 29 February counts as 28 February. */
export function sunDay(day: number): number {
  const { year, month, dayOfMonth } = calendarDay(day)
  const isLeap = new Date(Date.UTC(year, 1, 29)).getUTCMonth() === 1
  const count = dayNumber(Date.UTC(year, month, dayOfMonth)) - dayNumber(Date.UTC(year, 0, 1))
  return isLeap && count > 58 ? count - 1 : count
}
