import { MS_PER_HOUR, stampReader, readRows } from '../../values/index.js'
import { openTable, readSeriesRows, standardOf, type ColumnRule } from './read-columns.js'
import { seriesError } from './series-error.js'
import type { Quantity, SeriesFile } from './series-file.js'

/** Begin of the column names that are read, with their units. */
const COLUMNS = [
  ['ghi', 'GHI (', 'w_m2', true],
  ['dni', 'DNI (', 'w_m2', true],
  ['dhi', 'DHI (', 'w_m2', true],
  ['dryBulb', 'Dry-bulb (', 'c', true],
  ['wind', 'Wspd (', 'm_s', false],
] as const

/** From this value down the field means that nothing was measured (files of this layout that others make). */
const MISSING_FROM = -9900

/**
 * Reads a typical year in the CSV layout with two header lines: station, then column names.
 *
 * @throws StageError with line and column.
 * @source 1,020 typical-year files of US stations (read): local standard time, stamps 01:00 to 24:00 at the END of the hour
 */
export function readTypicalYear(text: string): SeriesFile {
  const station = readRows([text], { trim: true }).next()
  const fields = station.done === true ? [] : station.value.texts
  const number = (at: number, what: string, low: number, high: number): number => {
    const value = fields[at] === undefined || fields[at] === '' ? Number.NaN : Number(fields[at])
    if (value >= low && value <= high) return value
    const place = station.done === true ? undefined : station.value.cell(at)?.column
    throw seriesError(
      1,
      place,
      `${what} must be a number from ${low} to ${high} (got '${fields[at] ?? ''}'); line 1 is station, name, state, UTC offset, latitude, longitude, elevation`,
      'check kind, or fetch the file again from its publisher',
    )
  }
  const utcOffsetH = number(3, 'UTC offset', -12, 14)
  const place = { latitudeDeg: number(4, 'latitude', -90, 90), longitudeDeg: number(5, 'longitude', -180, 180) }
  const elevationM = number(6, 'elevation in metres', -1000, 9999)
  const table = openTable(text, ',', 2)
  const columns = new Map<Quantity, ColumnRule>()
  for (const [name, begin, unit, needed] of COLUMNS) {
    const at = table.header.findIndex((cell) => cell.text.toLowerCase().startsWith(begin.toLowerCase()))
    if (at >= 0) columns.set(name, { at, unit })
    else if (needed)
      throw seriesError(
        2,
        undefined,
        `no column whose name begins with '${begin}'`,
        'fetch the file again from its publisher; for another layout use kind: station_csv',
      )
  }
  const read = stampReader('MM/DD/YYYY HH:mm')
  const rows = readSeriesRows(table, {
    columns,
    stampMs: ({ texts }) => {
      const stamp = read(`${texts[0] ?? ''} ${texts[1] ?? ''}`)
      return stamp === undefined
        ? { problem: `'${texts[0] ?? ''} ${texts[1] ?? ''}' is no MM/DD/YYYY HH:MM`, at: 0 }
        : standardOf(stamp, utcOffsetH, MS_PER_HOUR)
    },
    isMissing: (cell) => Number(cell) <= MISSING_FROM,
    decimalComma: false,
  })
  const name = [fields[1], fields[2]].filter((part) => part !== undefined && part !== '').join(', ')
  return { name, ...place, elevationM, utcOffsetH, stampsMark: 'ending', rows }
}
