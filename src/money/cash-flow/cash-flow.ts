import type { Finance, Incentive } from '../../project/index.js'
import { savingsAt, type SavingsCurve } from '../bill/index.js'
import type { InvestmentFlows } from '../life-cycle/index.js'
import { outputShare, type FinanceTerms } from './finance-terms.js'
import { incentiveFlows, type IncentiveFlows } from './incentive-flows.js'
import { loanOwed, loanPayments } from './loan-payments.js'
import { contractPayments, guaranteeCredits, isThere, thirdPartyOf, type ThirdParty } from './third-party.js'
import type { Dollars, KilowattHours, Watts } from '../../values/index.js'

/** What the cash flow of a system is made from. */
export interface CashFlowInput {
  readonly curve: SavingsCurve
  /**
   * A curve for each year, year 1 first, in USD of the purchase year with the prices of the year in it, where use, rate sheets or
   * prices change; the index of the terms comes on top.
   */
  readonly curves?: readonly SavingsCurve[]
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
  /** Costs that fall once and replace nothing. */
  readonly oneOffUsd: Dollars
  /** Paid to the owner of the system under a lease or a power purchase. */
  readonly contractUsd: Dollars
  /** Paid when that contract ends, to buy the system or to have it removed. */
  readonly contractEndUsd: Dollars
  /** Credited by the owner for output below the guarantee. */
  readonly guaranteeUsd: Dollars
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
  /** Set when somebody else owns the system. */
  readonly contract: ThirdParty | undefined
}

/** Savings of a year from its own curve, or from the one of all years. */
export function curveOfYear(input: Pick<CashFlowInput, 'curve' | 'curves'>, year: number): SavingsCurve {
  return input.curves?.[year - 1] ?? input.curve
}

/**
 * Cash flow of a system, year 0 (purchase) to the end of the study. Flows fall at the end of their year.
 *
 * Costs and savings stated at base-date prices follow inflation (and savings the price index); loans, incentives and
 * payments per kWh and to the owner of a leased system are fixed nominal amounts. A loan that outlives the study is settled in its last year, so that no debt is left out.
 */
export function cashFlow(input: CashFlowInput): CashFlow {
  const { finance, terms } = input
  const contract = thirdPartyOf(finance)
  const shares = [0]
  for (let t = 1; t <= terms.years; t++) shares.push(isThere(contract, t) ? outputShare(terms, t) : 0)
  const outputKwh = shares.map((share) => input.firstYearKwh * share)
  const incentives = incentiveFlows(input.incentives, {
    grossCostUsd: input.grossCostUsd,
    dcRatingW: input.dcRatingW,
    outputKwh,
  })
  const payments = finance.loan === undefined ? [] : loanPayments(finance.loan)
  const toOwner = contract === undefined ? [] : contractPayments(contract, outputKwh)
  const credits = contract === undefined ? [] : guaranteeCredits(contract, outputKwh)
  const replaced = byYear(terms.years, finance.replacements)
  const oneOff = byYear(terms.years, finance.one_off_costs)
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
        t === 0 || !isThere(contract, t)
          ? 0
          : (savingsAt(curveOfYear(input, t), shares[t] ?? 0) - (input.fadeUsd?.[t - 1] ?? 0)) *
            (terms.priceIndex[t - 1] ?? 1) *
            real,
      performanceUsd: (incentives.perKwh[t] ?? 0) / nominal,
      otherIncomeUsd: (finance.other_income_usd_per_year ?? 0) * yearly,
      maintenanceUsd: (finance.maintenance_usd_per_year ?? 0) * yearly,
      insuranceUsd: (finance.insurance_usd_per_year ?? 0) * yearly,
      purchaseUsd: t === 0 ? input.grossCostUsd + (finance.loan?.dealer_fee_usd ?? 0) : 0,
      incentivesUsd: (incentives.lumps[t] ?? 0) / nominal,
      replacementUsd: (replaced[t] ?? 0) * real,
      oneOffUsd: (oneOff[t] ?? 0) * real,
      contractUsd: (toOwner[t] ?? 0) / nominal,
      contractEndUsd: t === contract?.termYears ? (contract.atEnd?.usd ?? 0) / nominal : 0,
      guaranteeUsd: (credits[t] ?? 0) / nominal,
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
  return { rows, flows, net, incentives, contract }
}

/** Costs added up by year, year 0 first; those after the study are left out. */
function byYear(years: number, costs: readonly { readonly year: number; readonly usd: Dollars }[] = []): Float64Array {
  const sums = new Float64Array(years + 1)
  for (const { year, usd } of costs) sums[year] = (sums[year] ?? 0) + usd
  return sums
}

type Row = Omit<CashFlowYear, 'netUsd'>

function operatingOf(row: Row): number {
  const spent = row.maintenanceUsd + row.insuranceUsd + row.contractUsd
  return row.billSavingsUsd + row.performanceUsd + row.otherIncomeUsd + row.guaranteeUsd - spent
}

function investmentOf(row: Row): number {
  const bought = row.purchaseUsd + row.replacementUsd + row.oneOffUsd + row.contractEndUsd
  const spent = bought + row.loanPaymentUsd + row.loanPayoffUsd
  return spent - row.incentivesUsd - row.residualUsd - row.loanReceivedUsd
}
