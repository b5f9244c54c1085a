import { MOST_READING_ROWS } from '../../project/facts.js'
import type { Problem, Production } from '../../project/index.js'
import {
  MOST_HEAD_LINES,
  MS_PER_MINUTE,
  openTable,
  type Milliseconds,
  type TableCell,
  type TableProblem,
} from '../../values/index.js'
import type { Finding } from '../../worksheet/index.js'
import { findColumns, mainColumn, type EnergyUnit, type ProductionColumns } from './find-columns.js'
import { makeSpans } from './make-spans.js'
import type { Complain, ProductionLimits } from './production-limits.js'
import type { ProductionSeries, TakenSetting } from './production-series.js'
import type { FindCells } from './readings.js'
import { lookThrough, scanRows, type ReadingTable } from './scan-rows.js'
import { standardBeginnings } from './standard-times.js'
import { stampSteps } from './stamp-steps.js'

/** The series, or every problem of the file. */
export type ReadProduction =
  | { readonly series: ProductionSeries; readonly problems?: undefined }
  | { readonly series?: undefined; readonly problems: readonly Problem[] }

/** More bad cells than this are not listed one by one. */
const MOST_PROBLEMS = 50
/** Nor more than this kept to be put in order. */
const MOST_KEPT = 10_000
const DELIMITER_NAMES: Readonly<Record<string, string>> = { ';': 'semicolon', '\t': 'tab', '|': 'vertical bar' }

/**
 * Reads measured production from a table.
 *
 * @param file Name of the file for messages.
 * @param text The whole file.
 * @param mapping What the person declared; the rest is found from the header and the rows, and reported as taken.
 * @param isQuick Rows of the commonest form are read without a text for each cell; without it the result is the same.
 */
export function readProduction(
  file: string,
  text: string,
  mapping: Production,
  limits: ProductionLimits,
  isQuick = true,
): ReadProduction {
  const problems: Problem[] = []
  let more = 0
  const complain: Complain = (cell, message) => {
    if (problems.length >= MOST_KEPT) more += 1
    else problems.push({ file, path: '', message, ...(cell === undefined ? { line: 1, column: 1 } : placeOf(cell)) })
  }
  const failed = (): ReadProduction => ({ problems: shorten(file, problems, more) })
  const table = openTable(text, MOST_READING_ROWS, mapping.delimiter, mapping.header_line)
  if (table === undefined) {
    complain(
      undefined,
      `no line with column names is found among the first ${MOST_HEAD_LINES}; the file must be a table with a header, such as date,kWh`,
    )
    return failed()
  }
  const tellRow = ({ message, ...place }: TableProblem): void => complain({ text: '', ...place }, message)
  if (table.problem !== undefined) tellRow(table.problem)
  const columns = columnsWithUnit(table.header, mapping, limits.moduleIds, complain)
  if (columns === undefined) {
    for (const _ of table.rows(tellRow));
    return failed()
  }
  const source: ReadingTable = { table, columns, isQuick }
  const look = lookThrough(source, mostRows(text, table.header.length), mapping.date_order, tellRow)
  if (look.readings.length === 0) {
    if (problems.length === 0) complain(table.header[0], 'the table has no rows')
    return failed()
  }
  const taken = delimiterTaken(table.delimiter, mapping)
  const { order } = look
  if (order === 'both' || order === 'unknown') {
    complain(firstStamp(source), orderTrouble(order, look.inDoubt))
    return failed()
  }
  const { readings, kinds, find, tellNumbers } = scanRows(source, look.readings, order, complain)
  const steps = readings.length === 0 ? undefined : stampSteps(readings, kinds, find, complain)
  if (steps === undefined) return failed()
  const { clock, beginMs } = standardBeginnings(readings, steps, mapping, limits.utcOffsetH, taken)
  tellNumbers(complain)
  tellSkipped(beginMs, readings.line, find, complain)
  if (problems.length > 0) return failed()
  const findings: Finding[] = []
  const resets: Milliseconds[] = []
  const { resolution, namedMonths, stepMs } = steps
  const { unit, namedCumulative, modules } = columns
  const { length, value, modules: moduleValues, line } = readings
  const spans = makeSpans({
    file,
    rows: { length, beginMs, value, modules: moduleValues, line },
    find,
    unit,
    mapping,
    namedCumulative,
    resolution,
    namedMonths,
    stepMs,
    limits,
    complain,
    findings,
    taken,
    resets,
  })
  if (problems.length > 0 || spans === undefined) return failed()
  return {
    series: {
      resolution,
      stepMin: resolution === 'interval' ? stepMs / MS_PER_MINUTE : undefined,
      unit,
      meter: spans.meter,
      clock,
      spans: spans.spans,
      moduleIds: modules.map((module) => module.id),
      ...(columns.partsAre === 'meters' ? { partsAre: columns.partsAre } : {}),
      findings,
      taken,
      resets,
    },
  }
}

