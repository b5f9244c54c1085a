import { EDITION_NOT_READ } from '../tables/nec/index.js'
import { formatSource, type Source } from '../worksheet/index.js'

/**
 * A source as a filed sheet names it. That the text of an edition was not read stands once, on the cover, and not
 * beside each section.
 */
export function sheetSource(source: Source): string {
  if (`${source.document} ${source.edition ?? ''}` !== EDITION_NOT_READ) return formatSource(source)
  return bareSource(source)
}

/** A source without a mark of how far it was read. */
export function bareSource(source: Source): string {
  return [source.document, source.edition, source.place].filter((part) => part !== undefined).join(', ')
}

/** The one line of the cover about an edition whose text was not read; undefined for the others. */
export function editionNote(edition: string | undefined): string | undefined {
  return edition === EDITION_NOT_READ
    ? 'Sections and numbers of NEC 2026 on these sheets are from secondary sources only; its text was not read, and the words of labels are those of NEC 2023, unconfirmed.'
    : undefined
}
