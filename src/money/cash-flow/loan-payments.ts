import type { Loan } from '../../project/index.js'

/**
 * Payment of each year of a loan with equal monthly payments.
 *
 * @returns Nominal USD per year, year 1 first.
 * @source Uniform capital recovery with the monthly rate APR/12 and 12 payments a year
 */
export function loanPayments(loan: Loan): number[] {
  const months = loan.term_years * 12
  const rate = loan.apr_pct / 100 / 12
  const factor = rate === 0 ? 1 / months : rate / (1 - (1 + rate) ** -months)
  return Array.from<number>({ length: loan.term_years }).fill(12 * loan.principal_usd * factor)
}
