import { epwError, FETCH_AGAIN } from './epw-error.js'
import { EpwHourOrder } from './epw-hour-order.js'
import { EpwRowReader, SLOT } from './epw-row-reader.js'

/** Hours of a year with a 29 February. */
const MOST_HOURS = 8784
/** Columns of an EPW row: 35 by the data dictionary; the last three (albedo, rain) may be missing. */
const FEWEST_COLUMNS = 32
const MOST_COLUMNS = 35
/** The columns that are used, as they stand in the file; NaN where a field is empty or no number. */
interface EpwColumns {
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
}

/** The hours of a file: `length` entries in each column. */
export interface EpwRows extends EpwColumns {
  readonly length: number
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
  const filled = emptyColumns()
  const rowAt = new Int32Array(MOST_HOURS)
  const reader = new EpwRowReader(text, dataAt)
  const order = new EpwHourOrder()
  let row = 0
  let columns = 0
  for (; !reader.isAtEnd(); row++) {
    const line = dataLine + row
    if (reader.isAtEmptyLine()) {
      if (reader.isBlankFromHere()) break
      throw epwError(line, 0, 'empty line between the hours', FETCH_AGAIN)
    }
    const rowStart = reader.at
    const found = reader.readRow()
    if (columns === 0) columns = found
    if (found !== columns || found < FEWEST_COLUMNS || found > MOST_COLUMNS) throw columnError(line, found, columns)
    if (row >= MOST_HOURS) throw epwError(line, 0, `more than ${MOST_HOURS} hours`, 'use a file with one whole year')
    rowAt[row] = rowStart
    fillRow(filled, row, reader.values, order, line)
  }
  if (row !== (order.hasLeapDay ? MOST_HOURS : MOST_HOURS - 24)) {
    const message = `the file ends after ${row} hours, need 8760 (or 8784 with 29 February)`
    throw epwError(dataLine + Math.max(0, row - 1), 0, message, FETCH_AGAIN)
  }
  return {
    ...cutColumns(filled, row),
    length: row,
    fieldText: (index, column) =>
      (text.slice(rowAt[index], rowAt[index]! + 1000).split(/[\r\n]/)[0] ?? '').split(',')[column] ?? '',
  }
}

function emptyColumns(): EpwColumns {
  const series = (): Float64Array => new Float64Array(MOST_HOURS)
  return {
    month: new Uint8Array(MOST_HOURS),
    day: new Uint8Array(MOST_HOURS),
    hour: new Uint8Array(MOST_HOURS),
    dayOfYear: new Uint16Array(MOST_HOURS),
    dryBulb: series(),
    ghi: series(),
    dni: series(),
    dhi: series(),
    wind: series(),
    snowDepth: series(),
  }
}

/** Takes the values of a row over, after its month, day and hour were found to follow the row before. */
function fillRow(filled: EpwColumns, row: number, values: Float64Array, order: EpwHourOrder, line: number): void {
  order.check(values[SLOT.month]!, values[SLOT.day]!, values[SLOT.hour]!, line)
  filled.month[row] = order.month
  filled.day[row] = order.day
  filled.hour[row] = order.hour
  filled.dayOfYear[row] = order.dayOfYear
  filled.dryBulb[row] = values[SLOT.dryBulb]!
  filled.ghi[row] = values[SLOT.ghi]!
  filled.dni[row] = values[SLOT.dni]!
  filled.dhi[row] = values[SLOT.dhi]!
  filled.wind[row] = values[SLOT.wind]!
  filled.snowDepth[row] = values[SLOT.snowDepth]!
}

function cutColumns(filled: EpwColumns, length: number): EpwColumns {
  return {
    month: filled.month.slice(0, length),
    day: filled.day.slice(0, length),
    hour: filled.hour.slice(0, length),
    dayOfYear: filled.dayOfYear.slice(0, length),
    dryBulb: filled.dryBulb.slice(0, length),
    ghi: filled.ghi.slice(0, length),
    dni: filled.dni.slice(0, length),
    dhi: filled.dhi.slice(0, length),
    wind: filled.wind.slice(0, length),
    snowDepth: filled.snowDepth.slice(0, length),
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
