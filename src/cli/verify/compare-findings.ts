import type { Finding } from '../../worksheet/index.js'
import type { Difference } from './compare-values.js'

type Told = Pick<Finding, 'severity' | 'id'>

/**
 * Errors and warnings that only one of two results tells, as often as it does. Notes are left out, and so are the words of a finding.
 *
 * @param inFile Findings of a file, of which nothing is known.
 * @param mayTellMore Whether options of its run may have found more than the project alone does.
 */
export function compareFindings(inFile: unknown, anew: readonly Told[], mayTellMore: boolean): Difference[] {
  const [theirs, ours] = [countOf(Array.isArray(inFile) ? inFile.filter(isTold) : []), countOf(anew)]
  return [...new Set([...theirs.keys(), ...ours.keys()])].flatMap((name) => {
    const [had, has] = [theirs.get(name) ?? 0, ours.get(name) ?? 0]
    if (had === has || (mayTellMore && had > has)) return []
    return [{ path: `findings: ${name}`, inFile: times(had), anew: times(has) }]
  })
}

const times = (count: number): string | undefined => (count === 0 ? undefined : count === 1 ? 'once' : `${count} times`)

function countOf(all: readonly Told[]): Map<string, number> {
  const counts = new Map<string, number>()
  for (const { severity, id } of all) {
    if (severity === 'note' || id === OF_THE_WAY) continue
    const name = `${severity} ${id}`
    counts.set(name, (counts.get(name) ?? 0) + 1)
  }
  return counts
}

/** Tells how a result came about, not what is right or wrong with the project. */
const OF_THE_WAY = 'use.other-build'

function isTold(value: unknown): value is Told {
  if (typeof value !== 'object' || value === null) return false
  const { severity, id } = value as Partial<Record<keyof Told, unknown>>
  return typeof severity === 'string' && typeof id === 'string'
}
