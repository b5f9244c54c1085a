import { documentStamps, renderPdf, type PdfInfo, type Sheet } from '../drawings/index.js'
import type { TitledDocument } from './read-documents.js'
import { readFonts } from './read-fonts.js'

/** The whole packet as one PDF: drawings, then the person's documents, each page with its sheet number. */
export async function renderPacket(
  sheets: readonly Sheet[],
  documents: readonly TitledDocument[],
  info: PdfInfo,
  draft: boolean,
): Promise<Uint8Array> {
  const fonts = readFonts()
  const packet = await renderPdf(sheets, fonts, info)
  if (documents.length === 0) return packet
  const pages = documents.reduce((sum, document) => sum + document.pages, 0)
  // A stamp is no sheet: the imprint would lie on its words.
  const { imprint: _, ...bare } = info
  const stamps = await renderPdf(documentStamps(pages, info.title, draft), fonts, bare, { tagged: false })
  const { appendDocuments } = await import('./append-documents.js')
  return await appendDocuments(packet, stamps, documents, info.date)
}
