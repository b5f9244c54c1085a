import {
  needsOrder,
  orderOf,
  parseStamp,
  type DateOrder,
  type OpenTable,
  type Stamp,
  type TableCell,
  type TableProblem,
  type TableRow,
} from '../../values/index.js'
import { mainColumn, type ProductionColumns } from './find-columns.js'
import { parseNumber } from './parse-number.js'
import type { Complain } from './production-limits.js'
import { QuickRow } from './quick-row.js'
import { ReadingColumns, type FindCells, type Readings } from './readings.js'

/** As many as are kept of all that is wrong. */
const MOST_BAD_NUMBERS = 10_000

/** A table of readings: how its rows are come by, and what its columns are. */
export interface ReadingTable {
  readonly table: OpenTable
  readonly columns: ProductionColumns
  /** Whether rows of the commonest form go the quick way; without it all go the same way, to the same results. */
  readonly isQuick: boolean
}

/** What a first look at all rows tells. */
export interface FirstLook {
  /** Rows of the commonest form, with room for the others. */
  readonly readings: ReadingColumns
  readonly order: DateOrder | 'both' | 'unknown'
  /** The first stamp whose order matters. */
  readonly inDoubt: string | undefined
}

/**
 * Reads the rows of the commonest form, and looks at the stamps of the others, as their dates can be read only when all are seen.
 *
 * @param most Rows that the table may have.
 */
export function lookThrough(
  { table, columns, isQuick }: ReadingTable,
  most: number,
  declared: DateOrder | undefined,
  bad: (problem: TableProblem) => void,
): FirstLook {
  const wanted = [columns.value, ...columns.modules.map((module) => module.column)]
  const quick = new QuickRow(table.delimiter, table.header.length, columns.time, wanted)
  const readings = new ReadingColumns(most, columns.modules.length)
  const isSummed = columns.value === undefined
  const takes = (text: string, line: number): boolean => {
    if (!quick.read(text)) return false
    if (isSummed) quick.numbers[0] = sumOf(quick.numbers)
    readings.push(quick.clockMs, quick.numbers, line)
    return true
  }
  let inDoubt: string | undefined
  const said = new Set<DateOrder>()
  for (const row of table.rows(bad, isQuick ? takes : undefined)) {
    readings.leave(row.line)
    if (declared !== undefined) continue
    const text = stampText(row, columns)
    if (!needsOrder(text)) continue
    inDoubt ??= text
    const order = orderOf(text)
    if (order !== undefined) said.add(order)
  }
  const found = said.size === 2 ? 'both' : ([...said][0] ?? 'unknown')
  return { readings, order: declared ?? (inDoubt === undefined ? 'month_first' : found), inDoubt }
}

/** All rows as columns of numbers, with what is wrong with their cells. */
export interface ScannedRows {
  readonly readings: Readings
  readonly kinds: ReadonlySet<Stamp['kind']>
  readonly find: FindCells
  /** Tells the cells that are no numbers. */
  readonly tellNumbers: (complain: Complain) => void
}

/**
 * Reads the rows that a first look has left.
 *
 * @param complain Takes what is wrong with stamps; what is wrong with numbers matters only when the stamps can be read.
 */
export function scanRows(
  { table, columns }: ReadingTable,
  readings: ReadingColumns,
  order: DateOrder,
  complain: Complain,
): ScannedRows {
  const kinds = new Set<Stamp['kind']>()
  if (readings.left.length < readings.length) kinds.add('time')
  const numbers = new Float64Array(columns.modules.length + 1)
  let moreBad = 0
  const badNumbers: { readonly cell: TableCell | undefined; readonly message: string }[] = []
  const rowLines = new Map<number, number>()
  const numberOf = (row: TableRow, column: number): number => {
    const written = row.texts[column] ?? ''
    const parsed = parseNumber(written, table.delimiter)
    if (parsed === undefined) return Number.NaN
    if (Number.isFinite(parsed)) return parsed
    const message = `'${written}' is no number; leave the cell empty when there is no reading`
    if (badNumbers.length < MOST_BAD_NUMBERS) badNumbers.push({ cell: row.cell(column), message })
    else moreBad += 1
    return Number.NaN
  }
  for (const { row, at } of rowsLeft(table, readings)) {
    const text = stampText(row, columns)
    const cell = row.cell(columns.time[0] ?? 0)
    const stamp = parseStamp(text, order)
    if (cell === undefined || stamp === undefined) {
      complain(cell, `'${text}' is no date or time that exists; write 2026-07-31, 2026-07-31 14:00 or 2026-07`)
      continue
    }
    kinds.add(stamp.kind)
    columns.modules.forEach((module, index) => {
      numbers[index + 1] = numberOf(row, module.column)
    })
    numbers[0] = columns.value === undefined ? sumOf(numbers) : numberOf(row, columns.value)
    const line = (row.cell(mainColumn(columns)) ?? cell).line
    if (line !== row.line) rowLines.set(line, row.line)
    readings.set(at, stamp.clockMs, numbers, line)
    if (stamp.offsetH !== undefined) readings.setOffset(at, stamp.offsetH)
  }
  readings.dropUnset()
  const tellNumbers = (tell: Complain): void => {
    for (const { cell, message } of badNumbers) tell(cell, message)
    // Those beyond are counted by whoever is told.
    const last = badNumbers.at(-1)
    for (let left = last === undefined ? 0 : moreBad; left > 0; left -= 1) tell(last?.cell, last?.message ?? '')
  }
  return { readings, kinds, find: findCells({ table, columns }, rowLines), tellNumbers }
}

/** Rows that a first look has left, with their places among the readings. */
function* rowsLeft(table: OpenTable, { left, line }: ReadingColumns): Generator<{ row: TableRow; at: number }> {
  let next = 0
  const passesOver = (_: string, own: number): boolean => next >= left.length || own !== line[left[next]!]
  if (left.length === 0) return
  for (const row of table.rows(() => undefined, passesOver)) {
    yield { row, at: left[next]! }
    next += 1
    if (next === left.length) return
  }
}

/** Rows are not kept, as there may be a million; those of which something is said are read again. */
function findCells(
  { table, columns }: Pick<ReadingTable, 'table' | 'columns'>,
  rowLines: ReadonlyMap<number, number>,
): FindCells {
  const cellsIn = (lines: readonly number[], column: number): ReadonlyMap<number, TableCell> => {
    const wanted = new Map(lines.map((line) => [rowLines.get(line) ?? line, line]))
    const found = new Map<number, TableCell>()
    if (wanted.size === 0) return found
    const passesOver = (_: string, line: number): boolean => !wanted.has(line)
    for (const row of table.rows(() => undefined, passesOver)) {
      const line = wanted.get(row.line)
      if (line === undefined) continue
      const cell = row.cell(column) ?? row.cell(columns.time[0] ?? 0)
      if (cell !== undefined) found.set(line, cell)
      if (found.size === wanted.size) break
    }
    return found
  }
  return {
    reading: (lines) => cellsIn(lines, mainColumn(columns)),
    stamp: (lines) => cellsIn(lines, columns.time[0] ?? 0),
  }
}

function stampText(row: TableRow, { time }: ProductionColumns): string {
  return time
    .map((at) => row.texts[at] ?? '')
    .join(' ')
    .trim()
}

/** Sum of the modules, which stand after the first entry; NaN where one is missing. */
function sumOf(numbers: Float64Array): number {
  let sum = 0
  for (let at = 1; at < numbers.length; at += 1) sum += numbers[at]!
  return sum
}
