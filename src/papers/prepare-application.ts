import type { House } from '../house/index.js'
import { inCurrency } from '../report/index.js'
import type { Result } from '../worksheet/index.js'
import type { ApplicationValues } from './application/index.js'
import type { PageSize } from './pages/index.js'
import { sealPaper, type PaperInput, type SealWish } from './seal-paper.js'
import { speakerOf } from './words/index.js'

/** A paper with what it rests on. */
export interface PreparedPaper<Values> {
  readonly result: Result<Values>
  /** Whether it rests on made-up values, is stamped so and must not be handed over. */
  readonly isDraft: boolean
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
  input: PaperInput,
  house: House,
  { tool }: SealWish = {},
): Promise<PreparedPaper<ApplicationValues>> {
  const [{ applicationPaper, buildApplication }, { checkPaper, paperMarkdown, paperPdf }] = await Promise.all([
    import('./application/index.js'),
    import('./pages/index.js'),
  ])
  const { draftWhileMadeUp, tellMadeUp, withoutMadeUp } = await import('./draft.js')
  const { project, digest } = input
  const built = await withoutMadeUp(await buildApplication(project, house))
  const result = inCurrency(tellMadeUp(built, input, 'application'), project.finance?.currency)
  const plain = applicationPaper(project, result.values, inCurrency(built.findings, project.finance?.currency))
  const paper = draftWhileMadeUp(plain, input, 'application', speakerOf('en'))
  return {
    result,
    isDraft: paper.stamp !== undefined,
    markdown: () => paperMarkdown(paper),
    pdf: async (size) => {
      const { readFonts } = await import('../packet/index.js')
      checkPaper(paper, 'title')
      const draw = async (imprint?: string) => await paperPdf(paper, size, readFonts(), imprint)
      const seal = { digest, tool, draft: paper.stamp !== undefined, name: 'application' } as const
      return await sealPaper(draw, seal, { yield: house.yield, wire: house.wire })
    },
  }
}
