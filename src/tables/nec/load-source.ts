import type { Source } from '../../worksheet/index.js'
import { loadFactors, type LoadFactors } from './load-factors.js'

/** What an edition counts, by its name; the table has a row of each. */
export function factorsOf(edition: string): LoadFactors {
  const row = loadFactors.find((candidate) => candidate.edition === edition)
  if (row === undefined) throw new Error(`no load factors of ${edition}`)
  return row
}

/**
 * A section about load calculations as a source.
 *
 * @param suffix What stands behind the article: `.82(B)`.
 * @param standing When it is not that of the edition's row.
 */
export function loadSource(edition: string, suffix: string, standing?: Source['standing']): Source {
  const row = factorsOf(edition)
  return {
    document: 'NEC',
    edition: edition.replace('NEC ', ''),
    place: `${row.article}${suffix}`,
    standing: standing ?? row.standing,
  }
}
