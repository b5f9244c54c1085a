import type { House, HouseInput } from '../house/index.js'
import type { Result } from '../worksheet/index.js'
import type { PageLogo, PageSize } from './pages/index.js'
import type { CostValues, OptionValues, ProposalValues } from './proposal/index.js'
import type { PaperLanguage } from './words/index.js'

export interface ProposalOptions {
  /** English when left out. */
  readonly language?: PaperLanguage | undefined
  /** Letter when left out. */
  readonly size?: PageSize | undefined
  /** Wins over `proposal.cost_detail`. */
  readonly detail?: CostValues['detail'] | undefined
  /** Other ways to do it, beside this one; none when left out. Figures as the stages give them. */
  readonly options?: readonly OptionValues[] | undefined
  readonly logo?: PageLogo | undefined
}

/** A proposal before it is written. */
export interface PreparedProposal {
  readonly result: Result<ProposalValues>
  /** The paper as PDF; the same input gives the same bytes. */
  readonly pdf: () => Promise<Uint8Array>
  /** The same content as one page of HTML that needs nothing else. */
  readonly html: () => Promise<string>
  /** The same content as Markdown. */
  readonly markdown: () => Promise<string>
}

/**
 * Works out what a written offer says, and draws it. An offer with an error among its findings must not be handed over.
 *
 * @param input What `loadProject` gives, or a project with the text of the files that it names.
 * @param house The stages of the project, of `runHouse`.
 * @throws StageError when price, tariff, use or a part of the energy estimate is missing, and for a text that the font lacks.
 */
export async function prepareProposal(
  input: HouseInput,
  house: House,
  { language = 'en', size = 'letter', detail, options = [], logo }: ProposalOptions = {},
): Promise<PreparedProposal> {
  const { gatherOffer, proposalPaper } = await import('./proposal/index.js')
  const { offer, result } = await gatherOffer(input, house, { language, detail, options })
  const paper = proposalPaper(offer, logo)
  return {
    result,
    pdf: async () => {
      const [{ checkGlyphs, checkTexts }, { checkPaper, paperPdf }, { readFonts }] = await Promise.all([
        import('../drawings/index.js'),
        import('./pages/index.js'),
        import('../packet/index.js'),
      ])
      checkGlyphs(input.project)
      checkTexts(input.project.proposal, 'proposal')
      checkPaper(paper, 'title')
      return await paperPdf(paper, size, readFonts())
    },
    html: async () => (await import('./pages/index.js')).paperHtml(paper),
    markdown: async () => (await import('./pages/index.js')).paperMarkdown(paper),
  }
}

/**
 * A picture of the installer's own for the head of a proposal: PNG, or SVG of shapes in plain colours alone.
 *
 * @param path Its name for the messages.
 * @throws FileError when it is another kind of file, or holds what could run or fetch anything.
 */
export async function readLogo(path: string, bytes: Uint8Array): Promise<PageLogo> {
  const { readLogo: read } = await import('./logo/index.js')
  return read(path, bytes)
}
