import { didYouMean, pathTrouble, takesNumber, type ExtraColumns } from '../project/index.js'
import type { TableRow } from '../values/index.js'
import { FleetError } from './fleet-error.js'

/** Heading of the column that names the projects, where the template names no other. */
const NAME_COLUMN = 'id'

/** What a column of the table holds. */
export interface Heading {
  readonly key: string
  /** `value`: of the project file; `extra`: of the person's own; `name`: it names the project. */
  readonly kinds: ReadonlySet<'name' | 'extra' | 'value'>
  /** Whether a number of the project stands there. */
  readonly isNumber: boolean
}

/**
 * The headings of a table.
 *
 * @param table Path of the table, for messages.
 * @throws FleetError with all that is wrong with them: once for the table, and not again for every row.
 */
export function readHeadings(table: string, record: TableRow, extra: ExtraColumns): Heading[] {
  const at = ({ line, column }: { line: number; column: number }): string => `${table}:${line}:${column}`
  if (record.problem !== undefined) throw new FleetError(`${at(record.problem)}: ${record.problem.message}`, 2)
  const texts = record.texts.map((text) => text.trim())
  const troubles = record.cells().flatMap((field, i) => {
    const trouble = headingTrouble(texts, i, extra)
    return trouble === undefined ? [] : [`${at(field)}: ${trouble}`]
  })
  const { nameColumn } = extra
  if (troubles.length === 0 && nameColumn !== undefined && !texts.includes(nameColumn)) {
    troubles.push(`${table}:${record.line}:1: there is no column '${nameColumn}', which fleet.name_column wants`)
  }
  const [first, ...more] = troubles
  if (first !== undefined) throw new FleetError(first, 2, undefined, more)
  return texts.map((key) => headingOf(key, extra))
}

function headingOf(key: string, { names, nameColumn }: ExtraColumns): Heading {
  const kinds = new Set<'name' | 'extra' | 'value'>()
  const isExtra = names.includes(key)
  if (key === (nameColumn ?? NAME_COLUMN)) kinds.add('name')
  if (isExtra) kinds.add('extra')
  if (!isExtra && key !== NAME_COLUMN) kinds.add('value')
  return { key, kinds, isNumber: kinds.has('value') && takesNumber(key) }
}

function headingTrouble(headings: readonly string[], index: number, extra: ExtraColumns): string | undefined {
  const heading = headings[index] ?? ''
  if (heading === '') return `a column without a heading; write the path that it fills, or '${NAME_COLUMN}'`
  if (heading.includes('=')) return "a heading is a path into the project, without '='"
  if (headings.indexOf(heading) < index) return `two columns are headed '${heading}'`
  if (heading === NAME_COLUMN) {
    return extra.nameColumn === undefined
      ? undefined
      : `the column '${extra.nameColumn}' names the houses, as fleet.name_column says; leave '${NAME_COLUMN}' out`
  }
  if (extra.names.includes(heading)) return undefined
  if (heading === 'fleet' || heading.startsWith('fleet.')) {
    return `the heading '${heading}': what stands under fleet holds for all rows; write it into the template`
  }
  const trouble = pathTrouble(heading)
  if (trouble === undefined) return undefined
  const near = didYouMean(heading, extra.names)
  return near === ''
    ? `the heading '${heading}': ${trouble}; a column of your own is declared under fleet.extra_columns of the template`
    : `the heading '${heading}': neither a path of the project file nor one of fleet.extra_columns${near}`
}
