import type { Source } from '../worksheet/index.js'

/**
 * A source as a filed sheet cites it: document, edition and place. How far it was read for this project stands in the
 * preparer's report.
 *
 * @returns `trade practice` for a habit of the trade without a document.
 */
export function sheetSource(source: Source): string {
  const cited = [source.document, source.edition, source.place].filter((part) => part !== undefined && part !== '')
  return cited.length === 0 ? 'trade practice' : cited.join(', ')
}
