import type { Source } from '../../worksheet/index.js'
import { COOLING_OFF, RULE_SETS } from '../../tables/papers/index.js'
import { PRACTICE, secondary, type Explanations } from './explanation.js'

const UTAH = RULE_SETS.utah.source
const NEVADA = RULE_SETS.nevada.source
const BUREAUS: Source = { document: 'Advice of consumer bureaus on solar advertising', standing: 'from memory' }

/** Findings of written offers. */
export const PROPOSAL: Explanations = {
  'proposal.disclosure-missing': {
    means: 'A point that a written offer must or should tell is not in it.',
    rule: 'Each point names the rule that asks for it, or practice. It is a warning where the chosen rule set asks for it, and a note otherwise.',
    sources: [UTAH, NEVADA, PRACTICE],
    fix: 'State it in the project file; write-proposal --check lists every point with where it stands and who supplies it.',
  },
  'proposal.rules-not-checked': {
    means: 'No state is chosen, so that the offer is held against common points alone.',
    rule: 'States differ in what an offer must tell, in sizes of type and in the right to cancel; only some of their rules are in the tables of this program.',
    sources: [PRACTICE],
    fix: "Choose proposal.rule_set, or check the state's own rules.",
  },
  'proposal.rise-above-cap': {
    means: 'The assumed rise of electricity prices is above what the rules of the state allow in an offer.',
    rule: 'Utah allows 3 % a year. It is compared with the rise in the dollars of the day: that above inflation and inflation together.',
    sources: [UTAH],
    fix: 'Assume less under finance.electricity_escalation_pct.',
  },
  'proposal.savings-shortened': {
    means: 'Savings are told over fewer years than the study has.',
    rule: 'Utah asks for savings over the agreement, at most the useful life of 20 years.',
    sources: [UTAH],
    fix: 'Nothing; the study itself goes on as stated.',
  },
  'proposal.payments-not-price': {
    means: 'The schedule of payments does not add up to the price before incentives.',
    rule: 'The customer owes the price; what an incentive pays later does not lower it until it is paid.',
    sources: [NEVADA],
    fix: 'Mend the payments or the price.',
  },
  'proposal.deposit-above-limit': {
    means: 'The deposit is larger than the state allows.',
    rule: 'California: the lesser of 1,000 USD and 10 % of the price.',
    sources: [secondary('California BPC', '7159.5')],
    fix: 'Ask for less before work or delivery.',
  },
  'proposal.cost-not-itemised': {
    means: 'Costs were to be told by group or line, and there is no bill of materials in which everything has a price.',
    rule: 'Lines without prices would not add up to the price.',
    sources: [PRACTICE],
    fix: 'Name a price list under materials.price_list, or tell the total alone.',
  },
  'proposal.word-to-avoid': {
    means: "A text of the installer's own has a word that promises too much.",
    rule: 'Consumer bureaus take words for what is given away, for bills that vanish and for programmes of the government as deceptive in offers of solar.',
    sources: [BUREAUS],
    fix: 'Say what it costs and what may change.',
  },
  'proposal.not-a-purchase': {
    means:
      'Somebody else than the customer is to own the system, and a written offer of this program is one of a purchase.',
    rule: 'Price, savings and payback are those of who buys, for cash or with a loan. Under a lease or a sale of energy (PPA) the customer pays by month or by kWh, mostly more from year to year, and other disclosures hold; they are not written. What a lease or a PPA saves is told by `gablewatt payback`.',
    sources: [NEVADA, PRACTICE],
    fix: 'Write a lease or PPA in its own form; or state utility_application.ownership: owned.',
  },
  'proposal.prices-by-year': {
    means: 'The project has a price path or later rate sheets, and an offer tells one assumed rise.',
    rule: 'An offer shows savings at an unchanged price, at one assumed rise and a point to either side; a path of its own for each price has no such rise.',
    sources: [PRACTICE],
    fix: 'Take finance.price_path and tariff.later out of the project of the offer.',
  },
  'proposal.own-texts-not-translated': {
    means:
      "An offer in another language than English holds texts of the installer's own, which stand as they were written.",
    rule: 'Only the words of the paper itself are translated. An offer should be in the language in which it was talked over; federal rules ask for the notice of cancelling in it (16 CFR 429.1, from memory).',
    sources: [COOLING_OFF.source, PRACTICE],
    fix: 'Write the texts in the language of the offer, in a project file for it.',
  },
  'proposal.no-seller': {
    means: 'The offer does not say who makes it.',
    rule: 'Rules for such offers ask for name, address, telephone, mail and licence of the seller.',
    sources: [NEVADA],
    fix: 'State parties.installer.',
  },
}
