import type { Finance } from '../../project/index.js'
import { NO_RUNNING_COSTS } from '../../tables/money/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { thirdPartyOf } from './third-party.js'

/** Records each cost and income that the project does not state and that is therefore counted as none. */
export function assumeNoCosts(finance: Finance, years: number, worksheet: Worksheet): void {
  const isOwned = thirdPartyOf(finance) === undefined
  for (const { key, value, unit, why, source } of isOwned ? NO_RUNNING_COSTS : []) {
    if (finance[key] === undefined) worksheet.assume({ path: `finance.${key}`, value, unit, why, source })
  }
  if (finance.loan !== undefined && finance.loan.dealer_fee_usd === undefined) {
    worksheet.assume({
      path: 'finance.loan.dealer_fee_usd',
      value: 0,
      unit: 'USD',
      why: 'no fee is added to the price for the loan; a loan at a low rate often has one',
      source: { document: '', standing: 'common practice, no source' },
    })
  }
  for (const key of ['replacements', 'one_off_costs'] as const) {
    for (const { name, year, usd } of finance[key] ?? []) {
      if (year <= years) continue
      worksheet.find({
        severity: 'note',
        id: key === 'replacements' ? 'payback.replacement-after-study' : 'payback.cost-after-study',
        message: `${name} in year ${String(year)} (${String(usd)} USD) is after the study of ${String(years)} years and is not counted`,
        where: `finance.${key}`,
      })
    }
  }
}
