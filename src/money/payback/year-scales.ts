import { outputShare, type FinanceTerms } from '../cash-flow/index.js'

/** Nodes of the savings curve that make every year of the cash flow exact. */
export function yearScales(terms: FinanceTerms): number[] {
  return Array.from({ length: terms.years }, (_, i) => outputShare(terms, i + 1))
}
