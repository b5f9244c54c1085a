import { addDays, daysInMonth } from '../../values/index.js'

/** Date as text. */
const dateOf = (year: number, month: number, day: number): string =>
  `${String(year)}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`

/**
 * Which share of the days of each bill of a year lies under each of several rate sheets.
 *
 * @param starts First day of each sheet but the first, `YYYY-MM-DD`, oldest first.
 * @param readDay Day of the meter reading, which ends a bill; undefined for calendar months.
 * @returns Twelve rows, January first, a share for each sheet; each row adds up to 1.
 */
export function billWeights(starts: readonly string[], year: number, readDay: number | undefined): number[][] {
  return Array.from({ length: 12 }, (_, i) => {
    const month = i + 1
    const last = dateOf(year, month, readDay ?? daysInMonth(month))
    const before = month === 1 ? dateOf(year - 1, 12, readDay ?? 31) : dateOf(year, i, readDay ?? daysInMonth(i))
    const days = Array.from<number>({ length: starts.length + 1 }).fill(0)
    let count = 0
    for (let date = addDays(before, 1); date <= last; date = addDays(date, 1), count++) {
      const sheet = starts.findLastIndex((from) => from <= date) + 1
      days[sheet] = (days[sheet] ?? 0) + 1
    }
    return days.map((each) => each / count)
  })
}
