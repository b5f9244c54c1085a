import type { Finance, Incentive } from '../../project/index.js'
import { savingsAt, type SavingsCurve } from '../bill/index.js'
import { netFlows, type InvestmentFlows } from '../life-cycle/index.js'
import { outputShare, type FinanceTerms } from './finance-terms.js'
import { incentiveFlows, type IncentiveFlows } from './incentive-flows.js'
import { loanPayments } from './loan-payments.js'

/** What the cash flow of a system is made from. */
export interface CashFlowInput {
  readonly curve: SavingsCurve
  /** Output of the first year, kWh. */
  readonly firstYearKwh: number
  readonly grossCostUsd: number
  readonly dcRatingW: number
  readonly finance: Finance
  readonly incentives: Readonly<Record<string, Incentive>>
  readonly terms: FinanceTerms
}

/** One year, in the money that `FinanceTerms.money` says. Costs are positive. */
export interface CashFlowYear {
  readonly year: number
  readonly outputKwh: number
  readonly billSavingsUsd: number
  readonly performanceUsd: number
  readonly otherIncomeUsd: number
  readonly maintenanceUsd: number
  readonly insuranceUsd: number
  readonly purchaseUsd: number
  readonly incentivesUsd: number
  readonly replacementUsd: number
  readonly residualUsd: number
  readonly loanReceivedUsd: number
  readonly loanPaymentUsd: number
  readonly netUsd: number
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
 * payments per kWh are fixed nominal amounts.
 */
export function cashFlow(input: CashFlowInput): CashFlow {
  const { finance, terms, curve } = input
  const years = Array.from({ length: terms.years + 1 }, (_, t) => t)
  const outputKwh = years.map((t) => (t === 0 ? 0 : input.firstYearKwh * outputShare(terms, t)))
  const incentives = incentiveFlows(input.incentives, {
    grossCostUsd: input.grossCostUsd,
    dcRatingW: input.dcRatingW,
    outputKwh,
  })
  const payments = finance.loan === undefined ? [] : loanPayments(finance.loan)
  const rows = years.map((t): CashFlowYear => {
    const inflated = (1 + terms.inflation) ** t
    const ofReal = (usd: number): number => (terms.money === 'real' ? usd : usd * inflated)
    const ofNominal = (usd: number): number => (terms.money === 'real' ? usd / inflated : usd)
    const yearly = (usd: number | undefined): number => (t === 0 ? 0 : ofReal(usd ?? 0))
    const replaced = (finance.replacements ?? []).reduce((all, one) => all + (one.year === t ? one.usd : 0), 0)
    const row = {
      year: t,
      outputKwh: outputKwh[t] ?? 0,
      billSavingsUsd: t === 0 ? 0 : ofReal(savingsAt(curve, outputShare(terms, t)) * (terms.priceIndex[t - 1] ?? 1)),
      performanceUsd: ofNominal(incentives.perKwh[t] ?? 0),
      otherIncomeUsd: yearly(finance.other_income_usd_per_year),
      maintenanceUsd: yearly(finance.maintenance_usd_per_year),
      insuranceUsd: yearly(finance.insurance_usd_per_year),
      purchaseUsd: t === 0 ? input.grossCostUsd + (finance.loan?.dealer_fee_usd ?? 0) : 0,
      incentivesUsd: ofNominal(incentives.lumps[t] ?? 0),
      replacementUsd: ofReal(replaced),
      residualUsd: t === terms.years ? ofReal(finance.residual_usd ?? 0) : 0,
      loanReceivedUsd: t === 0 ? (finance.loan?.principal_usd ?? 0) : 0,
      loanPaymentUsd: t === 0 ? 0 : ofNominal(payments[t - 1] ?? 0),
    }
    return { ...row, netUsd: operatingOf(row) - investmentOf(row) }
  })
  const flows = { operating: rows.map(operatingOf), investment: rows.map(investmentOf) }
  return { rows, flows, net: netFlows(flows), incentives }
}

type Row = Omit<CashFlowYear, 'netUsd'>

function operatingOf(row: Row): number {
  return row.billSavingsUsd + row.performanceUsd + row.otherIncomeUsd - row.maintenanceUsd - row.insuranceUsd
}

function investmentOf(row: Row): number {
  const spent = row.purchaseUsd + row.replacementUsd + row.loanPaymentUsd
  return spent - row.incentivesUsd - row.residualUsd - row.loanReceivedUsd
}
