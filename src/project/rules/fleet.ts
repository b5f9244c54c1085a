import { pathTrouble } from '../override.js'
import type { Rule } from './rule.js'

/** Names that `run-fleet` itself gives to columns. */
const TAKEN = new Set(['id', 'project', 'title', 'status', 'errors', 'warnings', 'from', 'digest'])

/** Columns of the person's own have names that mean nothing else. */
export const checkFleet: Rule = ({ fleet }, report) => {
  const columns = fleet?.extra_columns ?? []
  for (const [i, name] of columns.entries()) {
    const trouble = columnTrouble(columns, i)
    if (trouble !== undefined) report(['fleet', 'extra_columns', i], `'${name}' ${trouble}`)
  }
  const name = fleet?.name_column
  if (name === undefined || columns.includes(name)) return
  report(['fleet', 'name_column'], `'${name}' is none of fleet.extra_columns; add it there`)
}

function columnTrouble(columns: readonly string[], index: number): string | undefined {
  const name = columns[index] ?? ''
  if (TAKEN.has(name)) return 'is a column of run-fleet itself; choose another name'
  if (pathTrouble(name) === undefined) {
    return 'is a path of the project file, which a heading fills without being declared; choose another name'
  }
  return columns.indexOf(name) < index ? 'stands twice' : undefined
}
