import type { Problem, Production } from '../../project/index.js'
import { MS_PER_MINUTE, readTable, type Milliseconds, type TableCell } from '../../values/index.js'
import type { Finding } from '../../worksheet/index.js'
import { findColumns, type EnergyUnit, type ProductionColumns } from './find-columns.js'
import { makeSpans } from './make-spans.js'
import { parseNumber } from './parse-number.js'
import type { ProductionSeries, TakenSetting } from './production-series.js'
import type { ProductionLimits, RawRow } from './raw-row.js'
import { readStamps, standardBeginnings, type Complain, type StampedRow } from './read-stamps.js'

/** The series, or every problem of the file. */
export type ReadProduction =
  | { readonly series: ProductionSeries; readonly problems?: undefined }
  | { readonly series?: undefined; readonly problems: readonly Problem[] }

/** More bad cells than this are not listed one by one. */
const MOST_PROBLEMS = 50
const DELIMITER_NAMES: Readonly<Record<string, string>> = { ';': 'semicolon', '\t': 'tab', '|': 'vertical bar' }

/**
 * Reads measured production from a table.
 *
 * @param file Name of the file for messages.
 * @param text The whole file.
 * @param mapping What the person declared; the rest is found from the header and the rows, and reported as taken.
 */
export function readProduction(
  file: string,
  text: string,
  mapping: Production,
  limits: ProductionLimits,
): ReadProduction {
  const problems: Problem[] = []
  const complain: Complain = (cell, message) => {
    problems.push({ file, path: '', message, ...(cell === undefined ? { line: 1, column: 1 } : placeOf(cell)) })
  }
  const failed = (): ReadProduction => ({ problems: shorten(file, problems) })
  const table = readTable(text, mapping.delimiter, mapping.header_line)
  if (table === undefined) {
    complain(undefined, 'no line with column names is found; the file must be a table with a header, such as date,kWh')
    return failed()
  }
  for (const { message, ...place } of table.problems) complain({ text: '', ...place }, message)
  const columns = columnsWithUnit(table.header, mapping, limits.moduleIds, complain)
  if (columns === undefined) return failed()
  if (table.rows.length === 0) {
    if (problems.length === 0) complain(table.header[0], 'the table has no rows')
    return failed()
  }
  const taken = delimiterTaken(table.delimiter, mapping)
  const stamped = readStamps(table.rows, columns.time, mapping, complain)
  if (stamped === undefined) return failed()
  const { clock, beginMs } = standardBeginnings(stamped, mapping, limits.utcOffsetH, taken)
  const rows = stamped.rows.flatMap((row, at) => rawRow(row, beginMs[at], columns, table.delimiter, complain))
  if (problems.length > 0) return failed()
  const findings: Finding[] = []
  const resets: Milliseconds[] = []
  const { resolution, namedMonths, stepMs } = stamped
  const { unit, namedCumulative, modules } = columns
  const spans = makeSpans({
    file,
    rows,
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
      findings,
      taken,
      resets,
    },
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

/** Column that stands for the system in messages. */
function mainColumn({ value, modules }: ProductionColumns): number {
  return value ?? modules[0]?.column ?? 0
}

/** A delimiter other than the comma, when nobody declared it. */
function delimiterTaken(delimiter: string, mapping: Production): TakenSetting[] {
  if (mapping.delimiter !== undefined || delimiter === ',') return []
  const value = DELIMITER_NAMES[delimiter] ?? delimiter
  return [{ path: 'production.delimiter', value, why: 'it parts the names of the columns most often' }]
}

/** The values of a row; none, with a complaint, when its time does not exist. */
function rawRow(
  { row, stamp }: StampedRow,
  beginMs: Milliseconds | undefined,
  columns: ProductionColumns,
  delimiter: string,
  complain: Complain,
): RawRow[] {
  const numberAt = (column: number): number | undefined => {
    const written = row.texts[column] ?? ''
    const parsed = parseNumber(written, delimiter)
    if (parsed === undefined || Number.isFinite(parsed)) return parsed
    complain(row.cell(column), `'${written}' is no number; leave the cell empty when there is no reading`)
    return undefined
  }
  const moduleValues = columns.modules.map((module) => numberAt(module.column))
  const value = columns.value === undefined ? sumOf(moduleValues) : numberAt(columns.value)
  if (beginMs === undefined) {
    complain(
      stamp,
      `'${stamp.text}' does not exist on a clock with daylight saving time; declare clock as standard or utc`,
    )
    return []
  }
  return [{ beginMs, value, cell: row.cell(mainColumn(columns)) ?? stamp, moduleValues }]
}

function sumOf(values: readonly (number | undefined)[]): number | undefined {
  return values.some((value) => value === undefined)
    ? undefined
    : values.reduce((sum: number, value) => sum + (value ?? 0), 0)
}

function placeOf(cell: TableCell): { line: number; column: number; length: number } {
  return { line: cell.line, column: cell.column, length: Math.max(1, cell.text.length) }
}

function shorten(file: string, problems: readonly Problem[]): readonly Problem[] {
  const sorted = problems.toSorted((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0))
  if (sorted.length <= MOST_PROBLEMS) return sorted
  const rest = sorted.length - MOST_PROBLEMS
  return [...sorted.slice(0, MOST_PROBLEMS), { file, path: '', message: `${rest} more cells are bad` }]
}
