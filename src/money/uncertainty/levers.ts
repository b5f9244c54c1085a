import { SHOWN_DISCOUNT_PCT, SHOWN_ESCALATION_PCT } from '../../tables/money/index.js'
import { scaledCurve } from '../bill/index.js'
import { constantIndex, type CashFlowInput, type FinanceTerms } from '../cash-flow/index.js'
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
  const { terms, finance } = input
  const withTerms = (change: Partial<FinanceTerms>): CashFlowInput => ({ ...input, terms: { ...terms, ...change } })
  const sigma = Math.sqrt(spread.yieldSigma ** 2 + spread.weatherSigma ** 2 / terms.years)
  const shown = SHOWN_DISCOUNT_PCT
  const all: Lever[] = [
    {
      id: 'yield',
      says: `output, P90 to P10 of the mean of ${String(terms.years)} years`,
      unit: '% of the estimate',
      central: 100,
      low: 100 * (1 - Z90 * sigma),
      high: 100 * (1 + Z90 * sigma),
      search: [1, 150],
      apply: (percent) => ({
        ...input,
        curve: scaledCurve(input.curve, percent / 100),
        firstYearKwh: (input.firstYearKwh * percent) / 100,
      }),
    },
    {
      id: 'discount_rate',
      says: 'real discount rate',
      unit: '%/year',
      central: terms.realDiscount * 100,
      low: shown[0],
      high: shown[2],
      search: [-5, 50],
      apply: (percent) => withTerms({ realDiscount: percent / 100 }),
    },
    {
      id: 'degradation',
      says: 'loss of output per year, half to double',
      unit: '%/year',
      central: terms.degradation * 100,
      low: terms.degradation * 50,
      high: terms.degradation * 200,
      search: [0, 10],
      apply: (percent) => withTerms({ degradation: percent / 100 }),
    },
    {
      id: 'installed_cost',
      says: 'installed cost, 10 % less to 10 % more',
      unit: 'USD',
      central: input.grossCostUsd,
      low: input.grossCostUsd * 0.9,
      high: input.grossCostUsd * 1.1,
      search: [0, input.grossCostUsd * 5],
      apply: (usd) => ({ ...input, grossCostUsd: usd }),
    },
  ]
  if (terms.escalation !== undefined) {
    all.push({
      id: 'escalation',
      says: 'real change of electricity prices',
      unit: '%/year',
      central: terms.escalation * 100,
      low: SHOWN_ESCALATION_PCT.low,
      high: SHOWN_ESCALATION_PCT.high,
      search: [-20, 30],
      apply: (percent) => withTerms({ priceIndex: constantIndex(percent / 100, terms.years) }),
    })
  }
  if (terms.escalation === undefined) {
    all.push({
      id: 'escalation_added',
      says: 'real change of electricity prices on top of the published index',
      unit: '%/year',
      central: 0,
      low: SHOWN_ESCALATION_PCT.low,
      high: SHOWN_ESCALATION_PCT.high,
      search: [-20, 30],
      apply: (percent) =>
        withTerms({ priceIndex: terms.priceIndex.map((index, i) => index * (1 + percent / 100) ** (i + 1)) }),
    })
  }
  const maintenance = finance.maintenance_usd_per_year ?? 0
  if (maintenance > 0) {
    all.push({
      id: 'maintenance',
      says: 'maintenance, half to double',
      unit: 'USD/year',
      central: maintenance,
      low: maintenance / 2,
      high: maintenance * 2,
      search: [0, maintenance * 50],
      apply: (usd) => ({ ...input, finance: { ...finance, maintenance_usd_per_year: usd } }),
    })
  }
  const replacements = finance.replacements ?? []
  const first = replacements.reduce((year, one) => Math.min(year, one.year), Infinity)
  if (replacements.length > 0) {
    const shifted = (by: number): CashFlowInput => ({
      ...input,
      finance: { ...finance, replacements: replacements.map((one) => ({ ...one, year: Math.max(1, one.year + by) })) },
    })
    all.push({
      id: 'replacement_year',
      says: 'year of the first replacement, all shifted by 5 years',
      unit: 'year',
      central: first,
      low: Math.max(1, first - 5),
      high: first + 5,
      search: [first, first],
      apply: (year) => shifted(year - first),
    })
  }
  return all
}
