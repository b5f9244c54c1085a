import type { Problem, Production } from '../../project/index.js'
import { MS_PER_MINUTE, readTable, type TableCell } from '../../values/index.js'
import type { Finding } from '../../worksheet/index.js'
import { findColumns } from './find-columns.js'
import { makeSpans } from './make-spans.js'
import { parseNumber } from './parse-number.js'
import type { ProductionSeries, TakenSetting } from './production-series.js'
import type { ProductionLimits, RawRow } from './raw-row.js'
import { readStamps, standardBeginnings, type Complain } from './read-stamps.js'

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
    if (problems.length === 0) complain(table.header[0], 'the table has no rows')
    return failed()
  }
  const taken: TakenSetting[] = []
  if (mapping.delimiter === undefined && table.delimiter !== ',') {
    const value = DELIMITER_NAMES[table.delimiter] ?? table.delimiter
    taken.push({ path: 'production.delimiter', value, why: 'it parts the names of the columns most often' })
  }
  const stamped = readStamps(table.rows, time, mapping, complain)
  if (stamped === undefined) return failed()
  const { clock, beginMs } = standardBeginnings(stamped, mapping, limits.utcOffsetH, taken)
  const rows = stamped.rows.flatMap((row, at): RawRow[] => {
    const numberAt = (column: number): number | undefined => {
      const written = row.row.texts[column] ?? ''
      const parsed = parseNumber(written, table.delimiter)
      if (parsed === undefined || Number.isFinite(parsed)) return parsed
      complain(row.row.cell(column), `'${written}' is no number; leave the cell empty when there is no reading`)
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
    const cell = row.row.cell(value ?? modules[0]?.column ?? 0) ?? row.stamp
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
      stepMin: stamped.resolution === 'interval' ? stamped.stepMs / MS_PER_MINUTE : undefined,
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

function placeOf(cell: TableCell): { line: number; column: number; length: number } {
  return { line: cell.line, column: cell.column, length: Math.max(1, cell.text.length) }
}

function shorten(file: string, problems: readonly Problem[]): readonly Problem[] {
  const sorted = problems.toSorted((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0))
  if (sorted.length <= MOST_PROBLEMS) return sorted
  const rest = sorted.length - MOST_PROBLEMS
  return [...sorted.slice(0, MOST_PROBLEMS), { file, path: '', message: `${rest} more cells are bad` }]
}
