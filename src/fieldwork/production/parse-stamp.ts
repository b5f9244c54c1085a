import type { Milliseconds } from '../../values/index.js'

export type DateOrder = 'month_first' | 'day_first'

/** A time stamp as written: its clock reading as if it were UTC, and what else the text says. */
export interface Stamp {
  readonly clockMs: Milliseconds
  readonly kind: 'time' | 'date' | 'month'
  /** Offset from UTC in the text, h. */
  readonly offsetH?: number
}

const TIME = String.raw`(?:[T\s]+(\d{1,2}):(\d{2})(?::(\d{2})(?:\.\d+)?)?\s*([AaPp][Mm])?)?\s*(Z|[+-]\d{2}:?\d{2})?`
const YEAR_FIRST = new RegExp(String.raw`^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})${TIME}$`, 'u')
const YEAR_LAST = new RegExp(String.raw`^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})${TIME}$`, 'u')
const YEAR_MONTH = /^(\d{4})[-/.](\d{1,2})$/u
const MONTH_YEAR = /^([A-Za-z]{3,9})[\s-]+(\d{4})$/u
const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']

/**
 * Reads a time stamp.
 *
 * @param order Order in dates that end in the year.
 * @returns undefined when the text is no date that exists.
 */
export function parseStamp(text: string, order: DateOrder): Stamp | undefined {
  const month = YEAR_MONTH.exec(text)
  if (month !== null) return stampOfMonth(Number(month[1]), Number(month[2]))
  const named = MONTH_YEAR.exec(text)
  if (named !== null)
    return stampOfMonth(Number(named[2]), MONTHS.indexOf((named[1] ?? '').slice(0, 3).toLowerCase()) + 1)
  const first = YEAR_FIRST.exec(text)
  if (first !== null) return stampOf([Number(first[1]), Number(first[2]), Number(first[3])], first.slice(4))
  const last = YEAR_LAST.exec(text)
  if (last === null) return undefined
  const year = Number(last[3]) + ((last[3] ?? '').length === 2 ? 2000 : 0)
  const [one, two] = [Number(last[1]), Number(last[2])]
  return stampOf(order === 'month_first' ? [year, one, two] : [year, two, one], last.slice(4))
}

/** What a date that ends in the year tells about its order; undefined when both readings exist or it is no such date. */
export function orderOf(text: string): DateOrder | undefined {
  const last = YEAR_LAST.exec(text)
  if (last === null) return undefined
  if (Number(last[1]) > 12) return 'day_first'
  return Number(last[2]) > 12 ? 'month_first' : undefined
}

/** Whether the order of the parts matters for this text. */
export function needsOrder(text: string): boolean {
  return YEAR_LAST.test(text)
}

function stampOfMonth(year: number, month: number): Stamp | undefined {
  return month >= 1 && month <= 12 ? { clockMs: Date.UTC(year, month - 1, 1), kind: 'month' } : undefined
}

function stampOf(date: readonly [number, number, number], rest: readonly (string | undefined)[]): Stamp | undefined {
  const [year, month, day] = date
  const dayMs = Date.UTC(year, month - 1, day)
  const back = new Date(dayMs)
  if (back.getUTCMonth() !== month - 1 || back.getUTCDate() !== day) return undefined
  const [hourText, minuteText, secondText, half, zone] = rest
  if (hourText === undefined) return zone === undefined ? { clockMs: dayMs, kind: 'date' } : undefined
  const [minute, second] = [Number(minuteText), Number(secondText ?? 0)]
  let hour = Number(hourText)
  if (half !== undefined) {
    if (hour < 1 || hour > 12) return undefined
    hour = (hour % 12) + (half.toLowerCase() === 'pm' ? 12 : 0)
  }
  if (hour > 24 || minute > 59 || second > 59 || (hour === 24 && minute + second > 0)) return undefined
  const clockMs = dayMs + ((hour * 60 + minute) * 60 + second) * 1000
  if (zone === undefined) return { clockMs, kind: 'time' }
  if (zone === 'Z') return { clockMs, kind: 'time', offsetH: 0 }
  const sign = zone.startsWith('-') ? -1 : 1
  const digits = zone.replaceAll(/\D/gu, '')
  return { clockMs, kind: 'time', offsetH: sign * (Number(digits.slice(0, 2)) + Number(digits.slice(2)) / 60) }
}
