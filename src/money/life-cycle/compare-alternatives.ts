import { netFlows, savingsToInvestment, adjustedInternalRate, type InvestmentFlows } from './measures.js'
import { paybackYears, type PaybackYears } from './payback-years.js'
import { cumulativePresentValues, netPresentValue } from './present-value.js'
import type { Dollars } from '../../values/index.js'

/** A cost that falls once. */
export interface CostInYear {
  readonly year: number
  readonly usd: Dollars
}

/** Costs of one way to do the job, in constant dollars at base-date prices. */
export interface Alternative {
  readonly investmentUsd: Dollars
  readonly operationUsdPerYear: number
  /** Single costs of operation (cleaning, overhaul). */
  readonly operationOnce: readonly CostInYear[]
  readonly replacements: readonly CostInYear[]
  /** Value left at the end of the study. */
  readonly residualUsd: Dollars
  readonly energyUsdPerYear: number
}

export interface LifeCycleCost {
  readonly investmentUsd: Dollars
  readonly energyUsd: Dollars
  readonly operationUsd: Dollars
  readonly replacementUsd: Dollars
  readonly residualUsd: Dollars
  readonly totalUsd: Dollars
}

export interface Comparison {
  readonly netSavingsUsd: Dollars
  readonly savingsToInvestment: number | undefined
  readonly adjustedInternalRate: number | undefined
  readonly simplePayback: PaybackYears
  readonly discountedPayback: PaybackYears
}

/** Yearly flows of an alternative, year 0 first, USD. */
function flowsOf(
  alternative: Alternative,
  priceIndex: readonly number[],
): {
  energy: number[]
  operation: number[]
  replacement: number[]
  residual: number[]
} {
  const years = priceIndex.length
  const row = (value: (year: number) => number): number[] => Array.from({ length: years + 1 }, (_, t) => value(t))
  const once = (costs: readonly CostInYear[], year: number): number =>
    costs.reduce((all, cost) => all + (cost.year === year ? cost.usd : 0), 0)
  return {
    energy: row((t) => (t === 0 ? 0 : alternative.energyUsdPerYear * (priceIndex[t - 1] ?? 1))),
    operation: row((t) => (t === 0 ? 0 : alternative.operationUsdPerYear + once(alternative.operationOnce, t))),
    replacement: row((t) => once(alternative.replacements, t)),
    residual: row((t) => (t === years ? alternative.residualUsd : 0)),
  }
}

/**
 * Life-cycle cost: investment - residual + operation + replacements + energy, in present worth.
 *
 * @param priceIndex Energy price of each year relative to the base date, year 1 first; its length is the study period.
 * @param rate Real discount rate, fraction per year.
 * @source 10 CFR 436.19
 */
export function lifeCycleCost(alternative: Alternative, priceIndex: readonly number[], rate: number): LifeCycleCost {
  const flows = flowsOf(alternative, priceIndex)
  const energyUsd = netPresentValue(flows.energy, rate)
  const operationUsd = netPresentValue(flows.operation, rate)
  const replacementUsd = netPresentValue(flows.replacement, rate)
  const residualUsd = netPresentValue(flows.residual, rate)
  const { investmentUsd } = alternative
  const totalUsd = investmentUsd + energyUsd + operationUsd + replacementUsd - residualUsd
  return { investmentUsd, energyUsd, operationUsd, replacementUsd, residualUsd, totalUsd }
}

/**
 * What an alternative saves against a base case.
 *
 * @source 10 CFR 436.18 to 436.22
 */
export function compareAlternatives(
  base: Alternative,
  alternative: Alternative,
  priceIndex: readonly number[],
  rate: number,
): Comparison {
  const a = flowsOf(base, priceIndex)
  const b = flowsOf(alternative, priceIndex)
  const at = (row: readonly number[], t: number): number => row[t] ?? 0
  const flows: InvestmentFlows = {
    operating: a.energy.map((usd, t) => usd + at(a.operation, t) - at(b.energy, t) - at(b.operation, t)),
    investment: a.energy.map((_, t) => {
      const first = t === 0 ? alternative.investmentUsd - base.investmentUsd : 0
      return first + at(b.replacement, t) - at(a.replacement, t) - at(b.residual, t) + at(a.residual, t)
    }),
  }
  const net = netFlows(flows)
  const ratio = savingsToInvestment(flows, rate)
  return {
    netSavingsUsd: netPresentValue(net, rate),
    savingsToInvestment: ratio,
    adjustedInternalRate: adjustedInternalRate(ratio, rate, priceIndex.length),
    simplePayback: paybackYears(cumulativePresentValues(net, 0)),
    discountedPayback: paybackYears(cumulativePresentValues(net, rate)),
  }
}
