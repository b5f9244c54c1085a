import type { House } from '../house/index.js'
import type { Project } from '../project/index.js'
import type { Result } from '../worksheet/index.js'
import type { ApplicationValues } from './application/index.js'
import type { PageSize } from './pages/index.js'

/** A paper with what it rests on. */
export interface PreparedPaper<Values> {
  readonly result: Result<Values>
  readonly markdown: () => string
  /** The same paper gives the same bytes. Rejects with StageError for a character that the font lacks. */
  readonly pdf: (size: PageSize) => Promise<Uint8Array>
}

/**
 * The application for interconnection of a house.
 *
 * @param house The stages of the project, of `runHouse`; one that cannot run leaves its fields missing and is told.
 */
export async function prepareApplication(
  { project }: { readonly project: Project },
  house: House,
): Promise<PreparedPaper<ApplicationValues>> {
  const [{ applicationPaper, buildApplication }, { checkPaper, paperMarkdown, paperPdf }] = await Promise.all([
    import('./application/index.js'),
    import('./pages/index.js'),
  ])
  const result = await buildApplication(project, house)
  const paper = applicationPaper(project, result.values, result.findings)
  return {
    result,
    markdown: () => paperMarkdown(paper),
    pdf: async (size) => {
      const { readFonts } = await import('../packet/index.js')
      checkPaper(paper, 'title')
      return await paperPdf(paper, size, readFonts())
    },
  }
}
