import { MOST_WEATHER_ROWS, readTable, type Stamp, type Table, type TableRow } from '../../values/index.js'
import { QUANTITIES, type Quantity, type SeriesRows } from './series-file.js'
import { SERIES_PATH, seriesError } from './series-error.js'
import { StageError } from '../../worksheet/index.js'
import { UNITS, type UnitName } from './units.js'

/** Where a quantity stands in a table, and in which unit. */
export interface ColumnRule {
  /** Column, counted from 0. */
  readonly at: number
  readonly unit: UnitName
}

/** How the rows of a table are to be read. */
export interface RowRules {
  readonly columns: ReadonlyMap<Quantity, ColumnRule>
  /** Stamp of a row, ms of local standard time as if UTC, or what is wrong with it. */
  readonly stampMs: (row: TableRow) => number | { readonly problem: string; readonly at: number }
  readonly isMissing: (text: string) => boolean
  readonly decimalComma: boolean
}

/** Values that are believed to be measured at all: beyond them the unit or the column is wrong. */
const BELIEVED: Readonly<Record<Quantity, readonly [low: number, high: number, unit: string]>> = {
  ghi: [-500, 10_000, 'W/m2'],
  dni: [-500, 10_000, 'W/m2'],
  dhi: [-500, 10_000, 'W/m2'],
  plane: [-500, 10_000, 'W/m2'],
  dryBulb: [-70, 70, 'deg C'],
  wind: [0, 100, 'm/s'],
  snowDepth: [0, 1000, 'cm'],
}

/** @throws StageError with the line of the first row that is badly written. */
export function openTable(text: string, delimiter: string | undefined, headerLine: number): Table {
  const table = readTable(text, MOST_WEATHER_ROWS, delimiter, headerLine)
  if (table === undefined)
    throw seriesError(headerLine, undefined, 'no column names stand here', 'check the kind of the file and its header')
  const [problem] = table.problems
  if (problem !== undefined)
    throw seriesError(problem.line, problem.column, problem.message, 'correct the row, or export the file again')
  if (table.rows.length === 0)
    throw new StageError(SERIES_PATH, 'weather file: there are no rows below the column names', 'export the file again')
  return table
}

/**
 * Reads the rows of a table.
 *
 * @throws StageError with line and column when a stamp or a number cannot be read or cannot be.
 */
export function readSeriesRows(table: Table, rules: RowRules): SeriesRows {
  const { rows } = table
  const { length } = rows
  const line = new Uint32Array(length)
  const stampMs = new Float64Array(length)
  const columns = new Map([...rules.columns.keys()].map((name) => [name, new Float64Array(length)] as const))
  for (let index = 0; index < length; index++) {
    const row = rows[index]!
    line[index] = row.line
    const stamp = rules.stampMs(row)
    if (typeof stamp !== 'number') {
      const { line: at, column } = row.cell(stamp.at) ?? { line: row.line, column: undefined }
      throw seriesError(at, column, stamp.problem, 'correct the stamp, or how the file is said to be written')
    }
    stampMs[index] = stamp
    for (const [name, values] of columns) values[index] = numberOf(row, name, rules)
  }
  const energies = QUANTITIES.filter((name) => UNITS[rules.columns.get(name)?.unit ?? 'c'].isEnergy)
  return { length, line, stampMs, columns, energies: new Set(energies) }
}

function numberOf(row: TableRow, name: Quantity, { columns, isMissing, decimalComma }: RowRules): number {
  const rule = columns.get(name) as ColumnRule
  const text = row.texts[rule.at] ?? ''
  if (text === '' || isMissing(text)) return Number.NaN
  const { factor, offset } = UNITS[rule.unit]
  const plain = decimalComma ? text.replace(',', '.') : text
  const value = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/u.test(plain)
    ? Number(plain) * factor + offset
    : Number.NaN
  const [low, high, unit] = BELIEVED[name]
  if (value >= low && value <= high) return value
  const { line, column } = row.cell(rule.at) ?? { line: row.line, column: undefined }
  const heading = `'${text.slice(0, 20)}'`
  throw Number.isNaN(value)
    ? seriesError(line, column, `${heading} is no number`, 'a text that means missing is named in table.missing')
    : seriesError(
        line,
        column,
        Number.isFinite(value)
          ? `${heading} is ${Number(value.toPrecision(6))} ${unit}, outside ${low} to ${high}`
          : `${heading} is too large a number, outside ${low} to ${high} ${unit}`,
        'check the unit of the column; a number that means missing is named in table.missing',
      )
}

/** Stamp in local standard time, ms, from a stamp that may carry a zone of its own. */
export function standardOf(stamp: Stamp, utcOffsetH: number, msPerHour: number): number {
  return stamp.clockMs + (utcOffsetH - (stamp.offsetH ?? utcOffsetH)) * msPerHour
}
