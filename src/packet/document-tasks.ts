import type { ForeignTask } from '../project/foreign/index.js'
import type { BoundInput, DocumentBytes, DocumentFacts } from './document-shapes.js'

/** Opens a document and says what there is. */
export const readDocumentTask: ForeignTask<DocumentBytes, DocumentFacts> = {
  name: 'read-document',
  work: async ({ path, bytes }) => {
    const { notShown, openDocument } = await import('./open-document.js')
    const open = await openDocument(path, bytes)
    return { pages: open.sources.length, notes: notShown(open) }
  },
}

/** Draws the pages of the documents behind the drawings. */
export const bindDocumentsTask: ForeignTask<BoundInput, Uint8Array> = {
  name: 'bind-documents',
  work: async ({ packet, stamps, documents, date }) => {
    const { appendDocuments } = await import('./append-documents.js')
    return await appendDocuments(packet, stamps, documents, date)
  },
}
