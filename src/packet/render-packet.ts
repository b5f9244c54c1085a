import { documentStamps, renderPdf, type PdfInfo, type Sheet } from '../drawings/index.js'
import { IN_THIS_THREAD, type ForeignRunner } from '../project/foreign/index.js'
import { PRINT_AGAIN, type DocumentBytes, type DocumentFacts } from './document-shapes.js'
import { bindDocumentsTask } from './document-tasks.js'
import { readFonts } from './read-fonts.js'

/**
 * The whole packet as one PDF: drawings, then the person's documents, each page with its sheet number.
 *
 * @param runner Where the documents are opened.
 */
export async function renderPacket(
  sheets: readonly Sheet[],
  documents: readonly (DocumentBytes & Pick<DocumentFacts, 'pages'>)[],
  info: PdfInfo,
  draft: boolean,
  runner: ForeignRunner = IN_THIS_THREAD,
): Promise<Uint8Array> {
  const fonts = readFonts()
  const packet = await renderPdf(sheets, fonts, info)
  if (documents.length === 0) return packet
  const pages = documents.reduce((sum, document) => sum + document.pages, 0)
  // A stamp is no sheet: the imprint would lie on its words.
  const { imprint: _, ...bare } = info
  const stamps = await renderPdf(documentStamps(pages, info.title, draft), fonts, bare, { tagged: false })
  const bound = documents.map(({ path, bytes, title }) => ({ path, bytes, title }))
  const subject = {
    what: documents.length === 1 ? `document '${bound[0]?.path}'` : `binding in ${documents.length} documents`,
    bytes: bound.reduce((sum, { bytes }) => sum + bytes.length, packet.length),
    fix: PRINT_AGAIN.replace('it', documents.length === 1 ? 'it' : 'the largest of them'),
  }
  return await runner.run(bindDocumentsTask, { packet, stamps, documents: bound, date: info.date }, subject)
}
