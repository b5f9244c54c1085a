import { RULE_SETS } from '../../tables/papers/index.js'
import type { Finding } from '../../worksheet/index.js'
import { depositUsd, isPurchase, mostDepositUsd, paymentsAddUp } from './disclosures.js'
import type { Offer } from './offer.js'
import { ownTexts, untranslated } from './own-texts.js'
import { nominalRisePct } from './price-rise.js'

/** Words that consumer bureaus take as deceptive in offers of solar, in English and Spanish. @source consumer bureaus' advice on solar advertising (from memory) */
export const AVOIDED =
  /\b(?:free|no[- ]cost|zero[- ]cost|elimin\w+|government[- ]program(?:me)?|gratis|gratuit\w+|sin costo|programa del gobierno)\b/iu

/** What is wrong with an offer, or doubtful. */
export function offerFindings({ project, stated, values, terms, payback, say }: Offer): Finding[] {
  const found: Finding[] = []
  const { rule_set: ruleSet, cost } = values
  const rules = RULE_SETS[ruleSet]
  if (stated.rule_set === undefined || ruleSet === 'other') {
    found.push({
      severity: 'warning',
      id: 'proposal.rules-not-checked',
      message: 'no rules of a state are chosen, so that only the common points were looked at',
      where: 'proposal.rule_set',
      fix: "Choose proposal.rule_set, or check the state's own rules for written offers of solar.",
    })
  }
  const { ownership } = project.utility_application ?? {}
  const { lease, power_purchase: purchase } = project.finance ?? {}
  if (!isPurchase(project)) {
    const isLease = ownership === 'leased' || lease !== undefined
    found.push({
      severity: 'error',
      id: 'proposal.not-a-purchase',
      message: `the offer tells a purchase, for cash or with a loan, and the system is to be ${isLease ? 'leased' : 'owned by somebody who sells its energy'}; the disclosures of a lease or a PPA are not written`,
      where:
        lease === undefined && purchase === undefined
          ? 'utility_application.ownership'
          : `finance.${isLease ? 'lease' : 'power_purchase'}`,
      fix: "Write a lease or PPA in its own form, with the payments and their rise that your state's rules ask for; or state owned.",
    })
  }
  if (project.finance?.price_path !== undefined || project.tariff?.later !== undefined) {
    found.push({
      severity: 'error',
      id: 'proposal.prices-by-year',
      message: 'the offer tells one rise of prices, and the project has prices that change from year to year',
      where: project.tariff?.later === undefined ? 'finance.price_path' : 'tariff.later',
      fix: 'Write the offer with electricity_escalation_pct alone; payback tells the years.',
    })
  }
  const risePct = nominalRisePct(payback)
  if (rules.mostRisePct !== undefined && (risePct === null || risePct > rules.mostRisePct + 1e-9)) {
    const rise =
      risePct === null ? 'follows a published index' : `is ${risePct.toFixed(2)} % a year in the dollars of the day`
    found.push({
      severity: 'error',
      id: 'proposal.rise-above-cap',
      message: `the assumed rise of electricity prices ${rise}; the rules of ${ruleSet} allow ${rules.mostRisePct} % at the most`,
      where: 'finance.electricity_escalation_pct',
      source: rules.source,
      fix: 'Assume less; the rise above inflation and inflation itself count together.',
    })
  }
  if (values.savings.years < payback.years) {
    found.push({
      severity: 'note',
      id: 'proposal.savings-shortened',
      message: `savings are told over ${values.savings.years} years and not over the ${payback.years} years of the study, as the rules of ${ruleSet} ask`,
      where: 'finance.years',
      source: rules.source,
    })
  }
  if (stated.payments !== undefined && !paymentsAddUp(stated.payments, cost.gross_usd)) {
    const sum = stated.payments.reduce((all, { usd }) => all + usd, 0)
    found.push({
      severity: 'error',
      id: 'proposal.payments-not-price',
      message: `the payments add up to ${sum.toFixed(2)} USD, and the price before incentives is ${cost.gross_usd.toFixed(2)} USD`,
      where: 'proposal.payments',
      fix: 'Mend the payments or the price; what an incentive pays later is due until then.',
    })
  }
  const deposit = depositUsd(stated.payments)
  if (rules.deposit !== undefined && deposit !== undefined) {
    const most = mostDepositUsd(rules.deposit, cost.gross_usd)
    if (deposit > most + 0.005)
      found.push({
        severity: 'error',
        id: 'proposal.deposit-above-limit',
        message: `the deposit is ${deposit.toFixed(2)} USD, and the rules of ${ruleSet} allow ${most.toFixed(2)} USD at the most`,
        where: 'proposal.payments',
        source: rules.source,
        fix: 'Ask for less before work or delivery.',
      })
  }
  if (cost.detail !== 'total' && cost.lines.length === 0) {
    found.push({
      severity: 'warning',
      id: 'proposal.cost-not-itemised',
      message: `the costs cannot be told by ${cost.detail}, because there is no bill of materials with prices`,
      where: 'proposal.cost_detail',
      fix: 'Name a price list under materials.price_list, or tell the total alone.',
    })
  }
  const doubtful = [...ownTexts(stated), ...(terms === undefined ? [] : [['terms', terms] as const])]
  for (const [key, text] of doubtful) {
    const word = AVOIDED.exec(text)?.[0]
    if (word === undefined) continue
    found.push({
      severity: 'warning',
      id: 'proposal.word-to-avoid',
      message: `'${word}' in the text of ${key} is a word that consumer bureaus take as deceptive in offers of solar`,
      where: `proposal.${key}`,
      fix: 'Say what it costs and what may change.',
    })
  }
  const left = untranslated(project, stated, terms)
  if (say.language !== 'en' && left.length > 0) {
    found.push({
      severity: 'note',
      id: 'proposal.own-texts-not-translated',
      message: `texts of your own stand in the offer as you wrote them, and are not translated: ${left.join(', ')}`,
      where: 'proposal',
      fix: 'Write them in the language of the offer, in a project file for it.',
    })
  }
  if (project.parties?.installer === undefined && project.parties?.preparer === undefined) {
    found.push({
      severity: 'warning',
      id: 'proposal.no-seller',
      message: 'the offer names no seller',
      where: 'parties.installer',
      fix: 'State parties.installer with name, address, phone, email and license.',
    })
  }
  return found
}
