import { pathTrouble } from '../project/index.js'
import { readRows, type TableCell as ReadCell, type TableRow as ReadRow } from '../values/index.js'
import { FleetError } from './fleet-error.js'
import { readText } from './read-text.js'
import type { FleetJob, FleetProblem, TableCell } from './types.js'

/** Heading of the column that names the projects; every other heading is a path into the project file. */
const NAME_COLUMN = 'id'
const NAME = /^[A-Za-z0-9][A-Za-z0-9._-]{0,99}$/u

/**
 * The projects that a template and a table give, one a row, while the table is read.
 *
 * @param template Path of the project file whose values the rows change.
 * @param table Path of the CSV file.
 * @param overrides `path=value` for every row; they win over the row.
 * @throws FleetError when the table cannot be read or its headings cannot be used.
 */
export function* tableJobs(template: string, table: string, overrides: readonly string[]): Generator<FleetJob> {
  const records = readRows(readText(table))
  const first = records.next()
  if (first.done === true) throw new FleetError(`${table}: the table is empty; its first line holds the headings`, 2)
  const headings = readHeadings(table, first.value)
  const used = new Map<string, number>()
  let index = 0
  for (const record of records) {
    yield rowJob({ template, table, overrides, headings, used, index }, record)
    index += 1
  }
}

interface RowContext {
  readonly template: string
  readonly table: string
  readonly overrides: readonly string[]
  readonly headings: readonly string[]
  /** Line of every name so far. */
  readonly used: Map<string, number>
  readonly index: number
}

function readHeadings(table: string, record: ReadRow): string[] {
  const at = ({ line, column }: { line: number; column: number }): string => `${table}:${line}:${column}`
  if (record.problem !== undefined) throw new FleetError(`${at(record.problem)}: ${record.problem.message}`, 2)
  const headings = record.texts.map((text) => text.trim())
  const troubles = record.cells().flatMap((field, i) => {
    const trouble = headingTrouble(headings, i)
    return trouble === undefined ? [] : [`${at(field)}: ${trouble}`]
  })
  // Once for the table, and not again for every row.
  const [first, ...more] = troubles
  if (first !== undefined) throw new FleetError(first, 2, undefined, more)
  return headings
}

function headingTrouble(headings: readonly string[], index: number): string | undefined {
  const heading = headings[index] ?? ''
  if (heading === '') return `a column without a heading; write the path that it fills, or '${NAME_COLUMN}'`
  if (heading.includes('=')) return "a heading is a path into the project, without '='"
  if (headings.indexOf(heading) < index) return `two columns are headed '${heading}'`
  const trouble = heading === NAME_COLUMN ? undefined : pathTrouble(heading)
  return trouble === undefined ? undefined : `the heading '${heading}': ${trouble}`
}

function rowJob(context: RowContext, record: ReadRow): FleetJob {
  const { template: path, table, headings, index } = context
  const filled = record.cells().flatMap((field, i): [string, ReadCell][] => {
    const key = headings[i]
    return key === undefined || field.text === '' ? [] : [[key, field]]
  })
  const nameField = filled.find(([key]) => key === NAME_COLUMN)?.[1]
  const values = filled.filter(([key]) => key !== NAME_COLUMN)
  const problems = [...shapeProblems(context, record), ...nameProblems(context, nameField)]
  const cells = values.map(([key, { line, column }]): TableCell => ({ key, line, column }))
  return {
    index,
    name: nameField === undefined || problems.length > 0 ? `row-${index + 1}` : nameField.text,
    path,
    overrides: [...values.map(([key, field]) => `${key}=${field.text}`), ...context.overrides],
    row: { file: table, line: record.line, cells },
    ...(problems.length === 0 ? {} : { problems }),
  }
}

function shapeProblems({ table, headings }: RowContext, record: ReadRow): FleetProblem[] {
  if (record.problem !== undefined) {
    const { line, column, message } = record.problem
    return [{ place: `${table}:${line}:${column}`, key: headings[record.texts.length - 1] ?? '', message }]
  }
  const { length } = record.texts
  if (length === headings.length) return []
  const beyond = record.cell(Math.min(headings.length, length - 1))
  const message = `the row has ${length} cells, the headings are ${headings.length}`
  return [{ place: `${table}:${record.line}:${beyond?.column ?? 1}`, key: headings[length] ?? '', message }]
}

function nameProblems({ table, used }: RowContext, field: ReadCell | undefined): FleetProblem[] {
  if (field === undefined) return []
  const complain = (message: string): FleetProblem[] => [
    { place: `${table}:${field.line}:${field.column}`, key: NAME_COLUMN, message },
  ]
  const before = used.get(field.text)
  if (before !== undefined) return complain(`the id ${field.text} is that of line ${before} already`)
  used.set(field.text, field.line)
  if (NAME.test(field.text) && !/^row-\d+$/u.test(field.text)) return []
  return complain(
    'an id is letters, digits, dot, dash and underscore, and not row-NUMBER, which rows without one are called',
  )
}
