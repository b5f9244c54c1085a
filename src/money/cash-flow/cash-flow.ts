import type { Finance, Incentive } from '../../project/index.js'
import { savingsAt, type SavingsCurve } from '../bill/index.js'
import type { InvestmentFlows } from '../life-cycle/index.js'
import { outputShare, type FinanceTerms } from './finance-terms.js'
import { incentiveFlows, type IncentiveFlows } from './incentive-flows.js'
import { loanOwed, loanPayments } from './loan-payments.js'
import type { Dollars, KilowattHours, Watts } from '../../values/index.js'

/** What the cash flow of a system is made from. */
export interface CashFlowInput {
  readonly curve: SavingsCurve
  /** Savings that fade of a battery takes from those of the curve, by year from 1, USD at base prices; none when missing. */
  readonly fadeUsd?: readonly Dollars[]
  /** Output of the first year, kWh. */
  readonly firstYearKwh: KilowattHours
  readonly grossCostUsd: Dollars
  readonly dcRatingW: Watts
  readonly finance: Finance
  readonly incentives: Readonly<Record<string, Incentive>>
  readonly terms: FinanceTerms
}

/** One year, in the money that `FinanceTerms.money` says. Costs are positive. */
export interface CashFlowYear {
  readonly year: number
  readonly outputKwh: KilowattHours
  readonly billSavingsUsd: Dollars
  readonly performanceUsd: Dollars
  readonly otherIncomeUsd: Dollars
  readonly maintenanceUsd: Dollars
  readonly insuranceUsd: Dollars
  readonly purchaseUsd: Dollars
  readonly incentivesUsd: Dollars
  readonly replacementUsd: Dollars
  readonly residualUsd: Dollars
  readonly loanReceivedUsd: Dollars
  readonly loanPaymentUsd: Dollars
  /** What is still owed at the end of the study, paid back in its last year. */
  readonly loanPayoffUsd: Dollars
  /** Still owed at the end of the year, after its payments. */
  readonly loanOwedUsd: Dollars
  readonly netUsd: Dollars
}

export interface CashFlow {
  readonly rows: readonly CashFlowYear[]
  readonly flows: InvestmentFlows
  readonly net: readonly number[]
  readonly incentives: IncentiveFlows
}

/**
 * Cash flow of a system, year 0 (purchase) to the end of the study. Flows fall at the end of their year.
 *
 * Costs and savings stated at base-date prices follow inflation (and savings the price index); loans, incentives and
 * payments per kWh are fixed nominal amounts. A loan that outlives the study is settled in its last year, so that no debt is left out.
 */
export function cashFlow(input: CashFlowInput): CashFlow {
  const { finance, terms, curve } = input
  const shares = [0]
  for (let t = 1; t <= terms.years; t++) shares.push(outputShare(terms, t))
  const outputKwh = shares.map((share) => input.firstYearKwh * share)
  const incentives = incentiveFlows(input.incentives, {
    grossCostUsd: input.grossCostUsd,
    dcRatingW: input.dcRatingW,
    outputKwh,
  })
  const payments = finance.loan === undefined ? [] : loanPayments(finance.loan)
  const replaced = new Float64Array(terms.years + 1)
  for (const { year, usd } of finance.replacements ?? []) replaced[year] = (replaced[year] ?? 0) + usd
  const rows: CashFlowYear[] = []
  const flows = { operating: [] as number[], investment: [] as number[] }
  const net: number[] = []
  for (let t = 0; t <= terms.years; t++) {
    const inflated = (1 + terms.inflation) ** t
    const [real, nominal] = terms.money === 'real' ? [1, inflated] : [inflated, 1]
    const yearly = t === 0 ? 0 : real
    const owed = finance.loan === undefined ? 0 : loanOwed(finance.loan, t)
    const row = {
      year: t,
      outputKwh: outputKwh[t] ?? 0,
      billSavingsUsd:
        t === 0
          ? 0
          : (savingsAt(curve, shares[t] ?? 0) - (input.fadeUsd?.[t - 1] ?? 0)) * (terms.priceIndex[t - 1] ?? 1) * real,
      performanceUsd: (incentives.perKwh[t] ?? 0) / nominal,
      otherIncomeUsd: (finance.other_income_usd_per_year ?? 0) * yearly,
      maintenanceUsd: (finance.maintenance_usd_per_year ?? 0) * yearly,
      insuranceUsd: (finance.insurance_usd_per_year ?? 0) * yearly,
      purchaseUsd: t === 0 ? input.grossCostUsd + (finance.loan?.dealer_fee_usd ?? 0) : 0,
      incentivesUsd: (incentives.lumps[t] ?? 0) / nominal,
      replacementUsd: (replaced[t] ?? 0) * real,
      residualUsd: t === terms.years ? (finance.residual_usd ?? 0) * real : 0,
      loanReceivedUsd: t === 0 ? (finance.loan?.principal_usd ?? 0) : 0,
      loanPaymentUsd: t === 0 ? 0 : (payments[t - 1] ?? 0) / nominal,
      loanPayoffUsd: t === terms.years ? owed / nominal : 0,
      loanOwedUsd: t === terms.years ? 0 : owed / nominal,
      netUsd: 0,
    }
    const [operating, investment] = [operatingOf(row), investmentOf(row)]
    row.netUsd = operating - investment
    rows.push(row)
    flows.operating.push(operating)
    flows.investment.push(investment)
    net.push(row.netUsd)
  }
  return { rows, flows, net, incentives }
}

type Row = Omit<CashFlowYear, 'netUsd'>

function operatingOf(row: Row): number {
  return row.billSavingsUsd + row.performanceUsd + row.otherIncomeUsd - row.maintenanceUsd - row.insuranceUsd
}

function investmentOf(row: Row): number {
  const spent = row.purchaseUsd + row.replacementUsd + row.loanPaymentUsd + row.loanPayoffUsd
  return spent - row.incentivesUsd - row.residualUsd - row.loanReceivedUsd
}
