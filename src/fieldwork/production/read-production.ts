import type { Problem, Production } from '../../project/index.js'
import type { Finding } from '../../worksheet/index.js'
import { csvTable, type CsvCell } from './csv-table.js'
import { findColumns } from './find-columns.js'
import { makeSpans } from './make-spans.js'
import { parseNumber } from './parse-number.js'
import type { ProductionSeries, TakenSetting } from './production-series.js'
import { readStamps, standardBeginnings, type Complain } from './read-stamps.js'

/** What the reader must know about the system to tell a slip of the unit from a fine day. */
export interface ProductionLimits {
  readonly moduleIds: readonly string[]
  readonly utcOffsetH: number
  /** Most energy that the system can give between two times (standard time, ms as if UTC), kWh. */
  readonly mostKwh: (startMs: number, endMs: number) => number
}

/** Row values before they become stretches of time. */
export interface RawRow {
  readonly beginMs: number
  readonly value: number | undefined
  readonly cell: CsvCell
  readonly moduleValues: readonly (number | undefined)[]
}

/** The series, or every problem of the file. */
export type ReadProduction =
  | { readonly series: ProductionSeries; readonly problems?: undefined }
  | { readonly series?: undefined; readonly problems: readonly Problem[] }

/** More bad cells than this are not listed one by one. */
const MOST_PROBLEMS = 50

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
  const table = csvTable(text, mapping.delimiter, mapping.header_line)
  if (table === undefined) {
    complain(undefined, 'no line with column names is found; the file must be a table with a header, such as date,kWh')
    return failed()
  }
  const columns = findColumns(table.header, mapping, limits.moduleIds)
  if (Array.isArray(columns)) {
    for (const trouble of columns) complain(trouble.cell, trouble.message)
    return failed()
  }
  const { time, value, modules, unit, namedCumulative } = columns
  const unitCell = table.header[value ?? modules[0]?.column ?? 0]
  if (unit === undefined) {
    complain(unitCell, `the unit of '${unitCell?.text ?? ''}' is unknown; declare unit as kwh, wh, kw or w`)
    return failed()
  }
  if (table.rows.length === 0) {
    complain(table.header[0], 'the table has no rows')
    return failed()
  }
  const taken: TakenSetting[] = []
  const stamped = readStamps(table.rows, time, mapping, complain)
  if (stamped === undefined) return failed()
  const { clock, beginMs } = standardBeginnings(stamped, mapping, limits.utcOffsetH, taken)
  const rows = stamped.rows.flatMap((row, at): RawRow[] => {
    const numberAt = (column: number): number | undefined => {
      const cell = row.cells[column]
      if (cell === undefined) {
        complain(
          row.stamp,
          `the row has ${row.cells.length} cells; column ${column + 1} ('${table.header[column]?.text ?? ''}') is missing`,
        )
        return undefined
      }
      const parsed = parseNumber(cell.text, table.delimiter)
      if (parsed === undefined || Number.isFinite(parsed)) return parsed
      complain(cell, `'${cell.text}' is no number; leave the cell empty when there is no reading`)
      return undefined
    }
    const moduleValues = modules.map((module) => numberAt(module.column))
    const total = value === undefined ? sumOf(moduleValues) : numberAt(value)
    const begin = beginMs[at]
    if (begin === undefined) {
      complain(
        row.stamp,
        `'${row.stamp.text}' does not exist on a clock with daylight saving time; declare clock as standard or utc`,
      )
      return []
    }
    const cell = row.cells[value ?? modules[0]?.column ?? 0] ?? row.stamp
    return [{ beginMs: begin, value: total, cell, moduleValues }]
  })
  if (problems.length > 0) return failed()
  const findings: Finding[] = []
  const spans = makeSpans({
    file,
    rows,
    unit,
    mapping,
    namedCumulative,
    resolution: stamped.resolution,
    namedMonths: stamped.namedMonths,
    stepMs: stamped.stepMs,
    limits,
    complain,
    findings,
    taken,
  })
  if (problems.length > 0 || spans === undefined) return failed()
  return {
    series: {
      resolution: stamped.resolution,
      stepMin: stamped.resolution === 'interval' ? stamped.stepMs / 60_000 : undefined,
      unit,
      meter: spans.meter,
      clock,
      spans: spans.spans,
      moduleIds: modules.map((module) => module.id),
      findings,
      taken,
    },
  }
}

function sumOf(values: readonly (number | undefined)[]): number | undefined {
  return values.some((value) => value === undefined)
    ? undefined
    : values.reduce((sum: number, value) => sum + (value ?? 0), 0)
}

function placeOf(cell: CsvCell): { line: number; column: number; length: number } {
  return { line: cell.line, column: cell.column, length: Math.max(1, cell.text.length) }
}

function shorten(file: string, problems: readonly Problem[]): readonly Problem[] {
  if (problems.length <= MOST_PROBLEMS) return problems
  const rest = problems.length - MOST_PROBLEMS
  return [...problems.slice(0, MOST_PROBLEMS), { file, path: '', message: `${rest} more cells are bad` }]
}
