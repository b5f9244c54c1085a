import type { PageLogo, Paper } from '../pages/index.js'
import type { Offer } from './offer.js'
import { closingBlocks } from './sections/closing.js'
import { costBlocks, optionBlocks } from './sections/cost.js'
import { energyBlocks } from './sections/energy.js'
import { assumptionBlocks, equipmentBlocks } from './sections/equipment.js'
import { billBlocks, cashBlocks, savingsBlocks } from './sections/money.js'
import { openingBlocks } from './sections/opening.js'

/** A proposal without a date bears this one in its file, and none on its pages. */
const NO_DATE = '2000-01-01'

/** The paper of an offer, for all its renderers. */
export function proposalPaper(offer: Offer, logo: PageLogo | undefined): Paper {
  const { project, say, textPt } = offer
  const { installer, preparer } = project.parties ?? {}
  const date = project.document?.date
  const subject = say.text('title')
  const foot = [project.title, ...(date === undefined ? [] : [say.date(date)])].join(', ')
  return {
    title: `${subject}: ${project.title}`,
    language: say.locale,
    author: (installer ?? preparer)?.name ?? '',
    subject,
    date: date ?? NO_DATE,
    foot,
    pageWords: (page, pages) => say.text('page', { page: say.number(page), pages: say.number(pages) }),
    textPt,
    logo,
    blocks: [
      ...openingBlocks(offer),
      ...energyBlocks(offer),
      ...billBlocks(offer),
      ...savingsBlocks(offer),
      ...cashBlocks(offer),
      ...costBlocks(offer),
      ...optionBlocks(offer),
      ...equipmentBlocks(offer),
      ...assumptionBlocks(offer),
      ...closingBlocks(offer),
    ],
  }
}
