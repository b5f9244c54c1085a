import { epwError, FETCH_AGAIN } from './epw-error.js'
import type { Degrees } from '../values/index.js'

/** The first line of an EPW file. */
export interface EpwLocation {
  readonly city: string
  readonly state: string
  readonly country: string
  /** Data set that the file was made from, such as TMY3. */
  readonly dataSource: string
  readonly wmo: string
  /** Degrees, north positive. */
  readonly latitudeDeg: Degrees
  /** Degrees, east positive. */
  readonly longitudeDeg: Degrees
  /** Local standard time minus UTC, h. */
  readonly utcOffsetH: number
  readonly elevationM: number
}

export interface EpwHeader {
  readonly location: EpwLocation
  /** Index of the first character of the first hour. */
  readonly dataAt: number
  /** Line of the first hour, counted from 1. */
  readonly dataLine: number
}

/** An EPW header has eight lines; some programs add comments. */
const MOST_HEADER_LINES = 24

/**
 * Reads the header of an EPW file up to and with its DATA PERIODS line.
 *
 * @throws StageError with line and column when the file is not an EPW, or not one period of one record per hour.
 * @source EnergyPlus Auxiliary Programs, EPW data dictionary (secondary)
 */
export function parseEpwHeader(text: string): EpwHeader {
  // A byte order mark, read as UTF-8 or byte by byte.
  let at = text.startsWith('\uFEFF') ? 1 : text.startsWith('\u00EF\u00BB\u00BF') ? 3 : 0
  let location: EpwLocation | undefined
  for (let line = 1; line <= MOST_HEADER_LINES && at < text.length; line++) {
    const newline = text.indexOf('\n', at)
    const end = newline === -1 ? text.length : newline
    const fields = text.slice(at, end).split(',')
    const keyword = (fields[0] ?? '').trim().toUpperCase()
    at = end + 1
    if (location === undefined) {
      if (keyword !== 'LOCATION') {
        throw epwError(
          line,
          1,
          `found '${keyword.slice(0, 40)}', an EPW file begins with LOCATION`,
          'give an hourly weather file in EPW format',
        )
      }
      location = parseLocation(fields, line)
    }
    if (keyword === 'DATA PERIODS') {
      checkDataPeriods(fields, line)
      return { location, dataAt: at, dataLine: line + 1 }
    }
  }
  throw epwError(1, 0, `no DATA PERIODS line within the first ${MOST_HEADER_LINES} lines`, FETCH_AGAIN)
}

function parseLocation(fields: readonly string[], line: number): EpwLocation {
  const text = (column: number): string => (fields[column] ?? '').trim()
  const number = (column: number, what: string, low: number, high: number): number => {
    const value = text(column) === '' ? NaN : Number(text(column))
    if (value >= low && value <= high) return value
    throw epwError(
      line,
      column + 1,
      `${what} must be a number from ${low} to ${high} (got '${text(column)}')`,
      FETCH_AGAIN,
    )
  }
  return {
    city: text(1),
    state: text(2),
    country: text(3),
    dataSource: text(4),
    wmo: text(5),
    latitudeDeg: number(6, 'latitude', -90, 90),
    longitudeDeg: number(7, 'longitude', -180, 180),
    utcOffsetH: number(8, 'time zone', -12, 14),
    elevationM: number(9, 'elevation in metres', -1000, 9999),
  }
}

function checkDataPeriods(fields: readonly string[], line: number): void {
  const periods = Number(fields[1])
  if (periods !== 1) {
    throw epwError(line, 2, `${fields[1] ?? 'no'} data periods, need 1`, 'use a file with one whole year')
  }
  const recordsPerHour = Number(fields[2])
  if (recordsPerHour !== 1) {
    throw epwError(line, 3, `${fields[2] ?? 'no'} records per hour, need 1`, 'use a file with one record per hour')
  }
}
