import type { StationTable } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import {
  changeHours,
  MS_PER_HOUR,
  MS_PER_MINUTE,
  stampFormatTrouble,
  stampReader,
  standardMs,
  type Stamp,
  type TableRow,
} from '../../values/index.js'
import type { House } from '../house.js'
import { openTable, readSeriesRows, type ColumnRule } from './read-columns.js'
import { seriesError } from './series-error.js'
import type { Quantity, SeriesFile } from './series-file.js'

const KEYS = [
  ['ghi', 'global'],
  ['dni', 'direct'],
  ['dhi', 'diffuse'],
  ['plane', 'plane'],
  ['dryBulb', 'air_temperature'],
  ['wind', 'wind'],
  ['snowDepth', 'snow_depth'],
] as const

/**
 * Reads the table of a weather station as the project declares it.
 *
 * @param house Stands for the station's place where the project does not state it.
 * @throws StageError with line and column, or with the path of what the project must state.
 */
export function readStation(text: string, table: StationTable, house: House, name: string): SeriesFile {
  const utcOffsetH = table.utc_offset_h ?? house.utcOffsetH
  if (utcOffsetH === undefined)
    throw new StageError(
      'site.climate.table',
      'the UTC offset of the station is not stated, so its stamps have no sun',
      'state site.utc_offset_h, or site.climate.table.utc_offset_h: local STANDARD time minus UTC, h (west is negative)',
    )
  const trouble = stampFormatTrouble(table.stamp_format)
  if (trouble !== undefined)
    throw new StageError('site.climate.table.stamp_format', trouble, 'write a pattern such as YYYY-MM-DD HH:mm')
  const read = openTable(text, table.delimiter ?? ',', table.header_line)
  const at = (column: string, path: string): number => {
    const found = read.header.findIndex((cell) => cell.text === column.trim())
    if (found >= 0) return found
    const names = read.header.map((cell) => `'${cell.text}'`).join(', ')
    throw new StageError(
      path,
      `the weather file has no column '${column}' in line ${table.header_line}`,
      `write one of ${names.slice(0, 400)}`,
    )
  }
  const stampAt = table.stamp_columns.map((column) => at(column, 'site.climate.table.stamp_columns'))
  const columns = new Map<Quantity, ColumnRule>()
  for (const [quantity, key] of KEYS) {
    const stated = table.columns[key]
    if (stated === undefined) continue
    columns.set(quantity, { at: at(stated.column, `site.climate.table.columns.${key}.column`), unit: stated.unit })
  }
  const { plane } = table.columns
  const clock = clockReader(table, utcOffsetH)
  const reader = stampReader(table.stamp_format)
  const missing = new Set(table.missing)
  const rows = readSeriesRows(read, {
    columns,
    stampMs: (row) => {
      const stampText = stampAt.map((index) => row.texts[index] ?? '').join(' ')
      const stamp = reader(stampText)
      if (stamp === undefined)
        return { problem: `'${stampText}' does not fit stamp_format ${table.stamp_format}`, at: stampAt[0] ?? 0 }
      return clock(stamp, row)
    },
    isMissing: (cell) => missing.has(cell),
    decimalComma: table.decimal === 'comma',
  })
  return {
    name,
    latitudeDeg: table.latitude_deg ?? house.latitudeDeg,
    longitudeDeg: table.longitude_deg ?? house.longitudeDeg,
    elevationM: house.elevationM,
    utcOffsetH,
    stampsMark: table.stamps_mark,
    rows,
    ...(plane === undefined ? {} : { plane: { tiltDeg: plane.tilt_deg, azimuthDeg: plane.azimuth_deg } }),
  }
}

/** Turns stamps into local standard time, ms as if UTC; a zone in the stamp itself wins over the declared clock. */
function clockReader({ clock, stamps_mark: mark }: StationTable, utcOffsetH: number) {
  let lastMs = -Infinity
  // An ending stamp at the change of clocks may be written by either clock: a moment before it is looked at first.
  const backMs = mark === 'ending' ? [MS_PER_MINUTE, 0] : [0]
  return (stamp: Stamp, row: TableRow): number => {
    const zoneH = stamp.offsetH ?? (clock === 'utc' ? 0 : undefined)
    if (zoneH !== undefined) return stamp.clockMs + (utcOffsetH - zoneH) * MS_PER_HOUR
    if (clock === 'standard') return stamp.clockMs
    // The hour that comes twice: its second pass begins where the clock does not go on.
    const readings = [false, true]
      .flatMap((second) => backMs.map((ms) => [standardMs(stamp.clockMs - ms, second), ms] as const))
      .flatMap(([ms, back]) => (ms === undefined ? [] : [ms + back]))
    const standard = readings.find((ms) => ms > lastMs) ?? readings[0]
    if (standard === undefined) {
      const { skippedMs } = changeHours(new Date(stamp.clockMs).getUTCFullYear())
      const day = new Date(skippedMs).toISOString().slice(0, 10)
      throw seriesError(
        row.line,
        undefined,
        `the local clock skips this hour on ${day}`,
        'write clock: standard when the station does not change its clock',
      )
    }
    lastMs = standard
    return standard
  }
}
