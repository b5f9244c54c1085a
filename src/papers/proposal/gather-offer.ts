import { type House, type HouseInput, totalOf } from '../../house/index.js'
import type { BomValues } from '../../materials/index.js'
import type { PaybackValues } from '../../money/index.js'
import { RULE_SETS } from '../../tables/papers/index.js'
import { StageError, Worksheet, type Result } from '../../worksheet/index.js'
import { inCurrency } from '../../report/index.js'
import { speakerOf, type PaperLanguage } from '../words/index.js'
import { cancellationOf } from './cancellation.js'
import { CAUTIOUS } from './cautious.js'
import { costValues, loanValues } from './cost-values.js'
import { judgeDisclosures, missingFindings } from './disclosures.js'
import { billsValues, energyValues } from './energy-values.js'
import { offerFindings } from './offer-findings.js'
import type { Offer } from './offer.js'
import { paybackAtRise, savingsLines } from './price-rise.js'
import type {
  CashYear,
  ChangeValues,
  CostValues,
  OptionValues,
  PaybackLine,
  ProposalValues,
} from './proposal-values.js'
import { sizeValues } from './size-values.js'

export interface OfferWishes {
  readonly language: PaperLanguage
  /** Wins over `proposal.cost_detail`. */
  readonly detail?: CostValues['detail'] | undefined
  /** Other ways to do it, as the stages give them; they are rounded here. */
  readonly options: readonly OptionValues[]
}

/**
 * Everything that a proposal says, from the stages of a house.
 *
 * @throws StageError when price, tariff, use or a part of the energy estimate is missing.
 */
export async function gatherOffer(
  input: HouseInput,
  house: House,
  { language, detail, options }: OfferWishes,
): Promise<{ readonly offer: Offer; readonly result: Result<ProposalValues> }> {
  const { project, files } = input
  refuseContract(project)
  const say = speakerOf(language, project.finance?.currency)
  const stated = project.proposal ?? {}
  const ruleSet = stated.rule_set ?? 'other'
  const rules = RULE_SETS[ruleSet]
  const [payback, run, roof] = [await house.payback(), await house.estimate(), await house.roof()]
  const bom = await pricedBom(house)
  const base = payback.values
  const depth = detail ?? stated.cost_detail ?? 'total'
  const terms = stated.terms ?? (stated.terms_file === undefined ? undefined : files?.get(stated.terms_file))
  const group = (id: string): string => say.text(`group_${id}` as 'group_modules')
  const energy = energyValues(run, base)
  const told: Omit<ProposalValues, 'disclosures'> = {
    rule_set: ruleSet,
    language,
    size: sizeValues(project, run.result.values.rated_kw),
    energy,
    bills: billsValues(base),
    cost: costValues(project, base, bom, depth, group),
    savings: await savingsLines(input, house, base, ruleSet),
    cash: cashYears((await paybackAtRise(input, house, base, undefined, true)).values),
    payback: paybackLine(base),
    changes: changeValues(base),
    loan: loanValues(project, base),
    cancellation: cancellationOf(project, ruleSet, base.gross_cost_usd),
    options:
      options.length === 0
        ? []
        : [thisOption(base, energy.first_year.p50_kwh, say.text('options_this')), ...options].map(rounded),
  }
  const { currency } = project.finance ?? {}
  const values = inCurrency(
    { ...told, disclosures: judgeDisclosures({ project, stated, values: told, terms, say }) },
    currency,
  )
  const { restPt: textPt } = rules
  const offer: Offer = {
    project,
    stated,
    values,
    arrangement: roof.values,
    payback: inCurrency(base, currency),
    yield: run.result.values,
    rules,
    terms,
    say,
    textPt,
  }
  const worksheet = new Worksheet()
  worksheet.include(run.result)
  worksheet.include(payback)
  for (const finding of [...offerFindings(offer), ...missingFindings(values.disclosures)]) worksheet.find(finding)
  return { offer, result: inCurrency(worksheet.result(values), currency) }
}

