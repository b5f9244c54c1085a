import { MONTHS } from '../../values/index.js'
import { DAYS_IN_MONTH } from '../extraterrestrial.js'

/** Day of the year counted from 0, and back, with or without a 29 February. */
export function dayIndex(month: number, day: number, isLeap: boolean): number {
  let before = 0
  for (let each = 1; each < month; each++) before += DAYS_IN_MONTH[each - 1]!
  return before + day - 1 + (isLeap && month > 2 ? 1 : 0)
}

/** Month and day, counted from 1, of each day of a year. */
export function daysOfYear(isLeap: boolean): readonly (readonly [month: number, day: number])[] {
  return DAYS_IN_MONTH.flatMap((days, month) =>
    Array.from({ length: days + (isLeap && month === 1 ? 1 : 0) }, (_, day) => [month + 1, day + 1] as const),
  )
}

/** `5 Mar 14:30` */
export function sayMoment(month: number, day: number, hour: number): string {
  const minutes = Math.round(hour * 60)
  const clock = `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`
  return `${day} ${MONTHS[month - 1] ?? ''} ${clock}`
}
