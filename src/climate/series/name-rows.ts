import { MONTHS } from '../../values/index.js'
import { sayMoment } from './grid-day.js'
import type { SeriesYear } from './series-file.js'

const NAMED = 3

/** The first few of some rows with the middle of their interval and their line, for messages. */
export function nameRows(rows: readonly number[], year: SeriesYear): string {
  const named = rows.slice(0, NAMED).map((row) => sayRow(row, year))
  return named.join('; ') + (rows.length > NAMED ? '; ...' : '')
}

/** `5 Mar 14:30, line 1534` */
export function sayRow(row: number, year: SeriesYear): string {
  const rowsPerDay = Math.round(24 / year.stepH)
  const hour =
    year.middleH[row % rowsPerDay]! - year.middleH[0]! + (((year.middleH[0]! % year.stepH) + year.stepH) % year.stepH)
  const line = year.line[row]!
  return `${sayMoment(year.month[row]!, year.day[row]!, hour)}, ${line === 0 ? 'no row' : `line ${line}`}`
}

/** Share of each month's rows that are among some, largest first: `Jan 12 %, Dec 8 %`. */
export function sayMonths(rows: readonly number[], of: readonly number[], year: SeriesYear): string {
  const count = (list: readonly number[]): Float64Array => {
    const counts = new Float64Array(12)
    for (const row of list) counts[year.month[row]! - 1]! += 1
    return counts
  }
  const [some, all] = [count(rows), count(of)]
  return MONTHS.map((name, month) => ({ name, share: all[month]! > 0 ? some[month]! / all[month]! : 0 }))
    .filter(({ share }) => share >= 0.01)
    .toSorted((a, b) => b.share - a.share)
    .map(({ name, share }) => `${name} ${(100 * share).toFixed(0)} %`)
    .join(', ')
}
