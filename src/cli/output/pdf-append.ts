import type { PDFDocument, PDFEmbeddedPage, PDFPage } from '@cantoo/pdf-lib'
import { FileError } from '../errors.js'
import { addBookmarks } from './pdf-bookmarks.js'
import type { ReadDocument } from './pdf-documents.js'

const MARGIN_PT = 12

/**
 * Copies the person's documents behind the drawings, page by page, and stamps each page.
 *
 * @param packet The drawings as a PDF.
 * @param stamps A PDF with one small page for each page of the documents.
 * @param date The only date that the file shall hold, year-month-day.
 * @throws FileError naming a document whose pages cannot be copied.
 */
export async function appendDocuments(
  packet: Uint8Array,
  stamps: Uint8Array,
  documents: readonly ReadDocument[],
  date: string,
): Promise<Uint8Array> {
  const { degrees, PDFDocument: Pdf } = await import('@cantoo/pdf-lib')
  const target = await Pdf.load(packet, { updateMetadata: false })
  const count = documents.reduce((sum, document) => sum + document.pages, 0)
  const marks = await target.embedPdf(
    stamps,
    Array.from({ length: count }, (_, index) => index),
  )
  const bookmarks: { title: string; page: PDFPage }[] = []
  let next = 0
  for (const document of documents) {
    const pages = await copyPages(target, document)
    for (const [index, page] of pages.entries()) {
      target.addPage(page)
      const mark = marks[next++]
      if (mark !== undefined) page.drawPage(mark, { ...placeOf(page, mark), rotate: degrees(page.getRotation().angle) })
      if (index === 0) bookmarks.push({ title: document.path.split('/').at(-1) ?? document.path, page })
    }
  }
  await addBookmarks(target, bookmarks)
  target.setModificationDate(new Date(`${date}T00:00:00Z`))
  return await target.save({ useObjectStreams: false, addDefaultPage: false, updateFieldAppearances: false })
}

async function copyPages(target: PDFDocument, document: ReadDocument): Promise<PDFPage[]> {
  try {
    return await target.copyPages(document.pdf, document.pdf.getPageIndices())
  } catch (error) {
    throw new FileError(
      `document '${document.path}' is broken and its pages cannot be copied; print it to a new PDF and use that`,
      {
        cause: error,
      },
    )
  }
}

/** Origin of a stamp so that it stands upright in the lower right corner as the page is seen, whatever its rotation. */
function placeOf(page: PDFPage, mark: PDFEmbeddedPage): { readonly x: number; readonly y: number } {
  const { x, y, width, height } = page.getCropBox()
  const turn = ((page.getRotation().angle % 360) + 360) % 360
  const along = MARGIN_PT + mark.width
  if (turn === 90) return { x: x + width - MARGIN_PT, y: y + height - along }
  if (turn === 180) return { x: x + along, y: y + height - MARGIN_PT }
  if (turn === 270) return { x: x + MARGIN_PT, y: y + along }
  return { x: x + width - along, y: y + MARGIN_PT }
}
