import { MOST_HOUSES, type ExtraColumns } from '../project/index.js'
import {
  delimitersIn,
  headerOf,
  readRows,
  type TableCell as ReadCell,
  type TableRow as ReadRow,
} from '../values/index.js'
import { cellNumber } from './cell-number.js'
import { FleetError } from './fleet-error.js'
import { readText } from './read-text.js'
import { readHeadings, type Heading } from './table-headings.js'
import type { FleetJob, FleetProblem, TableCell } from './types.js'

const NAME = /^[A-Za-z0-9][A-Za-z0-9._-]{0,99}$/u

/** How a table is written. */
export interface TableForm {
  /** Columns of the person's own. */
  readonly extra?: ExtraColumns | undefined
  /** Mark between the columns; the one that the headings hold when undefined. */
  readonly delimiter?: string | undefined
  /** Whether decimals follow a comma. */
  readonly decimalComma?: boolean | undefined
}

/**
 * The projects that a template and a table give, one a row, while the table is read.
 *
 * @param template Path of the project file whose values the rows change.
 * @param table Path of the delimited text.
 * @param overrides `path=value` for every row; they win over the row.
 * @throws FleetError when the table cannot be read or its headings cannot be used.
 */
export function* tableJobs(
  template: string,
  table: string,
  overrides: readonly string[],
  { extra = { names: [] }, delimiter, decimalComma = false }: TableForm = {},
): Generator<FleetJob> {
  const records = readRows(readText(table), { delimiter: delimiter ?? delimiterOf(table) })
  const first = records.next()
  if (first.done === true) throw new FleetError(`${table}: the table is empty; its first line holds the headings`, 2)
  const headings = readHeadings(table, first.value, extra)
  const used = new Map<string, number>()
  let index = 0
  for (const record of records) {
    if (index >= MOST_HOUSES) {
      const says = `more than ${MOST_HOUSES} houses; at most as many are run at once: split the table`
      throw new FleetError(`${table}:${record.line}:1: ${says}`, 2)
    }
    yield rowJob({ template, table, overrides, headings, decimalComma, used, index }, record)
    index += 1
  }
}

/**
 * The mark that parts the columns: no heading holds one.
 *
 * @throws FleetError when the headings hold more than one.
 */
export function delimiterOf(table: string): string {
  const [found = ',', ...others] = delimitersIn(headerOf(readText(table)))
  if (others.length === 0) return found
  const marks = [found, ...others].map((mark) => (mark === '\t' ? 'tabs' : `'${mark}'`)).join(' and ')
  throw new FleetError(`${table}:1:1: the headings hold ${marks}; say with --delimiter which parts the columns`, 2)
}

interface RowContext {
  readonly template: string
  readonly table: string
  readonly overrides: readonly string[]
  readonly headings: readonly Heading[]
  readonly decimalComma: boolean
  /** Line of every name so far. */
  readonly used: Map<string, number>
  readonly index: number
}

type Filled = readonly [heading: Heading, field: ReadCell]

function rowJob(context: RowContext, record: ReadRow): FleetJob {
  const { template: path, table, headings, index } = context
  const filled = record.cells().flatMap((field, i): Filled[] => {
    const heading = headings[i]
    return heading === undefined || field.text === '' ? [] : [[heading, field]]
  })
  const named = filled.find(([{ kinds }]) => kinds.has('name'))
  const values = filled.filter(([{ kinds }]) => kinds.has('value'))
  const extra = filled.filter(([{ kinds }]) => kinds.has('extra')).map(([{ key }, { text }]) => [key, text] as const)
  const numbers = values.map(([{ isNumber }, { text }]) =>
    isNumber ? cellNumber(text, context.decimalComma) : { text },
  )
  const problems = [
    ...shapeProblems(context, record),
    ...nameProblems(context, named),
    ...values.flatMap(([{ key }, { line, column }], i): FleetProblem[] => {
      const number = numbers[i]
      if (number === undefined || !('trouble' in number)) return []
      return [{ place: `${table}:${line}:${column}`, key, message: number.trouble }]
    }),
  ]
  const texts = values.map(([{ key }, { text }], i) => {
    const number = numbers[i]
    return `${key}=${number !== undefined && 'text' in number ? number.text : text}`
  })
  const cells = values.map(([{ key }, { line, column }]): TableCell => ({ key, line, column }))
  return {
    index,
    name: named === undefined || problems.length > 0 ? `row-${index + 1}` : named[1].text,
    path,
    overrides: [...texts, ...context.overrides],
    row: { file: table, line: record.line, cells },
    ...(extra.length === 0 ? {} : { extra: Object.fromEntries(extra) }),
    ...(problems.length === 0 ? {} : { problems }),
  }
}

function shapeProblems({ table, headings }: RowContext, record: ReadRow): FleetProblem[] {
  if (record.problem !== undefined) {
    const { line, column, message } = record.problem
    return [{ place: `${table}:${line}:${column}`, key: headings[record.texts.length - 1]?.key ?? '', message }]
  }
  const { length } = record.texts
  if (length === headings.length) return []
  const beyond = record.cell(Math.min(headings.length, length - 1))
  const message = `the row has ${length} cells, the headings are ${headings.length}`
  return [{ place: `${table}:${record.line}:${beyond?.column ?? 1}`, key: headings[length]?.key ?? '', message }]
}

function nameProblems({ table, used }: RowContext, named: Filled | undefined): FleetProblem[] {
  if (named === undefined) return []
  const [{ key }, field] = named
  const complain = (message: string): FleetProblem[] => [
    { place: `${table}:${field.line}:${field.column}`, key, message },
  ]
  const before = used.get(field.text)
  if (before !== undefined) return complain(`the id ${field.text} is that of line ${before} already`)
  used.set(field.text, field.line)
  if (NAME.test(field.text) && !/^row-\d+$/u.test(field.text)) return []
  return complain(
    'an id is letters, digits, dot, dash and underscore, and not row-NUMBER, which rows without one are called',
  )
}
