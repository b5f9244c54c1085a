import type { EditionComparison, EditionConsequence } from '../../electrical/index.js'
import type { Cell, Section, TableData } from '../../report/index.js'
import { own } from '../../values/index.js'

/** What changes for the person, a row a thing. */
export function consequenceTable(editions: readonly string[], consequences: readonly EditionConsequence[]): TableData {
  return {
    columns: [
      { heading: 'What', key: 'what' },
      { heading: 'Where', key: 'where' },
      ...editions.map((edition) => ({ heading: edition })),
    ],
    rows: consequences.map(({ what, where, values }): Cell[] => [
      what,
      where.replace(/^electrical\./u, ''),
      ...shortWords(
        what,
        editions.map((edition) => own(values, edition) ?? '-'),
      ),
    ]),
  }
}

/** Of labels their first words, where these tell them apart; all of the others. */
function shortWords(what: string, values: readonly string[]): readonly string[] {
  const first = values.map((value) => value.split(' / ')[0] ?? value)
  return what.startsWith('label') && new Set(first).size === new Set(values).size ? first : values
}

/** Editions side by side: what changes for the person; on request every value and section that differs. */
export function comparisonSections(
  comparison: EditionComparison,
  consequences: readonly EditionConsequence[],
  withRules: boolean,
): Section[] {
  const { editions, differences, findings } = comparison
  const heading =
    consequences.length === 0
      ? `Nothing changes for this project between ${editions.join(' and ')}`
      : 'What changes for this project'
  const first: Section = { kind: 'table', heading, ...consequenceTable(editions, consequences) }
  if (!withRules)
    return [
      first,
      {
        kind: 'paragraph',
        text: `${differences.length} values, sections and texts of rules differ; --with-rules lists them.`,
      },
    ]
  return [
    first,
    differenceTable(editions, differences),
    ...(findings.length === 0 ? [] : [findingTable(editions, findings)]),
  ]
}

function differenceTable(editions: readonly string[], differences: EditionComparison['differences']): Section {
  return {
    kind: 'table',
    heading: differences.length === 0 ? 'No value or section differs' : 'Values and sections that differ',
    columns: [{ heading: 'Value' }, ...editions.map((edition) => ({ heading: edition }))],
    rows: differences.map(({ path, values }): Cell[] => [
      path,
      ...editions.map((edition) => leafCell(own(values, edition) ?? null)),
    ]),
  }
}

function leafCell(value: string | number | boolean | null): Cell {
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  return typeof value === 'number' ? String(Number(value.toPrecision(6))) : value
}

function findingTable(editions: readonly string[], findings: EditionComparison['findings']): Section {
  return {
    kind: 'table',
    heading: 'Findings that not every edition has',
    columns: [{ heading: 'Finding' }, ...editions.map((edition) => ({ heading: edition }))],
    rows: findings.map(({ id, message, editions: having }): Cell[] => [
      `${message} [${id}]`,
      ...editions.map((edition) => (having.includes(edition) ? 'x' : null)),
    ]),
  }
}
