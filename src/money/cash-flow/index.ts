export { cashFlow, curveOfYear, type CashFlow, type CashFlowInput, type CashFlowYear } from './cash-flow.js'
export { constantIndex, outputShare, readFinance, reportedDiscount, type FinanceTerms } from './finance-terms.js'
export { incentiveFlows, type IncentiveBasis, type IncentiveFlows } from './incentive-flows.js'
export { readIncentives } from './read-incentives.js'
export { loanOwed, loanPayments } from './loan-payments.js'
export { capLoan, checkLoan } from './loan-limits.js'
export { settledSums } from './settled-sums.js'
export type { PriceParts } from './price-parts.js'
export {
  checkThirdParty,
  contractPayments,
  guaranteedKwh,
  isThere,
  thirdPartyOf,
  type ThirdParty,
} from './third-party.js'
