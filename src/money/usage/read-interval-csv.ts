import type { IntervalCsv } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import { clockReader } from './clock-reader.js'
import { parseCsv, type CsvRow } from './csv-table.js'
import type { MeterReading, MeterSeries, OverlapPolicy } from './meter-series.js'
import { orderReadings } from './order-readings.js'
import { stampFormatTrouble, stampReader, type Stamp } from './stamp-reader.js'

const WHERE = 'usage.interval_csv'

function csvError(place: string, message: string, fix: string): StageError {
  return new StageError(`${WHERE}.${place}`, message, fix)
}

/** A value in Wh; undefined for an empty cell. */
type ValueReader = (cell: string, line: number) => number | undefined

function valueReader(unit: IntervalCsv['unit'], intervalMin: number): ValueReader {
  const perHour = intervalMin / 60
  const factor = { kwh: 1000, wh: 1, kw: 1000 * perHour, w: perHour }[unit]
  return (cell, line) => {
    if (cell === '') return undefined
    const plain = /^[+-]?\d{1,3}(,\d{3})+(\.\d+)?$/.test(cell) ? cell.replaceAll(',', '') : cell
    if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain)) {
      throw csvError('file', `line ${String(line)}: '${cell}' is not a number`, 'Correct the cell or leave it empty.')
    }
    const wh = Number(plain) * factor
    if (wh >= 0) return wh
    throw csvError(
      'file',
      `line ${String(line)}: the reading ${cell} is below zero`,
      'Use a table with delivered and received energy in two columns.',
    )
  }
}

/** Header row and the rows below it. */
function tableOf(
  mapping: IntervalCsv,
  text: string,
): { column: (place: string, name: string) => number; rows: CsvRow[] } {
  const rows = parseCsv(text, mapping.delimiter ?? ',')
  const header = rows.find((row) => row.line === mapping.header_line)
  if (header === undefined) {
    throw csvError(
      'header_line',
      `line ${String(mapping.header_line)} of the table is empty`,
      'State the line that holds the column names.',
    )
  }
  const column = (place: string, name: string): number => {
    const index = header.cells.indexOf(name)
    if (index >= 0) return index
    throw csvError(
      place,
      `there is no column '${name}' among the ${String(header.cells.length)} of line ${String(header.line)}`,
      'Write a column name exactly as in the file.',
    )
  }
  return { column, rows: rows.filter((row) => row.line > mapping.header_line) }
}

/** Cells of a row with their stamps: one in the long layout, a day of them in the wide one. */
type RowReader = (row: CsvRow, stamp: Stamp) => { stamp: Stamp; use: string; exported: string; column: number }[]

function rowReader(mapping: IntervalCsv, column: (place: string, name: string) => number): RowReader {
  const { use_column: use, wide_first_column: wide, export_column: exported } = mapping
  if ((use === undefined) === (wide === undefined)) {
    throw csvError(
      'use_column',
      'exactly one of use_column and wide_first_column is needed',
      'State the one that fits the layout.',
    )
  }
  const first = wide === undefined ? column('use_column', use ?? '') : column('wide_first_column', wide)
  const sent = exported === undefined ? -1 : column('export_column', exported)
  if (wide === undefined) {
    return (row, stamp) => [{ stamp, use: row.cells[first] ?? '', exported: row.cells[sent] ?? '', column: 0 }]
  }
  const step = mapping.interval_min
  const shift = mapping.stamps_mark === 'ending' ? step : 0
  return (row, day) =>
    Array.from({ length: 1440 / step }, (_, k) => ({
      stamp: { ...day, minute: k * step + shift, utcS: undefined },
      use: row.cells[first + k] ?? '',
      exported: '',
      column: k,
    }))
}

/**
 * Reads a table of meter readings by its declared mapping. Only stamps and values are kept.
 *
 * @param utcOffsetS Local standard time minus UTC, seconds.
 * @throws StageError with the line for a cell or stamp that does not fit.
 */
export function readIntervalCsv(
  text: string,
  mapping: IntervalCsv,
  utcOffsetS: number,
  overlaps?: OverlapPolicy,
): MeterSeries {
  const trouble = stampFormatTrouble(mapping.stamp_format)
  if (trouble !== undefined) {
    throw csvError('stamp_format', trouble, 'Write each part once, such as MM/DD/YYYY HH:mm, or iso, or unix_s.')
  }
  const { column, rows } = tableOf(mapping, text)
  const stampAt = mapping.stamp_columns.map((name) => column('stamp_columns', name))
  const readRow = rowReader(mapping, column)
  const readStamp = stampReader(mapping.stamp_format)
  const ending = mapping.stamps_mark === 'ending'
  const toUtc = clockReader(mapping.clock, utcOffsetS, ending)
  const readValue = valueReader(mapping.unit, mapping.interval_min)
  const estimatedAt = mapping.estimated_column === undefined ? -1 : column('estimated_column', mapping.estimated_column)
  const durationS = mapping.interval_min * 60
  const raw: MeterReading[] = []
  let estimated = 0
  let skipped = 0
  for (const row of rows) {
    const joined = stampAt.map((index) => row.cells[index] ?? '').join(' ')
    const stamp = readStamp(joined)
    if (stamp === undefined) {
      throw csvError(
        'stamp_format',
        `line ${String(row.line)}: '${joined}' does not fit '${mapping.stamp_format}'`,
        'Correct the pattern, or remove lines that are no readings.',
      )
    }
    if ((row.cells[estimatedAt] ?? '') !== '') estimated += 1
    for (const one of readRow(row, stamp)) {
      const wh = readValue(one.use, row.line)
      const utcS = toUtc(one.stamp)
      if (utcS === undefined) {
        if ((wh ?? 0) !== 0) {
          throw csvError(
            'clock',
            `line ${String(row.line)}: a reading stands in the hour that the spring clock change skips`,
            'The stamps are probably standard time all year: state clock: standard.',
          )
        }
        skipped += 1
        continue
      }
      if (wh === undefined) continue
      const exportWh = readValue(one.exported, row.line) ?? 0
      raw.push({ startS: ending ? utcS - durationS : utcS, durationS, importWh: wh, exportWh })
    }
  }
  return {
    ...orderReadings(raw, overlaps, `${WHERE}.file`),
    utcOffsetS,
    daylightSaving: undefined,
    where: WHERE,
    estimated,
    unstated: [],
    leftOut:
      skipped === 0
        ? []
        : [`${String(skipped)} empty readings in the skipped hour of the spring clock change were left out`],
  }
}
