import type { Project } from '../project/index.js'
import type { Result } from '../worksheet/index.js'
import { own } from '../values/index.js'
import type { WiringContext, WiringValues } from './system/index.js'
import { sizeWire } from './size-wire.js'

/** One value that is not the same in all editions. */
export interface EditionDifference {
  /** Dotted path into the values: `circuits.b1.segments.home.roof.size_awg`. */
  readonly path: string
  /** Value by edition; null where that edition has none. */
  readonly values: Readonly<Record<string, string | number | boolean | null>>
}

/** Editions side by side. */
export interface EditionComparison {
  readonly editions: readonly string[]
  readonly results: Readonly<Record<string, Result<WiringValues>>>
  readonly differences: readonly EditionDifference[]
  /** Findings that not all editions have, by id and message. */
  readonly findings: readonly { readonly id: string; readonly message: string; readonly editions: readonly string[] }[]
}

/**
 * Sizes the project by several editions and marks what differs.
 *
 * @param editions Names of editions: `NEC 2014`.
 * @throws StageError for an edition that the tables do not hold.
 */
export function compareEditions(
  project: Project,
  editions: readonly string[],
  context: WiringContext,
): EditionComparison {
  const names = [...new Set(editions)]
  const results = Object.fromEntries(names.map((edition) => [edition, sizeWire(project, { ...context, edition })]))
  const flat = new Map(names.map((edition) => [edition, flatten('', own(results, edition)?.values)]))
  const paths = new Set([...flat.values()].flatMap((values) => [...values.keys()]))
  paths.delete('edition')
  const differences = [...paths].flatMap((path): EditionDifference[] => {
    const values = Object.fromEntries(names.map((edition) => [edition, flat.get(edition)?.get(path) ?? null]))
    return new Set(Object.values(values)).size > 1 ? [{ path, values }] : []
  })
  return { editions: names, results, differences, findings: differingFindings(names, results) }
}

function differingFindings(
  names: readonly string[],
  results: Readonly<Record<string, Result<WiringValues>>>,
): EditionComparison['findings'] {
  const seen = new Map<string, { id: string; message: string; editions: string[] }>()
  for (const edition of names)
    for (const { id, message } of own(results, edition)?.findings ?? []) {
      const key = `${id} ${message}`
      const row = seen.get(key) ?? { id, message, editions: [] }
      if (!row.editions.includes(edition)) row.editions.push(edition)
      seen.set(key, row)
    }
  return [...seen.values()].filter((row) => row.editions.length < names.length)
}

type Leaf = string | number | boolean | null

function flatten(path: string, value: unknown): Map<string, Leaf> {
  const out = new Map<string, Leaf>()
  if (value === null || typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') {
    out.set(path, value)
    return out
  }
  if (typeof value !== 'object') return out
  for (const [key, child] of Object.entries(value)) {
    const name = Array.isArray(value) ? nameOf(child, key) : key
    for (const [childPath, leaf] of flatten(path === '' ? name : `${path}.${name}`, child)) out.set(childPath, leaf)
  }
  return out
}

/** Things with an id or a rule are told apart by it, others by their position. */
function nameOf(child: unknown, position: string): string {
  if (typeof child !== 'object' || child === null) return position
  if ('id' in child && typeof child.id === 'string') return child.id
  if ('rule' in child && typeof child.rule === 'string') return child.rule.replaceAll(' ', '-')
  return position
}
