export { cashFlow, type CashFlow, type CashFlowInput, type CashFlowYear } from './cash-flow.js'
export { constantIndex, outputShare, readFinance, reportedDiscount, type FinanceTerms } from './finance-terms.js'
export { incentiveFlows, type IncentiveBasis, type IncentiveFlows } from './incentive-flows.js'
export { loanPayments } from './loan-payments.js'
