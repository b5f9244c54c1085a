import { guaranteedKwh, type CashFlow } from '../cash-flow/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { ContractValues } from './payback-values.js'
import { cents } from './report-values.js'

/** @param presentUsd Present value of the net flows, USD. @returns Undefined when the customer owns the system. */
export function contractValues(flow: CashFlow, presentUsd: number, worksheet: Worksheet): ContractValues | undefined {
  const { contract, rows } = flow
  if (contract === undefined) return undefined
  const payments = rows.reduce((sum, row) => sum + row.contractUsd + row.contractEndUsd, 0)
  const saving = rows.reduce((sum, row) => sum + row.netUsd, 0)
  const negative = rows.find((row) => row.netUsd < -0.005)?.year ?? null
  worksheet.step({
    id: 'payback.contract',
    says: `Saving under the ${contract.kind === 'lease' ? 'lease' : 'power purchase'}: bills without less bills with less payments`,
    formula:
      contract.kind === 'lease'
        ? 'saving = sum_{t=1..n} (S_t - 12 * m * (1 + e)^(t - 1))'
        : 'saving = sum_{t=1..n} (S_t - p * (1 + e)^(t - 1) * Q_t)',
    inputs: [
      {
        symbol: contract.kind === 'lease' ? '12 m' : 'p',
        value: contract.firstYearUsd,
        unit: contract.kind === 'lease' ? 'USD in the first year' : 'USD/kWh in the first year',
        from: `finance.${contract.kind}`,
      },
      { symbol: 'e', value: contract.rise, unit: '1/year', from: `finance.${contract.kind}.rise_pct_per_year` },
      { symbol: 'payments', value: payments, unit: 'USD', from: 'cash flow' },
    ],
    result: { symbol: 'saving', value: saving, unit: 'USD' },
    source: { document: 'Arithmetic of the contract as stated', standing: 'project file' },
  })
  if (negative !== null) {
    worksheet.find({
      severity: 'warning',
      id: 'payback.contract-costs-more',
      message: `in year ${String(negative)} the payments are more than the bills go down; over ${String(rows.length - 1)} years the sum is ${saving.toFixed(0)} USD`,
      where: `finance.${contract.kind}.rise_pct_per_year`,
      fix: 'Compare with buying (payback --versus), and ask for a smaller rise.',
    })
  }
  return {
    kind: contract.kind,
    term_years: contract.termYears,
    first_year_payment_usd: cents(rows[1]?.contractUsd ?? 0),
    payments_usd: cents(payments),
    first_year_saving_usd: cents(rows[1]?.netUsd ?? 0),
    first_negative_year: negative,
    saving_usd: cents(saving),
    saving_present_value_usd: cents(presentUsd),
    ...guaranteeValues(flow, worksheet),
    ...(contract.buyouts.length === 0
      ? {}
      : { buyout: contract.buyouts.map(({ afterYear, usd }) => ({ after_year: afterYear, usd: cents(usd) })) }),
  }
}

/** What the guarantee of output is worth by the estimate; what it is worth in bad years is in the draws. */
function guaranteeValues({ contract, rows }: CashFlow, worksheet: Worksheet): Pick<ContractValues, 'guarantee'> {
  if (contract?.guarantee === undefined) return {}
  const { firstYearKwh, fall, usdPerKwh } = contract.guarantee
  const credits = rows.reduce((sum, row) => sum + row.guaranteeUsd, 0)
  const guaranteed = guaranteedKwh(contract, rows.length - 1)
  const first = rows.find(({ year, outputKwh }) => year > 0 && outputKwh < (guaranteed[year] ?? 0))?.year ?? null
  worksheet.step({
    id: 'payback.guarantee',
    says: 'Credited for output below the guarantee, in the money of the cash flow',
    formula: 'credits = sum_{t=1..n} max(0, Q_g * (1 - f)^(t - 1) - Q_t) * p_short',
    inputs: [
      { symbol: 'Q_g', value: firstYearKwh, unit: 'kWh', from: `finance.${contract.kind}.production_guarantee` },
      { symbol: 'f', value: fall, unit: '1/year', from: `finance.${contract.kind}.production_guarantee` },
      { symbol: 'p_short', value: usdPerKwh, unit: 'USD/kWh', from: `finance.${contract.kind}.production_guarantee` },
      { symbol: 'Q_t', value: rows[1]?.outputKwh ?? 0, unit: 'kWh in the first year', from: 'cash flow' },
    ],
    result: { symbol: 'credits', value: credits, unit: 'USD' },
    source: { document: 'Arithmetic of the contract as stated', standing: 'project file' },
  })
  if (first !== null) {
    worksheet.find({
      severity: 'warning',
      id: 'payback.below-guarantee',
      message: `from year ${String(first)} on the estimated output is below what the contract guarantees (${(guaranteed[first] ?? 0).toFixed(0)} kWh in that year); credits of ${credits.toFixed(0)} USD are counted as if each were paid`,
      where: `finance.${contract.kind}.production_guarantee`,
      fix: 'Look at the estimate of the owner: it may stand on more sun, or on less shade, than this roof has.',
    })
  }
  return { guarantee: { first_year_kwh: firstYearKwh, first_short_year: first, credits_usd: cents(credits) } }
}
