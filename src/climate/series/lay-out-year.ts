import { MS_PER_DAY, MS_PER_HOUR, MS_PER_MINUTE, type Milliseconds } from '../../values/index.js'
import { StageError } from '../../worksheet/index.js'
import { dayIndex, daysOfYear, sayMoment } from './grid-day.js'
import { seriesError } from './series-error.js'
import type { Quantity, SeriesFile, SeriesRows, SeriesYear } from './series-file.js'
import { stepOfRows } from './series-step.js'

const ONE_YEAR = 'give one year; site.climate.year takes one out of a file of several'

/**
 * Lays the rows of a file on the even grid of one year. The months may come from different years, as in a typical year,
 * and a year that begins within another is closed to a ring; rows that the file lacks are left empty.
 *
 * @param year Calendar year (local standard time) to take; the whole file when undefined.
 * @throws StageError with the line of a stamp that repeats, goes back, leaves the grid or belongs to another year.
 */
export function layOutYear({ rows, stampsMark }: SeriesFile, year: number | undefined): SeriesYear {
  const stepMs = stepOfRows(rows)
  const toMiddleMs = stampsMark === 'instant' ? 0 : stampsMark === 'beginning' ? stepMs / 2 : -stepMs / 2
  const taken: Moment[] = []
  for (let row = 0; row < rows.length; row++) {
    const moment = momentOf(rows.stampMs[row]! + toMiddleMs, row, rows.line[row]!)
    if (year === undefined || moment.year === year) taken.push(moment)
  }
  const [first] = taken
  if (first === undefined)
    throw new StageError(
      'site.climate.year',
      `the weather file has no row of the year ${year ?? ''}`,
      'state a year of the file',
    )
  const phaseMs = first.dayMs % stepMs
  const isLeap = taken.some(({ month, day }) => month === 2 && day === 29)
  const grid = emptyGrid(stepMs / MS_PER_HOUR, isLeap, phaseMs / MS_PER_HOUR, [...rows.columns.keys()])
  const holders = new Int32Array(grid.length).fill(-1)
  let before: Moment | undefined
  let beforeSlot = -1
  for (const [index, moment] of taken.entries()) {
    const steps = (moment.dayMs - phaseMs) / stepMs
    if (!Number.isInteger(steps)) throw offTheGrid(moment, stepMs)
    const slot = dayIndex(moment.month, moment.day, isLeap) * (MS_PER_DAY / stepMs) + steps
    if (holders[slot]! >= 0) throw comesTwice(moment, taken[holders[slot]!] as Moment)
    if (before !== undefined) checkOrder(moment, before, slot > beforeSlot)
    holders[slot] = index
    before = moment
    beforeSlot = slot
    fillSlot(grid, slot, rows, moment, stepMs / MS_PER_HOUR)
  }
  return grid
}

/** The middle of an interval by the clock of local standard time. */
interface Moment {
  readonly row: number
  readonly line: number
  readonly ms: Milliseconds
  readonly year: number
  readonly month: number
  readonly day: number
  /** Since midnight, ms. */
  readonly dayMs: Milliseconds
}

function momentOf(ms: Milliseconds, row: number, line: number): Moment {
  const date = new Date(ms)
  return {
    row,
    line,
    ms,
    year: date.getUTCFullYear(),
    month: date.getUTCMonth() + 1,
    day: date.getUTCDate(),
    dayMs: ((ms % MS_PER_DAY) + MS_PER_DAY) % MS_PER_DAY,
  }
}

function emptyGrid(stepH: number, isLeap: boolean, phaseH: number, quantities: readonly Quantity[]): SeriesYear {
  const rowsPerDay = Math.round(24 / stepH)
  const days = daysOfYear(isLeap)
  const length = days.length * rowsPerDay
  const dayOf = (row: number): number => Math.floor(row / rowsPerDay)
  return {
    stepH,
    isLeap,
    length,
    middleH: Float64Array.from({ length }, (_, row) => phaseH + (row % rowsPerDay) * stepH),
    month: Uint8Array.from({ length }, (_, row) => days[dayOf(row)]![0]),
    day: Uint8Array.from({ length }, (_, row) => days[dayOf(row)]![1]),
    dayOfYear: Uint16Array.from({ length }, (_, row) => dayOf(row) + 1),
    line: new Uint32Array(length),
    columns: new Map(quantities.map((name) => [name, new Float64Array(length).fill(Number.NaN)])),
  }
}

function fillSlot(grid: SeriesYear, slot: number, rows: SeriesRows, { row, line }: Moment, stepH: number): void {
  grid.line[slot] = line
  for (const [name, values] of grid.columns) {
    const value = (rows.columns.get(name) as Float64Array)[row]!
    values[slot] = rows.energies.has(name) ? value / stepH : value
  }
}

/** Rows go on in the calendar; from one month to the next the year may be any, and December may be followed by January. */
function checkOrder(moment: Moment, before: Moment, goesOn: boolean): void {
  const isLater = moment.ms > before.ms
  const isOneYear = moment.ms - before.ms < 300 * MS_PER_DAY
  const monthChanges = moment.month !== before.month || isEndOfMonth(moment)
  if (goesOn && (monthChanges || (isLater && isOneYear))) return
  if (!goesOn && isLater && isOneYear) return
  const message = isLater
    ? `${sayDate(moment)} follows ${sayDate(before)} of line ${before.line}: the year jumps within a month`
    : `${sayDate(moment)} stands after ${sayDate(before)} of line ${before.line}: time goes back`
  throw seriesError(moment.line, undefined, message, 'use a file with rows in order of time')
}

/** A file of UTC joins its months within the last or first day of local time. */
function isEndOfMonth({ year, month, day }: Moment): boolean {
  return day === 1 || new Date(Date.UTC(year, month - 1, day + 1)).getUTCMonth() !== month - 1
}

function offTheGrid({ line }: Moment, stepMs: Milliseconds): StageError {
  return seriesError(
    line,
    undefined,
    `the stamp leaves the even ${stepMs / MS_PER_MINUTE} min of the rows; intervals of two lengths are not read`,
    'use a file with one length of interval, or average the shorter ones',
  )
}

function comesTwice(moment: Moment, other: Moment): StageError {
  if (moment.ms === other.ms)
    return seriesError(
      moment.line,
      undefined,
      `the stamp of ${sayDate(moment)} (middle of its interval) repeats that of line ${other.line}`,
      'take one of the two rows out; where a clock was set back, say so in table.clock',
    )
  return seriesError(
    moment.line,
    undefined,
    `${sayDate(moment)} is the same moment of the year as ${sayDate(other)} in line ${other.line}: the file holds more than one year`,
    ONE_YEAR,
  )
}

function sayDate({ year, month, day, dayMs }: Moment): string {
  return `${sayMoment(month, day, dayMs / MS_PER_HOUR)} ${year}`
}
