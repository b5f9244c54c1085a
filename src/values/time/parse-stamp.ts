import { dateMs, hourOfHalf, timeOfDayMs, zoneOffsetH, type Stamp } from './stamp.js'

export type DateOrder = 'month_first' | 'day_first'

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
  const dayMs = dateMs(...date)
  if (dayMs === undefined) return undefined
  const [hourText, minuteText, secondText, half, zone] = rest
  if (hourText === undefined) return zone === undefined ? { clockMs: dayMs, kind: 'date' } : undefined
  const hour = half === undefined ? Number(hourText) : hourOfHalf(Number(hourText), half)
  const time = hour === undefined ? undefined : timeOfDayMs(hour, Number(minuteText), Number(secondText ?? 0))
  if (time === undefined) return undefined
  return { clockMs: dayMs + time, kind: 'time', ...(zone === undefined ? {} : { offsetH: zoneOffsetH(zone) }) }
}
