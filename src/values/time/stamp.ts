import { MS_PER_HOUR, MS_PER_MINUTE, MS_PER_SECOND, type Milliseconds } from '../units/index.js'

/** A time stamp as written: its clock reading as if it were UTC, and what else the text says. */
export interface Stamp {
  readonly clockMs: Milliseconds
  readonly kind: 'time' | 'date' | 'month'
  /** Offset from UTC in the text, h. */
  readonly offsetH?: number
}

/** Midnight of a date as if it were UTC, ms; undefined when there is no such date. @param month 1 to 12. */
export function dateMs(year: number, month: number, day: number): Milliseconds | undefined {
  const ms = Date.UTC(year, month - 1, day)
  const back = new Date(ms)
  return back.getUTCMonth() === month - 1 && back.getUTCDate() === day ? ms : undefined
}

/** Time after midnight, ms; 24:00 is the end of the day; undefined when no clock shows it. */
export function timeOfDayMs(hour: number, minute: number, second: number): Milliseconds | undefined {
  if (hour > 24 || minute > 59 || second > 59 || (hour === 24 && minute + second > 0)) return undefined
  return hour * MS_PER_HOUR + minute * MS_PER_MINUTE + second * MS_PER_SECOND
}

/** Hour of the day from an hour of a half day, 1 to 12; undefined for another. @param half `am` or `pm` in any case. */
export function hourOfHalf(hour: number, half: string): number | undefined {
  if (hour < 1 || hour > 12) return undefined
  return (hour % 12) + (half.toLowerCase().startsWith('p') ? 12 : 0)
}

/** Offset from UTC, h. @param zone `Z`, `-07:00` or `+0530`. */
export function zoneOffsetH(zone: string): number {
  if (zone === 'Z') return 0
  const digits = zone.replaceAll(/\D/gu, '')
  return (zone.startsWith('-') ? -1 : 1) * (Number(digits.slice(0, 2)) + Number(digits.slice(2)) / 60)
}
