import { MOST_READING_ROWS } from '../../project/facts.js'
import type { IntervalCsv } from '../../project/index.js'
import {
  openTable,
  stampFormatTrouble,
  stampReader,
  type Seconds,
  type Stamp,
  type TableProblem,
  type TableRow,
} from '../../values/index.js'
import { StageError } from '../../worksheet/index.js'
import { clockReader, minutesAfterMidnight } from './clock-reader.js'
import type { MeterReading, MeterSeries, OverlapPolicy } from './meter-series.js'
import { orderReadings } from './order-readings.js'

const WHERE = 'usage.interval_csv'

function csvError(place: string, message: string, fix: string): StageError {
  return new StageError(`${WHERE}.${place}`, message, fix)
}

/** Where a thing stands in the table: `hours.csv:4:18`. */
type Place = (row: TableRow, column: number) => string

/** A value in Wh; undefined for an empty cell. */
type ValueReader = (row: TableRow, column: number) => number | undefined

function valueReader({ unit, interval_min: intervalMin }: IntervalCsv, placeOf: Place): ValueReader {
  const perHour = intervalMin / 60
  const factor = { kwh: 1000, wh: 1, kw: 1000 * perHour, w: perHour }[unit]
  return (row, column) => {
    const cell = row.texts[column] ?? ''
    if (cell === '') return undefined
    const plain = /^[+-]?\d{1,3}(,\d{3})+(\.\d+)?$/.test(cell) ? cell.replaceAll(',', '') : cell
    if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain)) {
      throw csvError(
        'file',
        `${placeOf(row, column)}: '${cell}' is not a number`,
        'Correct the cell or leave it empty.',
      )
    }
    const wh = Number(plain) * factor
    if (wh >= 0) return wh
    throw csvError(
      'file',
      `${placeOf(row, column)}: the reading ${cell} is below zero`,
      'Use a table with delivered and received energy in two columns.',
    )
  }
}

/** Header row and the rows below it. */
function tableOf(
  mapping: IntervalCsv,
  text: string,
): { column: (place: string, name: string) => number; width: number; rows: Iterable<TableRow> } {
  const table = openTable(text, MOST_READING_ROWS, mapping.delimiter ?? ',', mapping.header_line)
  if (table === undefined) {
    throw csvError(
      'header_line',
      `line ${String(mapping.header_line)} of the table is empty`,
      'State the line that holds the column names.',
    )
  }
  const problems: TableProblem[] = table.problem === undefined ? [] : [table.problem]
  // They are not kept, as there may be a million: a first look finds the bad ones, before any cell is read.
  for (const _ of table.rows((problem) => problems.push(problem)));
  const [first, ...more] = problems
  if (first !== undefined) {
    const also = more.length === 0 ? '' : ` (and ${String(more.length)} more bad rows)`
    throw csvError(
      'file',
      `${mapping.file}:${String(first.line)}:${String(first.column)}: ${first.message}${also}`,
      'Correct the rows, or export the table again.',
    )
  }
  const column = (place: string, name: string): number => {
    const index = table.header.findIndex((cell) => cell.text === name)
    if (index >= 0) return index
    throw csvError(
      place,
      `there is no column '${name}' among the ${String(table.header.length)} of line ${String(mapping.header_line)}`,
      'Write a column name exactly as in the file.',
    )
  }
  return { column, width: table.header.length, rows: table.rows(() => undefined) }
}

/** Readings of a row with the columns of their cells: one in the long layout, a day of them in the wide one. */
type RowReader = (stamp: Stamp) => { stamp: Stamp; use: number; exported: number }[]

function rowReader(mapping: IntervalCsv, column: (place: string, name: string) => number, width: number): RowReader {
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
  if (wide === undefined) return (stamp) => [{ stamp, use: first, exported: sent }]
  const step = mapping.interval_min
  if (first + 1440 / step > width) {
    throw csvError(
      'wide_first_column',
      `a day of ${String(step)}-minute intervals has ${String(1440 / step)} columns; from '${wide}' on there are ${String(width - first)}`,
      'Name the column of the first interval after midnight, or correct interval_min.',
    )
  }
  const shift = mapping.stamps_mark === 'ending' ? step : 0
  return (day) =>
    Array.from({ length: 1440 / step }, (_, k) => ({
      stamp: minutesAfterMidnight(day, k * step + shift),
      use: first + k,
      exported: -1,
    }))
}

/**
 * Reads a table of meter readings by its declared mapping. Only stamps and values are kept.
 *
 * @param utcOffsetS Local standard time minus UTC, seconds.
 * @throws StageError with file, line and column for a row, a cell or stamp that does not fit.
 */
export function readIntervalCsv(
  text: string,
  mapping: IntervalCsv,
  utcOffsetS: Seconds,
  overlaps?: OverlapPolicy,
): MeterSeries {
  const trouble = stampFormatTrouble(mapping.stamp_format)
  if (trouble !== undefined) {
    throw csvError('stamp_format', trouble, 'Write each part once, such as MM/DD/YYYY HH:mm, or iso, or unix_s.')
  }
  const { column, width, rows } = tableOf(mapping, text)
  const stampAt = mapping.stamp_columns.map((name) => column('stamp_columns', name))
  const readRow = rowReader(mapping, column, width)
  const readStamp = stampReader(mapping.stamp_format)
  const ending = mapping.stamps_mark === 'ending'
  const toUtc = clockReader(mapping.clock, utcOffsetS, ending)
  const placeOf: Place = (row, at) =>
    `${mapping.file}:${String(row.cell(at)?.line ?? row.line)}:${String(row.cell(at)?.column ?? 1)}`
  const readValue = valueReader(mapping, placeOf)
  const estimatedAt = mapping.estimated_column === undefined ? -1 : column('estimated_column', mapping.estimated_column)
  const durationS = mapping.interval_min * 60
  const raw: MeterReading[] = []
  let estimated = 0
  let skipped = 0
  for (const row of rows) {
    const joined = stampAt.map((index) => row.texts[index] ?? '').join(' ')
    const stamp = readStamp(joined)
    if (stamp === undefined) throw strangeStamp(placeOf(row, stampAt[0] ?? 0), joined, mapping.stamp_format)
    if ((row.texts[estimatedAt] ?? '') !== '') estimated += 1
    for (const one of readRow(stamp)) {
      const wh = readValue(row, one.use)
      const utcS = toUtc(one.stamp)
      if (utcS === undefined) {
        if ((wh ?? 0) !== 0) throw skippedHour(placeOf(row, one.use))
        skipped += 1
        continue
      }
      if (wh === undefined) continue
      const exportWh = readValue(row, one.exported) ?? 0
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

function strangeStamp(place: string, written: string, format: string): StageError {
  return csvError(
    'stamp_format',
    `${place}: '${written}' does not fit '${format}'`,
    'Correct the pattern, or remove lines that are no readings.',
  )
}

function skippedHour(place: string): StageError {
  return csvError(
    'clock',
    `${place}: a reading stands in the hour that the spring clock change skips`,
    'The stamps are probably standard time all year: state clock: standard.',
  )
}
