import { cumulativePresentValues } from '../life-cycle/index.js'
import type { CashFlow } from './cash-flow.js'

/**
 * Running sums of the flows less what is still owed on the loan: where the owner would stand after settling it in that
 * year. Without a loan they are the running sums. Money that was borrowed is never counted as earned.
 *
 * @param rate Discount rate of the flows, fraction per year; 0 for plain sums.
 */
export function settledSums(flow: CashFlow, rate: number): number[] {
  return cumulativePresentValues(flow.net, rate).map(
    (sum, t) => sum - (flow.rows[t]?.loanOwedUsd ?? 0) / (1 + rate) ** t,
  )
}
