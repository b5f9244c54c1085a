import { MS_PER_HOUR, MS_PER_MINUTE, readRows } from '../../values/index.js'
import type { WeatherFile } from '../../project/index.js'
import { openTable, readSeriesRows, type ColumnRule } from './read-columns.js'
import { seriesError } from './series-error.js'
import type { Quantity, SeriesFile } from './series-file.js'
import type { UnitName } from './units.js'

/** Column names, and the unit that the file must state for them in its first two lines where it states one. */
const COLUMNS = [
  ['ghi', 'GHI', 'GHI Units', { 'w/m2': 'w_m2' }],
  ['dni', 'DNI', 'DNI Units', { 'w/m2': 'w_m2' }],
  ['dhi', 'DHI', 'DHI Units', { 'w/m2': 'w_m2' }],
  ['dryBulb', 'Temperature', 'Temperature Units', { c: 'c' }],
  ['wind', 'Wind Speed', 'Wind Speed Units', { 'm/s': 'm_s' }],
] as const satisfies readonly (readonly [Quantity, string, string, Record<string, UnitName>])[]

const TIME = ['Year', 'Month', 'Day', 'Hour', 'Minute'] as const
const MISSING = new Set(['-9999', '-999', 'nan', 'NaN'])
const FIX = 'check kind, or fetch the file again from its publisher'

/**
 * Reads a year of the US national solar radiation database (satellite period, 1998 on).
 *
 * @throws StageError with line and column.
 * @source Public listings of such files (secondary): names and values of the place in lines 1 and 2, columns from line 3,
 *   `Time Zone` is that of the stamps, `Local Time Zone` that of the place; that values belong to the instant of the stamp is
 *   from memory, unverified
 */
export function readSolarDatabase(text: string, { stamps_mark: mark }: WeatherFile): SeriesFile {
  const rows = readRows([text], { trim: true })
  const [first, second] = [rows.next(), rows.next()]
  const names = first.done === true ? [] : first.value.texts
  const values = second.done === true ? [] : second.value.texts
  const property = (name: string): string | undefined => {
    const at = names.findIndex((each) => each.toLowerCase() === name.toLowerCase())
    const found = at < 0 ? undefined : values[at]
    return found === '' ? undefined : found
  }
  const number = (name: string, low: number, high: number): number => {
    const stated = property(name)
    const value = stated === undefined ? Number.NaN : Number(stated)
    if (value >= low && value <= high) return value
    throw seriesError(2, undefined, `${name} must be a number from ${low} to ${high} (got '${stated ?? ''}')`, FIX)
  }
  const stampOffsetH = number('Time Zone', -12, 14)
  const utcOffsetH = number('Local Time Zone', -12, 14)
  const place = { latitudeDeg: number('Latitude', -90, 90), longitudeDeg: number('Longitude', -180, 180) }
  const elevationM = property('Elevation') === undefined ? undefined : number('Elevation', -1000, 9999)
  const table = openTable(text, ',', 3)
  const at = (name: string): number => table.header.findIndex((cell) => cell.text.toLowerCase() === name.toLowerCase())
  const timeAt = TIME.map((name) => at(name))
  const lost = TIME.filter((_, index) => timeAt[index] === -1)
  if (lost.length > 0) throw seriesError(3, undefined, `no column ${lost.join(', ')}`, FIX)
  const columns = new Map<Quantity, ColumnRule>()
  for (const [name, column, unitOf, units] of COLUMNS) {
    if (at(column) < 0) continue
    const stated = property(unitOf)?.toLowerCase()
    const unit = stated === undefined ? Object.values(units)[0] : (units as Record<string, UnitName>)[stated]
    if (unit === undefined)
      throw seriesError(2, undefined, `${unitOf} is '${stated ?? ''}', expected ${Object.keys(units).join(', ')}`, FIX)
    columns.set(name, { at: at(column), unit })
  }
  const zoneMs = (utcOffsetH - stampOffsetH) * MS_PER_HOUR
  const read = readSeriesRows(table, {
    columns,
    stampMs: ({ texts }) => {
      const [year = 0, month = 0, day = 0, hour = 0, minute = 0] = timeAt.map((index) => Number(texts[index] || NaN))
      const ms = Date.UTC(year, month - 1, day)
      const isDay = new Date(ms).getUTCMonth() === month - 1 && new Date(ms).getUTCDate() === day
      if (!isDay || !(hour >= 0 && hour <= 23 && minute >= 0 && minute <= 59))
        return { problem: `'${timeAt.map((index) => texts[index]).join(' ')}' is no time`, at: timeAt[0] ?? 0 }
      return ms + hour * MS_PER_HOUR + minute * MS_PER_MINUTE + zoneMs
    },
    isMissing: (cell) => MISSING.has(cell),
    decimalComma: false,
  })
  const name = [property('Source'), property('Location ID')].filter((part) => part !== undefined).join(' ')
  return { name: name || 'weather file', ...place, elevationM, utcOffsetH, stampsMark: mark ?? 'instant', rows: read }
}
