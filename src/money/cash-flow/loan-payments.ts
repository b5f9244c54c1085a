import type { Loan } from '../../project/index.js'

/**
 * Payment of each year of a loan with equal monthly payments.
 *
 * @returns Nominal USD per year, year 1 first.
 * @source Uniform capital recovery with the monthly rate APR/12 and 12 payments a year
 */
export function loanPayments(loan: Loan): number[] {
  const { months, rate } = monthly(loan)
  const factor = rate === 0 ? 1 / months : rate / (1 - (1 + rate) ** -months)
  return Array.from<number>({ length: loan.term_years }).fill(12 * loan.principal_usd * factor)
}

/**
 * What is still owed after the payments of so many whole years.
 *
 * @returns Nominal USD; 0 from the end of the term on.
 * @source The principal grown with the monthly rate less the payments grown with it
 */
export function loanOwed(loan: Loan, years: number): number {
  if (years >= loan.term_years) return 0
  const { months, rate } = monthly(loan)
  if (rate === 0) return loan.principal_usd * (1 - (12 * years) / months)
  const whole = (1 + rate) ** months
  return (loan.principal_usd * (whole - (1 + rate) ** (12 * years))) / (whole - 1)
}

function monthly(loan: Loan): { readonly months: number; readonly rate: number } {
  return { months: loan.term_years * 12, rate: loan.apr_pct / 100 / 12 }
}
