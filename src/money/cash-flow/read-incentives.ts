import type { Incentive } from '../../project/index.js'
import type { Source, Worksheet } from '../../worksheet/index.js'
import type { Dollars, Watts } from '../../values/index.js'

const PRACTICE: Source = { document: '', standing: 'common practice, no source' }
const CREDIT_BASIS: Source = { document: 'IRS FAQ FS-2024-15', place: 'Q4', standing: 'secondary' }

type Kind = Incentive['kind']

const AMOUNT: readonly (keyof Incentive)[] = [
  'cap_usd',
  'year_received',
  'reduces_cost_basis',
  'taxable',
  'marginal_tax_rate_pct',
]
/** Keys that count for a kind, beside those that every incentive has. */
const USED: Readonly<Record<Kind, readonly (keyof Incentive)[]>> = {
  upfront: ['amount_usd', ...AMOUNT],
  per_watt: ['usd_per_w', ...AMOUNT],
  share_of_cost: ['percent', ...AMOUNT],
  per_kwh: ['usd_per_kwh', 'years', 'cap_usd', 'year_received', 'taxable', 'marginal_tax_rate_pct'],
  tax_credit: ['percent', 'cap_usd', 'year_received', 'refundable', 'tax_liability_usd_per_year'],
}
const ALWAYS: readonly (keyof Incentive)[] = ['name', 'kind', 'source', 'checked']

/** What an incentive that does not say is taken to be: the defaults of `incentiveFlows`, each recorded. */
export function readIncentives(
  incentives: Readonly<Record<string, Incentive>>,
  basis: { readonly grossCostUsd: Dollars; readonly dcRatingW: Watts },
  worksheet: Worksheet,
): void {
  const credits = Object.values(incentives).filter(({ kind }) => kind === 'tax_credit')
  const creditShare = credits.reduce((sum, credit) => sum + (credit.percent ?? 0) / 100, 0)
  for (const [id, incentive] of Object.entries(incentives)) {
    const { kind } = incentive
    const assume = (key: keyof Incentive, value: number | string, why: string, source = PRACTICE): void => {
      if (incentive[key] === undefined)
        worksheet.assume({ path: `incentives.${id}.${key}`, value, unit: '', why, source })
    }
    tellUnused(id, incentive, worksheet)
    if (kind === 'tax_credit') {
      assume('year_received', 1, 'a credit is claimed with the return after the year of purchase')
      assume('refundable', 'false', 'a credit is worth no more than the tax that is owed, unless its law pays it out')
      continue
    }
    assume('taxable', 'false', 'it is counted whole; income tax on it would take your marginal rate of it')
    if (kind === 'per_kwh') {
      assume('year_received', 1, 'payments for output begin with the first year of output')
      continue
    }
    assume('year_received', 0, 'it is counted at purchase; one that comes later is worth less')
    if (credits.length === 0) continue
    const lower = creditShare * amountUsd(incentive, basis)
    assume(
      'reduces_cost_basis',
      'false',
      `the tax credit is figured on the cost without subtracting it; if the law has it subtracted, the credit is up to ${lower.toFixed(0)} USD lower`,
      CREDIT_BASIS,
    )
  }
}

/** Amount that arrives once, before tax on it, USD; 0 for a credit or a payment per kWh, or while its amount is missing. */
export function amountUsd(
  incentive: Incentive,
  { grossCostUsd, dcRatingW }: { readonly grossCostUsd: Dollars; readonly dcRatingW: Watts },
): Dollars {
  const whole = {
    upfront: incentive.amount_usd ?? 0,
    per_watt: (incentive.usd_per_w ?? 0) * dcRatingW,
    share_of_cost: ((incentive.percent ?? 0) / 100) * grossCostUsd,
    per_kwh: 0,
    tax_credit: 0,
  }[incentive.kind]
  return Math.min(whole, incentive.cap_usd ?? whole)
}

function tellUnused(id: string, incentive: Incentive, worksheet: Worksheet): void {
  const used = [...ALWAYS, ...USED[incentive.kind]]
  for (const key of Object.keys(incentive) as (keyof Incentive)[]) {
    if (used.includes(key) || incentive[key] === undefined) continue
    worksheet.find({
      severity: 'warning',
      id: 'incentive.key-unused',
      message: `${incentive.name} is of kind ${incentive.kind}, which has no ${key}; the value counts for nothing`,
      where: `incentives.${id}.${key}`,
      fix: 'Remove the key, or correct the kind of the incentive.',
    })
  }
}
