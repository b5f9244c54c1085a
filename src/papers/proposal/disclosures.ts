import { DISCLOSURES, RULE_SETS, type Disclosure } from '../../tables/papers/index.js'
import type { Finding } from '../../worksheet/index.js'
import type { WordKey } from '../words/index.js'
import type { Offer } from './offer.js'
import type { DisclosureValues } from './proposal-values.js'

type Facts = Pick<Offer, 'project' | 'stated' | 'terms' | 'say'> & {
  readonly values: Omit<Offer['values'], 'disclosures'>
}

/** Heading under which a point stands, undefined when it is missing, null when it does not apply. */
type Judge = (facts: Facts) => WordKey | undefined | null

const when = (is: boolean, under: WordKey): WordKey | undefined => (is ? under : undefined)
const all = (...parts: readonly unknown[]): boolean => parts.every((part) => part !== undefined && part !== '')

/** Whether nothing says that somebody else will own the system. */
export function isPurchase({ utility_application: application, finance }: Offer['project']): boolean {
  const isOwned = (application?.ownership ?? 'owned') === 'owned'
  return isOwned && finance?.lease === undefined && finance?.power_purchase === undefined
}

/** Where each point stands; a point without a judge does not compile away: a test wants one for each. */
export const DISCLOSURE_JUDGES: Readonly<Record<string, Judge>> = {
  date: ({ project, stated }) => when(all(project.document?.date, stated.number, stated.valid_until), 'title'),
  seller: ({ project }) => {
    const seller = project.parties?.installer ?? project.parties?.preparer
    return when(all(seller?.name, seller?.address, seller?.phone, seller?.email, seller?.license), 'title')
  },
  customer: ({ project }) =>
    when(all(project.parties?.owner?.name, project.site.address ?? project.parties?.owner?.address), 'title'),
  equipment: ({ values }) => when(values.size.equipment.length > 0, 'equipment_title'),
  size: () => 'short_title',
  production: () => 'energy_title',
  degradation: () => 'energy_title',
  losses: () => 'assume_title',
  'own-use': () => 'energy_title',
  tariff: ({ project }) => when(all(project.tariff?.source, project.tariff?.checked), 'bill_title'),
  'export-rule': ({ stated }) => when(all(stated.export_rule), 'bill_title'),
  'bill-by-month': () => 'bill_title',
  savings: () => 'savings_title',
  'rise-basis': ({ stated }) => when(all(stated.escalation_basis), 'savings_title'),
  'rise-cap': ({ values }) => {
    const { mostRisePct } = RULE_SETS[values.rule_set]
    if (mostRisePct === undefined) return null
    const assumed = values.savings.lines.find(({ kind }) => kind === 'assumed')?.rise_pct
    return when(assumed !== null && (assumed ?? 0) <= mostRisePct, 'savings_title')
  },
  price: () => 'cost_title',
  incentives: () => 'cost_title',
  payments: ({ stated, values }) => when(paymentsAddUp(stated.payments, values.cost.gross_usd), 'payments_title'),
  deposit: ({ stated, values }) => {
    const { deposit } = RULE_SETS[values.rule_set]
    if (deposit === undefined) return null
    const paid = depositUsd(stated.payments)
    return when(paid !== undefined && paid <= mostDepositUsd(deposit, values.cost.gross_usd), 'payments_title')
  },
  purchase: ({ project }) => when(isPurchase(project), 'cost_title'),
  finance: ({ values }) => (values.loan === null ? null : 'loan_title'),
  payback: () => 'short_title',
  replacement: ({ project }) => when(project.finance?.replacements !== undefined, 'assume_title'),
  warranties: ({ stated }) => {
    const kinds = new Set(Object.values(stated.warranties ?? {}).map(({ kind }) => kind))
    const needed = ['module_product', 'module_power', 'inverter', 'workmanship', 'roof'] as const
    return when(
      needed.every((kind) => kinds.has(kind)),
      'equipment_title',
    )
  },
  maintenance: ({ stated }) => when(all(stated.maintenance), 'equipment_title'),
  timeline: ({ stated }) => {
    const kinds = new Set((stated.timeline ?? []).map(({ kind }) => kind))
    return when(kinds.has('start') && kinds.has('completion') && kinds.has('permission_to_operate'), 'steps_title')
  },
  interconnection: ({ stated }) => when(all(stated.interconnection_by), 'steps_title'),
  cancellation: ({ values }) => when(typeof values.cancellation?.last_day === 'string', 'cancel_title'),
  'cancel-address': ({ stated }) => when(all(stated.cancel_email, stated.help_phone), 'cancel_title'),
  complaints: ({ stated }) => when(all(stated.complaints), 'more_title'),
  'utility-guide': ({ stated }) => when(stated.offered_by_utility_guide === true, 'more_title'),
  certificates: ({ stated }) => when(all(stated.certificates_owner), 'more_title'),
  lien: ({ stated }) => when(all(stated.lien), 'more_title'),
  roof: ({ stated }) => when(all(stated.roof), 'more_title'),
  insurance: ({ stated }) => when(all(stated.insurance_and_taxes), 'more_title'),
  terms: ({ terms }) => when(all(terms?.trim()), 'terms_title'),
  signatures: () => 'sign_title',
}

/** Every point with where it stands, or that it is missing and who supplies it. */
export function judgeDisclosures(facts: Facts): DisclosureValues[] {
  return DISCLOSURES.map((point) => {
    const under = DISCLOSURE_JUDGES[point.id]?.(facts)
    return {
      id: point.id,
      says: point.says,
      ask: isMust(point, facts) ? 'must' : 'should',
      rule: point.rule,
      state: under === null ? 'does_not_apply' : under === undefined ? 'missing' : 'there',
      stands_under:
        under === null || under === undefined
          ? null
          : facts.say.text(under, { years: String(facts.values.savings.years) }),
      supplied_by: point.supplier,
    }
  })
}

function isMust({ mustIn }: Disclosure, { values }: Facts): boolean {
  return mustIn === 'all' || (mustIn !== 'none' && mustIn.includes(values.rule_set))
}

/** What is missing: a warning where the rules of the state ask for it. */
export function missingFindings(points: readonly DisclosureValues[]): Finding[] {
  return points
    .filter(({ state }) => state === 'missing')
    .map(({ says, ask, rule, supplied_by: by }) => ({
      severity: ask === 'must' ? 'warning' : 'note',
      id: 'proposal.disclosure-missing',
      message: `the offer ${ask} tell, and does not: ${says} (${rule}); supplied by: ${by}`,
      where: 'proposal',
      fix: 'State it in the project file; keys under proposal and parties.',
    }))
}

type Payments = NonNullable<Offer['stated']['payments']>

/** Whether a schedule adds up to the price to the cent. */
export function paymentsAddUp(payments: Payments | undefined, priceUsd: number): boolean {
  if (payments === undefined) return false
  return Math.abs(payments.reduce((sum, { usd }) => sum + usd, 0) - priceUsd) < 0.005
}

export function depositUsd(payments: Payments | undefined): number | undefined {
  return payments?.filter(({ kind }) => kind === 'deposit').reduce((sum, { usd }) => sum + usd, 0)
}

export function mostDepositUsd(
  { usd, sharePct }: { readonly usd: number; readonly sharePct: number },
  priceUsd: number,
): number {
  return Math.min(usd, (priceUsd * sharePct) / 100)
}
