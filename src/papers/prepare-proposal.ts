import type { House, HouseInput } from '../house/index.js'
import type { Result } from '../worksheet/index.js'
import type { PageLogo, PageSize } from './pages/index.js'
import type { CostValues, OptionValues, ProposalValues } from './proposal/index.js'
import { sealPaper, type PaperInput, type SealWish } from './seal-paper.js'
import type { PaperLanguage } from './words/index.js'

export interface ProposalOptions extends SealWish {
  /** That of `proposal.language` when left out, else English. */
  readonly language?: PaperLanguage | undefined
  /** Letter when left out. */
  readonly size?: PageSize | undefined
  /** Wins over `proposal.cost_detail`. */
  readonly detail?: CostValues['detail'] | undefined
  /** Other ways to do it, beside this one; none when left out. Figures as the stages give them. */
  readonly options?: readonly OptionValues[] | undefined
  readonly logo?: PageLogo | undefined
  /** More about the customer: `name`, `address`, `phone` and `email` win over `parties.owner`, others are lines of their own. */
  readonly customer?: Readonly<Record<string, string>> | undefined
}

/** A proposal before it is written. */
export interface PreparedProposal {
  readonly result: Result<ProposalValues>
  /** Whether it rests on made-up values, is stamped so and must not be handed over. */
  readonly isDraft: boolean
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
  stated: HouseInput & PaperInput,
  house: House,
  { language, size = 'letter', detail, options = [], logo, customer = {}, tool }: ProposalOptions = {},
): Promise<PreparedProposal> {
  const { customerFacts, gatherOffer, proposalPaper, withCustomer } = await import('./proposal/index.js')
  const input = { ...stated, project: withCustomer(stated.project, customer) }
  const spoken = language ?? input.project.proposal?.language ?? 'en'
  const { offer, result: gathered } = await gatherOffer(input, house, { language: spoken, detail, options })
  const { draftWhileMadeUp, tellMadeUp, withoutMadeUp } = await import('./draft.js')
  const result = tellMadeUp(await withoutMadeUp(gathered), input, 'proposal')
  const plain = proposalPaper({ ...offer, customer: customerFacts(input.project, customer, offer.say) }, logo)
  const paper = draftWhileMadeUp(plain, input, 'proposal', offer.say)
  return {
    result,
    isDraft: paper.stamp !== undefined,
    pdf: async () => {
      const [{ checkGlyphs, checkTexts }, { checkPaper, paperPdf }, { readFonts }] = await Promise.all([
        import('../drawings/index.js'),
        import('./pages/index.js'),
        import('../packet/index.js'),
      ])
      checkGlyphs(input.project)
      checkTexts(input.project.proposal, 'proposal')
      checkPaper(paper, 'title')
      const draw = async (imprint?: string) => await paperPdf(paper, size, readFonts(), imprint)
      const seal = { digest: input.digest, tool, draft: paper.stamp !== undefined, name: 'proposal' } as const
      return await sealPaper(draw, seal, { yield: house.yield, payback: house.payback })
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
