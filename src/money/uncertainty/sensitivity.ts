import { cashFlow, constantIndex, reportedDiscount, type CashFlowInput, type FinanceTerms } from '../cash-flow/index.js'
import { scaledCurve, type SavingsCurve } from '../bill/index.js'
import { netPresentValue } from '../life-cycle/index.js'
import { SHOWN_DISCOUNT_PCT, SHOWN_ESCALATION_PCT } from '../../tables/money/index.js'
import type { Spread } from './monte-carlo.js'

/** Effect of one input on the net present value, all others at their central value. */
export interface SensitivityRow {
  readonly id: string
  readonly says: string
  readonly unit: string
  readonly central: number
  readonly low: number
  readonly high: number
  readonly npvAtLowUsd: number
  readonly npvAtHighUsd: number
  readonly swingUsd: number
  /** Value at which the net present value is zero, within a wide search; undefined when there is none. */
  readonly breakEven: number | undefined
}

/** An input that is varied: what it does to the cash flow. */
interface Lever {
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

export function npvOf(input: CashFlowInput): number {
  return netPresentValue(cashFlow(input).net, reportedDiscount(input.terms))
}

function levers(input: CashFlowInput, spread: Spread): Lever[] {
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

function breakEven(lever: Lever): number | undefined {
  let [a, b] = lever.search
  const at = (value: number): number => npvOf(lever.apply(value))
  const sign = Math.sign(at(a))
  if (a === b || sign === Math.sign(at(b))) return undefined
  for (let i = 0; i < 40; i++) {
    const middle = (a + b) / 2
    if (Math.sign(at(middle)) === sign) a = middle
    else b = middle
  }
  return (a + b) / 2
}

/**
 * Varies one input at a time and sorts by the effect on the net present value. The rows must not be added up.
 *
 * @param exportCurves Savings with export prices at half and at one and a half times, where exports are paid.
 * @source 10 CFR 436.24 allows sensitivity and break-even analysis
 */
export function sensitivity(
  input: CashFlowInput,
  spread: Spread,
  exportCurves?: { readonly half: SavingsCurve; readonly oneAndHalf: SavingsCurve },
): SensitivityRow[] {
  const rows = levers(input, spread).map((lever): SensitivityRow => {
    const npvAtLowUsd = npvOf(lever.apply(lever.low))
    const npvAtHighUsd = npvOf(lever.apply(lever.high))
    const { id, says, unit, central, low, high } = lever
    const swingUsd = Math.abs(npvAtHighUsd - npvAtLowUsd)
    return { id, says, unit, central, low, high, npvAtLowUsd, npvAtHighUsd, swingUsd, breakEven: breakEven(lever) }
  })
  if (exportCurves !== undefined) {
    const npvAtLowUsd = npvOf({ ...input, curve: exportCurves.half })
    const npvAtHighUsd = npvOf({ ...input, curve: exportCurves.oneAndHalf })
    const swingUsd = Math.abs(npvAtHighUsd - npvAtLowUsd)
    const range = { unit: '% of the tariff', central: 100, low: 50, high: 150, breakEven: undefined }
    rows.push({ id: 'export_price', says: 'price paid for exports', ...range, npvAtLowUsd, npvAtHighUsd, swingUsd })
  }
  return rows.sort((a, b) => b.swingUsd - a.swingUsd)
}

/** A text bar for each row, longest first. @param width Characters of the longest bar. */
export function sensitivityBars(rows: readonly SensitivityRow[], width: number): string[] {
  const most = Math.max(...rows.map((row) => row.swingUsd), 1e-9)
  return rows.map((row) => '#'.repeat(Math.round((width * row.swingUsd) / most)))
}
