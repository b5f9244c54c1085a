import { EPW_COLUMN } from './epw-columns.js'
import { epwError, FETCH_AGAIN } from './epw-error.js'
import { EpwHourOrder } from './epw-hour-order.js'
import { readNumber } from './epw-number.js'

/** Hours of a year with a 29 February. */
const MOST_HOURS = 8784
/** Columns of an EPW row: 35 by the data dictionary; the last three (albedo, rain) may be missing. */
const FEWEST_COLUMNS = 32
const MOST_COLUMNS = 35
const [COMMA, NEWLINE, RETURN] = [44, 10, 13] as const

/** Place of each value among the nine that are read from a row. */
const SLOT = { month: 0, day: 1, hour: 2, dryBulb: 3, ghi: 4, dni: 5, dhi: 6, wind: 7, snowDepth: 8 } as const
const SLOT_OF_COLUMN = new Int8Array(64).fill(-1)
for (const [name, column] of Object.entries(EPW_COLUMN)) SLOT_OF_COLUMN[column] = SLOT[name as keyof typeof SLOT]

/** The columns that are used, as they stand in the file; NaN where a field is empty or no number. */
export interface EpwRows {
  readonly length: number
  readonly month: Uint8Array
  readonly day: Uint8Array
  readonly hour: Uint8Array
  readonly dayOfYear: Uint16Array
  readonly dryBulb: Float64Array
  readonly ghi: Float64Array
  readonly dni: Float64Array
  readonly dhi: Float64Array
  readonly wind: Float64Array
  readonly snowDepth: Float64Array
  /** Text of a field, for messages. */
  readonly fieldText: (row: number, column: number) => string
}

/**
 * Reads the hours of an EPW file in one pass over its characters, and checks that they are one whole year in order.
 *
 * @param text The whole file.
 * @param dataAt Index of the first character of the first hour.
 * @param dataLine Line of the first hour, counted from 1, for messages.
 * @throws StageError with line and column.
 */
export function readEpwRows(text: string, dataAt: number, dataLine: number): EpwRows {
  const month = new Uint8Array(MOST_HOURS)
  const day = new Uint8Array(MOST_HOURS)
  const hour = new Uint8Array(MOST_HOURS)
  const dayOfYear = new Uint16Array(MOST_HOURS)
  const series = Array.from({ length: 6 }, () => new Float64Array(MOST_HOURS))
  const [dryBulb, ghi, dni, dhi, wind, snowDepth] = series as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  const values = new Float64Array(9)
  const rowAt = new Int32Array(MOST_HOURS)
  const size = text.length
  let at = dataAt
  let row = 0
  let columns = 0
  const order = new EpwHourOrder()
  while (at < size) {
    const first = text.charCodeAt(at)
    if (first === NEWLINE || first === RETURN) {
      if (text.slice(at).trim() === '') break
      throw epwError(dataLine + row, 0, 'empty line between the hours', FETCH_AGAIN)
    }
    const rowStart = at
    let fieldAt = at
    let column = 0
    for (;;) {
      const code = at < size ? text.charCodeAt(at) : NEWLINE
      if (code === COMMA || code === NEWLINE || code === RETURN) {
        const slot = column < 64 ? SLOT_OF_COLUMN[column]! : -1
        if (slot >= 0) values[slot] = readNumber(text, fieldAt, at)
        column++
        at++
        if (code !== COMMA) {
          if (code === RETURN && text.charCodeAt(at) === NEWLINE) at++
          break
        }
        fieldAt = at
      } else {
        at++
      }
    }
    const line = dataLine + row
    if (columns === 0) columns = column
    if (column !== columns || column < FEWEST_COLUMNS || column > MOST_COLUMNS) throw columnError(line, column, columns)
    if (row >= MOST_HOURS) throw epwError(line, 0, `more than ${MOST_HOURS} hours`, 'use a file with one whole year')
    order.check(values[SLOT.month]!, values[SLOT.day]!, values[SLOT.hour]!, line)
    rowAt[row] = rowStart
    month[row] = order.month
    day[row] = order.day
    hour[row] = order.hour
    dayOfYear[row] = order.dayOfYear
    dryBulb[row] = values[SLOT.dryBulb]!
    ghi[row] = values[SLOT.ghi]!
    dni[row] = values[SLOT.dni]!
    dhi[row] = values[SLOT.dhi]!
    wind[row] = values[SLOT.wind]!
    snowDepth[row] = values[SLOT.snowDepth]!
    row++
  }
  const wanted = order.hasLeapDay ? MOST_HOURS : MOST_HOURS - 24
  if (row !== wanted) {
    throw epwError(
      dataLine + Math.max(0, row - 1),
      0,
      `the file ends after ${row} hours, need 8760 (or 8784 with 29 February)`,
      FETCH_AGAIN,
    )
  }
  return {
    length: row,
    month: month.slice(0, row),
    day: day.slice(0, row),
    hour: hour.slice(0, row),
    dayOfYear: dayOfYear.slice(0, row),
    dryBulb: dryBulb.slice(0, row),
    ghi: ghi.slice(0, row),
    dni: dni.slice(0, row),
    dhi: dhi.slice(0, row),
    wind: wind.slice(0, row),
    snowDepth: snowDepth.slice(0, row),
    fieldText: (index, column) =>
      (text.slice(rowAt[index], rowAt[index]! + 1000).split(/[\r\n]/)[0] ?? '').split(',')[column] ?? '',
  }
}

function columnError(line: number, found: number, before: number): Error {
  const allowed = `${FEWEST_COLUMNS} to ${MOST_COLUMNS}`
  const message =
    found < FEWEST_COLUMNS || found > MOST_COLUMNS
      ? `${found} columns, an EPW row has ${allowed}`
      : `${found} columns, the rows before have ${before}`
  return epwError(line, 0, message, FETCH_AGAIN)
}
