import { reportedDiscount, settledSums, type CashFlow, type FinanceTerms } from '../cash-flow/index.js'
import {
  adjustedInternalRate,
  internalRate,
  levelisedCost,
  netPresentValue,
  paybackYears,
  savingsToInvestment,
  type InternalRate,
  type PaybackYears,
} from '../life-cycle/index.js'
import type { Dollars } from '../../values/index.js'

/** What a cash flow is worth. Rates are fractions per year, of the money that the terms say. */
export interface Worth {
  readonly npvUsd: Dollars
  /** Of the flows less what is still owed on the loan, as is the discounted one. */
  readonly simple: PaybackYears
  readonly discounted: PaybackYears
  readonly internal: InternalRate
  readonly savingsToInvestment: number | undefined
  readonly adjustedInternal: number | undefined
  /** Costs less incentives per kWh generated, both discounted with the real rate; real USD. */
  readonly levelisedCostUsdPerKwh: number | undefined
}

/** Costs of the system itself, without bill savings, in real USD, year 0 first. */
export function realCosts(flow: CashFlow, terms: FinanceTerms): number[] {
  return flow.rows.map((row) => {
    const deflate = terms.money === 'real' ? 1 : (1 + terms.inflation) ** -row.year
    return (row.billSavingsUsd - row.netUsd) * deflate
  })
}

/** Works out every measure of a cash flow. */
export function worthOf(flow: CashFlow, terms: FinanceTerms): Worth {
  const rate = reportedDiscount(terms)
  if (flow.contract !== undefined) return worthOfContract(netPresentValue(flow.net, rate))
  const ratio = savingsToInvestment(flow.flows, rate)
  return {
    npvUsd: netPresentValue(flow.net, rate),
    simple: paybackYears(settledSums(flow, 0)),
    discounted: paybackYears(settledSums(flow, rate)),
    internal: internalRate(flow.net),
    savingsToInvestment: ratio,
    adjustedInternal: adjustedInternalRate(ratio, rate, terms.years),
    levelisedCostUsdPerKwh: levelisedCost(
      realCosts(flow, terms),
      flow.rows.map((row) => row.outputKwh),
      terms.realDiscount,
    ),
  }
}

const NO_YEARS: PaybackYears = {
  wholeYear: undefined,
  interpolated: undefined,
  dipsAgainYear: undefined,
  lasting: undefined,
}

/** Nothing is invested under a lease or a power purchase: only the present value of the savings is defined. */
function worthOfContract(npvUsd: Dollars): Worth {
  return {
    npvUsd,
    simple: NO_YEARS,
    discounted: NO_YEARS,
    internal: { kind: 'none', why: 'nothing is invested under a lease or a power purchase' },
    savingsToInvestment: undefined,
    adjustedInternal: undefined,
    levelisedCostUsdPerKwh: undefined,
  }
}
