import type { Finance } from '../../project/index.js'
import {
  DEFAULT_RATES,
  PRICE_INDEX,
  PRICE_INDEX_FIRST_YEAR,
  PRICE_INDEX_SOURCE,
  type PublishedRate,
} from '../../tables/money/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'
import { outputOfYear } from '../../yield/index.js'
import { nominalRate, realRate } from '../life-cycle/index.js'
import { assumeNoCosts } from './running-costs.js'
import { tellLongLoan } from './loan-limits.js'
import { priceParts, type PriceParts } from './price-parts.js'
import type { Percent } from '../../values/index.js'

/** Rates and horizon of a cash flow, every default resolved. Rates are fractions per year. */
export interface FinanceTerms {
  readonly years: number
  readonly money: 'real' | 'nominal'
  readonly realDiscount: number
  readonly inflation: number
  /** Real price of electricity relative to the base year, year 1 first. */
  readonly priceIndex: readonly number[]
  /** Set when the price index is a constant rate. */
  readonly escalation: number | undefined
  readonly degradation: number
  /** Where energy, fixed charges and exports go their own ways. */
  readonly priceParts?: PriceParts
}

/** Discount rate in the money that is reported. */
export function reportedDiscount(terms: FinanceTerms): number {
  return terms.money === 'real' ? terms.realDiscount : nominalRate(terms.realDiscount, terms.inflation)
}

/** Output of year t (1 or later) relative to the first year. */
export function outputShare(terms: FinanceTerms, year: number): number {
  return outputOfYear(terms.degradation, year)
}

/**
 * Resolves rates and horizon, recording every default.
 *
 * @param degradationPct From the project, when `finance` states none.
 * @throws StageError when the published index does not reach the study, escalation is stated twice, or a rate is none.
 */
export function readFinance(finance: Finance, worksheet: Worksheet, degradationPct: Percent | undefined): FinanceTerms {
  refuseNoRates(finance, degradationPct)
  const assume = assumedRate(worksheet)
  const years = finance.years ?? assume('years', DEFAULT_RATES.studyYears)
  assumeNoCosts(finance, years, worksheet)
  tellLongLoan(finance, years, worksheet)
  const money =
    finance.money ??
    worksheet.assume({
      path: 'finance.money',
      value: 'real' as const,
      unit: '',
      why: 'constant dollars keep inflation out of the answer',
      source: { document: '10 CFR 436', standing: 'secondary' },
    })
  const inflation = (finance.inflation_pct ?? assume('inflation_pct', DEFAULT_RATES.inflationPct)) / 100
  const realDiscount = realDiscountOf(finance, { money, inflation }, assume)
  const { escalation, priceIndex } = electricityPrices(finance, years, worksheet)
  const degradationPctPerYear =
    finance.degradation_pct_per_year ??
    degradationPct ??
    assume('degradation_pct_per_year', DEFAULT_RATES.degradationPct)
  const parts = priceParts(finance, priceIndex, worksheet)
  return {
    years,
    money,
    realDiscount,
    inflation,
    priceIndex,
    escalation,
    degradation: degradationPctPerYear / 100,
    ...(parts === undefined ? {} : { priceParts: parts }),
  }
}

type AssumeRate = (key: string, rate: PublishedRate) => number

/** Takes a published rate for one that is not stated, and says so. */
function assumedRate(worksheet: Worksheet): AssumeRate {
  return (key, { value, unit, why, source }) => worksheet.assume({ path: `finance.${key}`, value, unit, why, source })
}

/** A stated rate is of the money that is reported; the published one is real. */
function realDiscountOf(
  { discount_rate_pct: stated }: Finance,
  { money, inflation }: Pick<FinanceTerms, 'money' | 'inflation'>,
  assume: AssumeRate,
): number {
  if (stated === undefined) return assume('discount_rate_pct', DEFAULT_RATES.realDiscountPct) / 100
  return money === 'real' ? stated / 100 : realRate(stated / 100, inflation)
}

/** Prices of electricity by a constant rate, or by the published index when its division is named. */
function electricityPrices(
  finance: Finance,
  years: number,
  worksheet: Worksheet,
): Pick<FinanceTerms, 'escalation' | 'priceIndex'> {
  const { electricity_price_index: division, electricity_escalation_pct: rate } = finance
  if (division === undefined) {
    const assume = assumedRate(worksheet)
    const escalation = (rate ?? assume('electricity_escalation_pct', DEFAULT_RATES.realEscalationPct)) / 100
    return { escalation, priceIndex: constantIndex(escalation, years) }
  }
  if (rate !== undefined) {
    throw new StageError(
      'finance.electricity_escalation_pct',
      'a constant escalation and a published price index are both stated',
      'Keep one of electricity_escalation_pct and electricity_price_index.',
    )
  }
  const baseYear =
    finance.base_year ??
    worksheet.assume({
      path: 'finance.base_year',
      value: PRICE_INDEX_FIRST_YEAR + 1,
      unit: '',
      why: 'the year after the base year of the published index',
      source: PRICE_INDEX_SOURCE,
    })
  return { escalation: undefined, priceIndex: publishedIndex(division, baseYear, years) }
}

/** What the schema lets through is a rate; a caller of the library may hand over anything. */
function refuseNoRates(finance: Finance, degradationPct: Percent | undefined): void {
  const refuse = (key: string, percent: number | undefined, isRate: (percent: number) => boolean): void => {
    if (percent === undefined || isRate(percent)) return
    const message = `${String(percent)} is no rate in percent per year`
    throw new StageError(`finance.${key}`, message, 'State a rate in percent per year, such as 3.')
  }
  const grows = (percent: number): boolean => Number.isFinite(percent) && percent > -100
  refuse('discount_rate_pct', finance.discount_rate_pct, grows)
  refuse('inflation_pct', finance.inflation_pct, grows)
  refuse('electricity_escalation_pct', finance.electricity_escalation_pct, grows)
  refuse(
    'degradation_pct_per_year',
    finance.degradation_pct_per_year ?? degradationPct,
    (percent) => percent >= 0 && percent < 100,
  )
}

export function constantIndex(escalation: number, years: number): number[] {
  return Array.from({ length: years }, (_, i) => (1 + escalation) ** (i + 1))
}

function publishedIndex(
  division: NonNullable<Finance['electricity_price_index']>,
  baseYear: number,
  years: number,
): number[] {
  const row: readonly number[] = PRICE_INDEX[division]
  const base = row[baseYear - PRICE_INDEX_FIRST_YEAR]
  return Array.from({ length: years }, (_, i) => {
    const index = row[baseYear - PRICE_INDEX_FIRST_YEAR + i + 1]
    if (base !== undefined && index !== undefined) return index / base
    throw new StageError(
      'finance.electricity_price_index',
      `the published index ends in ${String(PRICE_INDEX_FIRST_YEAR + row.length - 1)}, before year ${String(i + 1)} of the study`,
      'Study fewer years, or state electricity_escalation_pct.',
    )
  })
}
