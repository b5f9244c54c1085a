import { renderPdf, type FontFiles } from '../../drawings/index.js'
import { layOutPaper } from './lay-out.js'
import type { Paper } from './page-block.js'
import { bodyOf, type PageSize } from './page-style.js'

/**
 * A paper as a tagged PDF with embedded fonts; the same paper gives the same bytes.
 *
 * @param imprint Small in the lower margin of each page.
 * @throws RangeError for a character that the font lacks; `checkPaper` tells before.
 */
export async function paperPdf(paper: Paper, size: PageSize, fonts: FontFiles, imprint?: string): Promise<Uint8Array> {
  const { title, author, subject, date, language, logo } = paper
  const over = (doc: PDFKit.PDFDocument, page: number): void => {
    if (page > 0 || logo === undefined) return
    const { x, y, width } = bodyOf(size)
    logo.drawPdf(doc as never, x + width - logo.widthPt, y)
  }
  const facts = { title, author, subject, date, language, ...(imprint === undefined ? {} : { imprint }) }
  return await renderPdf(layOutPaper(paper, size), fonts, facts, { over })
}
