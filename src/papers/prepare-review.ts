import type { ReviewValues } from '../fieldwork/index.js'
import type { PageSize } from './pages/index.js'

/**
 * The owner's page of a review as PDF: what the system should have made, what it made, and why.
 *
 * @param title Of the project. @param size Paper.
 */
export async function reviewPdf(title: string, values: ReviewValues, size: PageSize = 'letter'): Promise<Uint8Array> {
  const [{ reviewPaper }, { checkPaper, paperPdf }, { readFonts }] = await Promise.all([
    import('./review/review-paper.js'),
    import('./pages/index.js'),
    import('../packet/index.js'),
  ])
  const paper = reviewPaper(title, values)
  checkPaper(paper, 'title')
  return await paperPdf(paper, size, readFonts())
}
