import type { Finance } from '../../project/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'
import { loanOwed } from './loan-payments.js'
import type { Dollars } from '../../values/index.js'

const WHERE = 'finance.loan.principal_usd'

/** Price with the fee of the loan: the most that a loan on the system can be for, USD. */
function mostUsd(finance: Finance, grossCostUsd: Dollars): Dollars {
  return grossCostUsd + (finance.loan?.dealer_fee_usd ?? 0)
}

/**
 * Checks a loan against what it pays for, and tells when it is more than what incentives at purchase leave to pay.
 *
 * @throws StageError for a loan above the price with its dealer fee: the rest would be money for something else, and no
 * part of the system's cash flow.
 */
export function checkLoan(
  finance: Finance,
  grossCostUsd: Dollars,
  incentivesAtPurchaseUsd: Dollars,
  worksheet: Worksheet,
): void {
  const { loan } = finance
  if (loan === undefined) return
  const fee = loan.dealer_fee_usd ?? 0
  const most = mostUsd(finance, grossCostUsd)
  const whole = (usd: Dollars): string => `${usd.toFixed(0)} USD`
  if (loan.principal_usd > most + 0.005) {
    const parts = fee === 0 ? '' : ` (${whole(grossCostUsd)} and a dealer fee of ${whole(fee)})`
    throw new StageError(
      WHERE,
      `the loan of ${whole(loan.principal_usd)} is above the price of ${whole(most)}${parts}`,
      'State at most what the system costs; money that is borrowed for other things is no part of its payback.',
    )
  }
  const over = loan.principal_usd - (most - incentivesAtPurchaseUsd)
  if (over <= 0.005) return
  worksheet.find({
    severity: 'warning',
    id: 'payback.loan-above-need',
    message: `the loan of ${whole(loan.principal_usd)} is ${whole(over)} more than the price less the incentives at purchase; interest is paid on money that is in hand`,
    where: WHERE,
    fix: 'Borrow what the incentives leave to pay, or state the year in which an incentive really arrives (year_received).',
  })
}

/** Tells that a loan runs on after the study, and what is counted for it. */
export function tellLongLoan(finance: Finance, years: number, worksheet: Worksheet): void {
  const { loan } = finance
  if (loan === undefined || loan.term_years <= years) return
  worksheet.find({
    severity: 'warning',
    id: 'payback.loan-outlives-study',
    message: `the loan runs ${String(loan.term_years)} years and the study ${String(years)} years; the ${loanOwed(loan, years).toFixed(0)} USD still owed then are counted as a payment of the last year`,
    where: 'finance.loan.term_years',
    fix: 'Study at least as many years as the loan runs (finance.years).',
  })
}

/** The finance of a size of another price: its loan is at most what the size costs. */
export function capLoan(finance: Finance, grossCostUsd: Dollars): Finance {
  const { loan } = finance
  const most = mostUsd(finance, grossCostUsd)
  if (loan === undefined || loan.principal_usd <= most) return finance
  return { ...finance, loan: { ...loan, principal_usd: most } }
}
