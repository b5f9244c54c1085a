import { equipmentNamed } from '../../project/facts.js'
import type { AppendedDocument, PacketInput } from '../inputs.js'

/** Number of the first page that follows the drawings, as every page of the documents is stamped: `X-001`. */
export function documentPageId(page: number): string {
  return `X-${String(page).padStart(3, '0')}`
}

/** Lines of the sheet index for the person's own documents. */
export function documentSheets(documents: readonly AppendedDocument[]): (readonly [string, string])[] {
  let page = 1
  return documents.map(({ path, pages, title, date }) => {
    const first = documentPageId(page)
    page += pages
    const name = title ?? path.split('/').at(-1) ?? path
    return [
      pages === 1 ? first : `${first} to ${documentPageId(page - 1)}`,
      date === undefined ? name : `${name}, ${date}`,
    ] as const
  })
}

/** The same lines with the equipment that each document is the sheet of, by name: `X-002 | Data sheet; for Invented M410`. */
export function indexedDocuments({
  project,
  documents,
}: Pick<PacketInput, 'project' | 'documents'>): (readonly [string, string])[] {
  return documentSheets(documents).map(([sheet, title], index) => {
    const names = (documents[index]?.items ?? []).map((item) => equipmentNamed(project, item) ?? item)
    return [sheet, names.length === 0 ? title : `${title}; for ${names.join(', ')}`] as const
  })
}