/** More rows than lines there are not, nor than have room with a character for each column; room is made for all at once. */
function mostRows(text: string, columns: number): number {
  let count = 1
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) count += 1
  return Math.min(count, MOST_READING_ROWS, Math.ceil(text.length / columns))
}

function firstStamp({ table, columns }: ReadingTable): TableCell | undefined {
  for (const row of table.rows(() => undefined)) return row.cell(columns.time[0] ?? 0)
  return undefined
}

function orderTrouble(order: 'both' | 'unknown', inDoubt = ''): string {
  return order === 'both'
    ? 'dates of this file can be read neither as month/day nor as day/month throughout'
    : `'${inDoubt}' may be month/day or day/month; declare date_order`
}

/** Times that a clock with daylight saving time never shows. */
function tellSkipped(beginMs: Float64Array, line: Int32Array, find: FindCells, complain: Complain): void {
  const skipped: number[] = []
  beginMs.forEach((ms, at) => {
    if (Number.isNaN(ms)) skipped.push(line[at]!)
  })
  for (const cell of find.stamp(skipped).values()) {
    complain(
      cell,
      `'${cell.text}' does not exist on a clock with daylight saving time; declare clock as standard or utc`,
    )
  }
}

type ColumnsWithUnit = ProductionColumns & { readonly unit: EnergyUnit }

/** Which columns hold what, in which unit; undefined with a complaint when that cannot be told. */
function columnsWithUnit(
  header: readonly TableCell[],
  mapping: Production,
  moduleIds: readonly string[],
  complain: Complain,
): ColumnsWithUnit | undefined {
  const columns = findColumns(header, mapping, moduleIds)
  if (Array.isArray(columns)) {
    for (const trouble of columns) complain(trouble.cell, trouble.message)
    return undefined
  }
  const { unit } = columns
  if (unit !== undefined) return { ...columns, unit }
  const cell = header[mainColumn(columns)]
  complain(cell, `the unit of '${cell?.text ?? ''}' is unknown; declare unit as kwh, wh, kw or w`)
  return undefined
}

/** A delimiter other than the comma, when nobody declared it. */
function delimiterTaken(delimiter: string, mapping: Production): TakenSetting[] {
  if (mapping.delimiter !== undefined || delimiter === ',') return []
  const value = DELIMITER_NAMES[delimiter] ?? delimiter
  return [{ path: 'production.delimiter', value, why: 'it parts the names of the columns most often' }]
}

function placeOf(cell: TableCell): { line: number; column: number; length: number } {
  return { line: cell.line, column: cell.column, length: Math.max(1, cell.text.length) }
}

function shorten(file: string, problems: readonly Problem[], more: number): readonly Problem[] {
  const sorted = problems.toSorted((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0))
  if (sorted.length <= MOST_PROBLEMS) return sorted
  const rest = sorted.length - MOST_PROBLEMS + more
  return [...sorted.slice(0, MOST_PROBLEMS), { file, path: '', message: `${rest} more cells are bad` }]
}
