import { EPW_COLUMN } from './epw-columns.js'
import { epwError } from './epw-error.js'
import { DAYS_IN_MONTH } from './extraterrestrial.js'

/** Walks through the hours of a year; whether it has a 29 February shows when that day comes. */
export class EpwHourOrder {
  month = 1
  day = 1
  hour = 0
  dayOfYear = 1
  hasLeapDay = false

  /** Goes on by one hour and compares. */
  check(month: number, day: number, hour: number, line: number): void {
    this.hour++
    if (this.hour > 24) {
      this.hour = 1
      this.dayOfYear++
      this.day++
      const leapDay = this.month === 2 && this.day === 29 && month === 2 && day === 29
      if (leapDay) this.hasLeapDay = true
      if (!leapDay && this.day > (DAYS_IN_MONTH[this.month - 1] ?? 0)) {
        this.day = 1
        this.month++
      }
    }
    if (month === this.month && day === this.day && hour === this.hour) return
    if (this.month > 12) throw epwError(line, 0, 'hours go on after 31 December', 'use a file with one whole year')
    const column = month !== this.month ? EPW_COLUMN.month : day !== this.day ? EPW_COLUMN.day : EPW_COLUMN.hour
    throw epwError(
      line,
      column + 1,
      `month ${say(month)}, day ${say(day)}, hour ${say(hour)} found where month ${this.month}, day ${this.day}, hour ${this.hour} should follow (hours are 1 to 24, the end of the hour)`,
      'use a file with one whole year from 1 January, hour 1, to 31 December, hour 24',
    )
  }
}

/** A field that holds no number is read as NaN, which means nothing to a person. */
function say(value: number): string {
  return Number.isNaN(value) ? '(no number)' : String(value)
}
