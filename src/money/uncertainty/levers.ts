import { SHOWN_DISCOUNT_PCT, SHOWN_ESCALATION_PCT } from '../../tables/money/index.js'
import { scaledCurve } from '../bill/index.js'
import { constantIndex, thirdPartyOf, type CashFlowInput, type FinanceTerms } from '../cash-flow/index.js'
import type { Spread } from './monte-carlo.js'

/** An input that is varied: what it does to the cash flow. */
export interface Lever {
  readonly id: string
  readonly says: string
  readonly unit: string
  readonly central: number
  readonly low: number
  readonly high: number
  readonly search: readonly [number, number]
  readonly apply: (value: number) => CashFlowInput
}

/** Standard normal deviate of P90. */
const Z90 = 1.2816

/** The inputs that are varied, each with its stated low and high. */
export function levers(input: CashFlowInput, spread: Spread): Lever[] {
  return [
    output(input, spread),
    discountRate(input),
    degradation(input),
    ...(thirdPartyOf(input.finance) === undefined ? [installedCost(input)] : []),
    input.terms.escalation === undefined ? escalationAdded(input) : escalation(input, input.terms.escalation),
    ...maintenance(input),
    ...replacements(input),
  ]
}

function withTerms(input: CashFlowInput, change: Partial<FinanceTerms>): CashFlowInput {
  return { ...input, terms: { ...input.terms, ...change } }
}

function output(input: CashFlowInput, spread: Spread): Lever {
  const { years } = input.terms
  const sigma = Math.sqrt(spread.yieldSigma ** 2 + spread.weatherSigma ** 2 / years)
  return {
    id: 'yield',
    says: `output, P90 to P10 of the mean of ${String(years)} years`,
    unit: '% of the estimate',
    central: 100,
    low: 100 * (1 - Z90 * sigma),
    high: 100 * (1 + Z90 * sigma),
    search: [1, 150],
    apply: (percent) => ({
      ...input,
      curve: scaledCurve(input.curve, percent / 100),
      ...(input.curves === undefined ? {} : { curves: input.curves.map((curve) => scaledCurve(curve, percent / 100)) }),
      firstYearKwh: (input.firstYearKwh * percent) / 100,
    }),
  }
}

function discountRate(input: CashFlowInput): Lever {
  return {
    id: 'discount_rate',
    says: 'real discount rate',
    unit: '%/year',
    central: input.terms.realDiscount * 100,
    low: SHOWN_DISCOUNT_PCT[0],
    high: SHOWN_DISCOUNT_PCT[2],
    search: [-5, 50],
    apply: (percent) => withTerms(input, { realDiscount: percent / 100 }),
  }
}

function degradation(input: CashFlowInput): Lever {
  const { degradation: share } = input.terms
  return {
    id: 'degradation',
    says: 'loss of output per year, half to double',
    unit: '%/year',
    central: share * 100,
    low: share * 50,
    high: share * 200,
    search: [0, 10],
    apply: (percent) => withTerms(input, { degradation: percent / 100 }),
  }
}

function installedCost(input: CashFlowInput): Lever {
  const { grossCostUsd } = input
  return {
    id: 'installed_cost',
    says: 'installed cost, 10 % less to 10 % more',
    unit: 'USD',
    central: grossCostUsd,
    low: grossCostUsd * 0.9,
    high: grossCostUsd * 1.1,
    search: [0, grossCostUsd * 5],
    apply: (usd) => ({ ...input, grossCostUsd: usd }),
  }
}

function escalation(input: CashFlowInput, share: number): Lever {
  return {
    id: 'escalation',
    says: 'real change of electricity prices',
    unit: '%/year',
    central: share * 100,
    low: SHOWN_ESCALATION_PCT.low,
    high: SHOWN_ESCALATION_PCT.high,
    search: [-20, 30],
    apply: (percent) => withTerms(input, { priceIndex: constantIndex(percent / 100, input.terms.years) }),
  }
}

function escalationAdded(input: CashFlowInput): Lever {
  const { priceIndex } = input.terms
  return {
    id: 'escalation_added',
    says: `real change of electricity prices on top of ${input.curves === undefined ? 'the published index' : 'the prices of each year'}`,
    unit: '%/year',
    central: 0,
    low: SHOWN_ESCALATION_PCT.low,
    high: SHOWN_ESCALATION_PCT.high,
    search: [-20, 30],
    apply: (percent) =>
      withTerms(input, { priceIndex: priceIndex.map((index, i) => index * (1 + percent / 100) ** (i + 1)) }),
  }
}

function maintenance(input: CashFlowInput): Lever[] {
  const { finance } = input
  const usdPerYear = finance.maintenance_usd_per_year ?? 0
  if (usdPerYear <= 0) return []
  return [
    {
      id: 'maintenance',
      says: 'maintenance, half to double',
      unit: 'USD/year',
      central: usdPerYear,
      low: usdPerYear / 2,
      high: usdPerYear * 2,
      search: [0, usdPerYear * 50],
      apply: (usd) => ({ ...input, finance: { ...finance, maintenance_usd_per_year: usd } }),
    },
  ]
}

function replacements(input: CashFlowInput): Lever[] {
  const { finance } = input
  const planned = finance.replacements ?? []
  if (planned.length === 0) return []
  const first = planned.reduce((year, one) => Math.min(year, one.year), Infinity)
  const shifted = (by: number): CashFlowInput => ({
    ...input,
    finance: { ...finance, replacements: planned.map((one) => ({ ...one, year: Math.max(1, one.year + by) })) },
  })
  return [
    {
      id: 'replacement_year',
      says: 'year of the first replacement, all shifted by 5 years',
      unit: 'year',
      central: first,
      low: Math.max(1, first - 5),
      high: first + 5,
      search: [first, first],
      apply: (year) => shifted(year - first),
    },
  ]
}
