import type { CashFlow } from '../cash-flow/index.js'
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
  }
}
