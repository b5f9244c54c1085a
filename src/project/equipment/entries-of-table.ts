import { MOST_HEAD_LINES, readTable, type TableRow } from '../../values/index.js'
import { MOST_SHEET_ROWS } from '../budgets.js'
import { nearest } from '../did-you-mean.js'
import type { Problem } from '../problem.js'
import { sortProblems } from '../problem.js'
import { ProjectError } from '../project-error.js'
import { listWords, showValue } from '../words.js'
import type { EquipmentColumns } from './columns/equipment-columns-types.generated.js'
import type { ReadColumns } from './columns/read-columns.js'
import type { EquipmentEntry } from './entry.js'
import { entryOfSettings, type StatedValue } from './entry-of-settings.js'
import { EQUIPMENT_GROUPS, EQUIPMENT_KINDS, type EquipmentKind } from './groups.js'

/**
 * The pieces of equipment of a table, one a row.
 *
 * @param file Name of the table, for the messages.
 * @param columns What its columns hold.
 * @returns Entries, and what cannot be read of them.
 * @throws ProjectError when the table cannot be read or lacks a column.
 */
export function entriesOfTable(
  file: string,
  text: string,
  columns: ReadColumns,
): { readonly entries: readonly EquipmentEntry[]; readonly problems: readonly Problem[] } {
  const { data } = columns
  const table = readTable(text, MOST_SHEET_ROWS, data.delimiter, data.header_line)
  if (table === undefined) {
    const message = `no line of column names among the first ${MOST_HEAD_LINES}; a table has a header line with two or more cells`
    throw new ProjectError([{ file, line: 1, column: 1, path: '', message }], 2)
  }
  const names = table.header.map((cell) => cell.text)
  refuseMissing(columns, names)
  const at = (name: string): number => names.indexOf(name)
  const problems: Problem[] = table.problems.map((problem) => ({ file, path: '', ...problem }))
  const entries: EquipmentEntry[] = []
  for (const row of table.rows) {
    const kindText = data.kind ?? row.texts[at(data.kind_column ?? '')] ?? ''
    const kind = kindOf(kindText)
    const placeAt = (column: number) => ({ file, line: row.line, column: row.cell(column)?.column ?? 1 })
    if (kind === undefined) {
      const message = `${showValue(kindText)} is no kind of equipment; kinds: ${EQUIPMENT_KINDS.join(', ')}`
      problems.push({ ...placeAt(at(data.kind_column ?? '')), path: '', message })
      continue
    }
    const id = idFrom(row.texts[at(data.id_column)] ?? '', kind)
    const whole = placeAt(at(data.id_column))
    const read = entryOfSettings({ kind, id }, statedIn(row, data, at, placeAt), whole)
    entries.push(read.entry)
    problems.push(...read.problems)
  }
  return { entries, problems: sortProblems(problems, [file]) }
}

/** @throws ProjectError that points into the declaration of the columns. */
function refuseMissing({ data, refuse }: ReadColumns, names: readonly string[]): void {
  const wanted = [
    { segments: ['id_column'], column: data.id_column },
    ...(data.kind_column === undefined ? [] : [{ segments: ['kind_column'], column: data.kind_column }]),
    ...Object.entries(data.columns).map(([key, { column }]) => ({ segments: ['columns', key, 'column'], column })),
  ]
  const missing = wanted.filter(({ column }) => !names.includes(column))
  if (missing.length === 0) return
  throw refuse(
    missing.map(({ segments, column }) => {
      const near = nearest(column, names)
      const hint = near === undefined ? `; columns: ${listWords(names, 30)}` : `; did you mean ${near}?`
      return { segments, at: 'value', message: `the table has no column ${showValue(column)}${hint}` }
    }),
  )
}

function statedIn(
  row: TableRow,
  { columns, values = {}, decimal, missing = [] }: EquipmentColumns,
  at: (name: string) => number,
  placeAt: (column: number) => StatedValue['place'],
): StatedValue[] {
  const everywhere = Object.entries(values).map(([key, value]) => ({ key, text: String(value), place: placeAt(0) }))
  const own = Object.entries(columns).flatMap(([key, { column, unit, words = {} }]): StatedValue[] => {
    const cell = row.texts[at(column)] ?? ''
    if (cell === '' || missing.includes(cell)) return []
    const word = Object.hasOwn(words, cell) ? (words[cell] ?? cell) : cell
    const number = decimal === ',' ? word.replace(/^([-+]?\d+),(\d+)$/u, '$1.$2') : word
    const text = unit !== undefined && NUMBER.test(number) ? `${number} ${unit}` : number
    return [{ key, text, place: placeAt(at(column)) }]
  })
  return [...everywhere, ...own]
}

const NUMBER = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?$/u

function kindOf(text: string): EquipmentKind | undefined {
  const word = text.trim().toLowerCase().replaceAll(/[ _]/gu, '-')
  return EQUIPMENT_KINDS.find((kind) => word === kind || word === EQUIPMENT_GROUPS[kind].replaceAll('_', '-'))
}

/** `M 410/A` gives `M-410-A`, and `410` of a module `m410`. */
function idFrom(text: string, kind: EquipmentKind): string {
  const plain = text
    .trim()
    .replaceAll(/[^A-Za-z0-9_-]+/gu, '-')
    .replaceAll(/^-+|-+$/gu, '')
  return plain === '' || /^[A-Za-z]/u.test(plain) ? plain : `${kind.slice(0, 1)}${plain}`
}