/** @throws StageError for a lease or a power purchase, whose disclosures are others and are not written. */
function refuseContract({ finance = {} }: HouseInput['project']): void {
  const kind = finance.lease === undefined ? 'power_purchase' : 'lease'
  if (finance[kind] === undefined) return
  throw new StageError(
    `finance.${kind}`,
    `an offer of this program tells a purchase; the disclosures that rules ask of a ${kind === 'lease' ? 'lease (in Nevada NRS 598.9811 and .9812)' : 'sale of energy (PPA; in Nevada NRS 598.9816 to .9818)'} are not written: term, payment of the first year, total of payments, their rise, every fee, insurance, taxes, end of the term and sale of the house`,
    'Write it in its own form; gablewatt payback tells what it saves, and payback --versus sets it beside a purchase.',
  )
}

/** The bill of materials where all of it has a price. */
async function pricedBom(house: House): Promise<BomValues | undefined> {
  try {
    const bom = await house.bom()
    return totalOf(bom) === null ? undefined : bom.values
  } catch (error) {
    if (error instanceof StageError) return undefined
    throw error
  }
}

/** The running sum never looks better than either way of working out its middle. */
function cashYears({ cash_flow: rows, uncertainty }: PaybackValues): CashYear[] {
  return rows.map(({ year, cumulative_usd: central }, index) => {
    const { p10, p50, p90 } = uncertainty.cumulative_usd?.[index] ?? { p10: central, p50: central, p90: central }
    const middle = Math.min(central, p50 ?? central)
    return {
      year,
      p90_usd: CAUTIOUS.gainUsd(Math.min(p90 ?? central, middle)),
      p50_usd: CAUTIOUS.gainUsd(middle),
      p10_usd: CAUTIOUS.gainUsd(Math.max(p10 ?? central, middle)),
    }
  })
}

function paybackLine(values: PaybackValues): PaybackLine {
  const { simple_payback: simple, uncertainty, irr } = values
  const up = (years: number | null): number | null => (years === null ? null : CAUTIOUS.years(years))
  const later = (years: number | null): number | null =>
    years === null || simple.lasting_years === null ? null : Math.max(years, simple.lasting_years)
  const [rate] = irr.rates_pct
  return {
    years: up(simple.lasting_years),
    p90_years: up(later(uncertainty.payback_years.p90)),
    p10_years: up(uncertainty.payback_years.p10),
    study_years: values.years,
    npv_usd: CAUTIOUS.gainUsd(values.npv_usd),
    discount_pct: values.discount_rate_pct,
    irr_pct: irr.kind !== 'one' || rate === undefined ? null : Math.floor(rate * 10) / 10,
  }
}

/** What an offer can leave open: its price is not. */
const CHANGES = [
  'yield',
  'escalation',
  'discount_rate',
  'degradation',
  'maintenance',
  'replacement_year',
  'export_price',
  'own_use',
]
const MOST_CHANGES = 5

function changeValues({ sensitivity }: PaybackValues): ChangeValues[] {
  return sensitivity
    .filter(({ id }) => CHANGES.includes(id))
    .toSorted((a, b) => b.swing_usd - a.swing_usd)
    .slice(0, MOST_CHANGES)
    .map(({ id, unit, low, high, npv_at_low_usd, npv_at_high_usd }) => ({
      id,
      unit,
      low,
      high,
      npv_at_low_usd: CAUTIOUS.gainUsd(npv_at_low_usd),
      npv_at_high_usd: CAUTIOUS.gainUsd(npv_at_high_usd),
    }))
}

function thisOption(values: PaybackValues, middleKwh: number, name: string): OptionValues {
  return {
    name,
    cost_usd: values.net_cost_usd,
    first_year_kwh: middleKwh,
    saved_first_year_usd: values.first_year_savings_usd,
    payback_years: values.simple_payback.lasting_years,
    npv_usd: values.npv_usd,
  }
}

function rounded(option: OptionValues): OptionValues {
  const { payback_years: years } = option
  return {
    name: option.name,
    cost_usd: CAUTIOUS.costUsd(option.cost_usd),
    first_year_kwh: CAUTIOUS.yearKwh(option.first_year_kwh),
    saved_first_year_usd: CAUTIOUS.gainUsd(option.saved_first_year_usd),
    payback_years: years === null ? null : CAUTIOUS.years(years),
    npv_usd: CAUTIOUS.gainUsd(option.npv_usd),
  }
}
