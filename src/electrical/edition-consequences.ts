import type { Finding, Result } from '../worksheet/index.js'
import { own } from '../values/index.js'
import type { WiringValues } from './system/index.js'
import { traitsOf, type EditionTrait } from './edition-traits.js'

/** What an edition changes for the person: something to buy, to fix, to label or to be allowed. */
export interface EditionConsequence {
  /** `overcurrent device`, `label`, `connection`. */
  readonly what: string
  /** Circuit, segment, panel or path in the project; several with commas between. */
  readonly where: string
  /** With units, by edition; null where that edition has none. */
  readonly values: Readonly<Record<string, string | null>>
}

/**
 * What differs between editions for the person, the connection first; rules and sections that change nothing are left out.
 *
 * @param results Wiring by edition.
 * @param more Further traits by edition, such as labels, in their order.
 */
export function editionConsequences(
  results: Readonly<Record<string, Result<WiringValues>>>,
  more: Readonly<Record<string, readonly EditionTrait[]>> = {},
): EditionConsequence[] {
  const names = Object.keys(results)
  const rows = new Map<string, { what: string; where: string; values: Map<string, string | null> }>()
  for (const name of names) {
    const result = own(results, name)
    if (result === undefined) continue
    const traits = [...traitsOf(result.values), ...(own(more, name) ?? []), ...result.findings.map(findingTrait)]
    for (const { what, where, value } of traits) {
      const key = `${what}\n${where}`
      const row = rows.get(key) ?? { what, where, values: new Map<string, string | null>() }
      const before = row.values.get(name)
      row.values.set(name, before === undefined || before === null ? value : `${before}; ${value ?? ''}`)
      rows.set(key, row)
    }
  }
  const differing = [...rows.values()]
    .map(({ what, where, values }) => ({
      what,
      where,
      values: Object.fromEntries(names.map((name) => [name, values.get(name) ?? null])),
    }))
    .filter(({ values }) => new Set(Object.values(values)).size > 1)
  return inOrder(alikeTogether(differing))
}

const ORDER = [
  'connection',
  'error',
  'overcurrent',
  'conductor',
  'grounding',
  'raceway',
  'string',
  'label',
  'rapid',
  'warning',
]

function inOrder(rows: readonly EditionConsequence[]): EditionConsequence[] {
  const rank = ({ what }: EditionConsequence): number => {
    const at = ORDER.findIndex((word) => what.startsWith(word))
    return at < 0 ? ORDER.length : at
  }
  return rows.toSorted((a, b) => rank(a) - rank(b))
}

/** Circuits and segments for which the same changes in the same way are one row. */
function alikeTogether(rows: readonly EditionConsequence[]): EditionConsequence[] {
  const together = new Map<string, EditionConsequence>()
  for (const row of rows) {
    const key = JSON.stringify([row.what, row.values])
    const other = together.get(key)
    together.set(key, other === undefined ? row : { ...other, where: `${other.where}, ${row.where}` })
  }
  return [...together.values()]
}

function findingTrait({ severity, id, where, message }: Finding): EditionTrait {
  return { what: `${severity}: ${id.slice(id.indexOf('.') + 1).replaceAll('-', ' ')}`, where, value: message }
}
