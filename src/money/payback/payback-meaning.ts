import type { Finance } from '../../project/index.js'
import { thirdPartyOf } from '../cash-flow/index.js'

/** What a time of payback counts, for a person. @source 10 CFR 436.18(d), the loan added */
export function paybackMeaning(finance: Finance): string {
  if (thirdPartyOf(finance) !== undefined) {
    return 'not defined, as nothing is invested: look at the saving of the first year, the first year in which the payments are more than it, and the sum'
  }
  const spent =
    finance.loan === undefined
      ? 'the whole price less incentives, and upkeep and replacements so far'
      : 'the whole price less incentives, the interest and fees of the loan, and upkeep and replacements so far; what is still owed on the loan counts as not yet paid'
  return `years until the savings have paid for good: ${spent}`
}
