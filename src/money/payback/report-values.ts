import { SHOWN_DISCOUNT_PCT } from '../../tables/money/index.js'
import { reportedDiscount, settledSums, type CashFlow, type FinanceTerms } from '../cash-flow/index.js'
import {
  cumulativePresentValues,
  netPresentValue,
  nominalRate,
  type InternalRate,
  type PaybackYears,
} from '../life-cycle/index.js'
import { sensitivityBars, type Samples, type SensitivityRow, type Spread } from '../uncertainty/index.js'
import type {
  CashFlowRowValues,
  ExceedanceValues,
  PaybackValues,
  PaybackYearsValues,
  SensitivityValues,
  UncertaintyValues,
} from './payback-values.js'
import type { Worth } from './worth.js'
import { quantile, type Dollars } from '../../values/index.js'

export const cents = (usd: Dollars): number => Math.round(usd * 100) / 100
export const rounded = (value: number, digits: number): number => Number(value.toFixed(digits))
const orNull = (value: number | undefined, digits: number): number | null =>
  value === undefined || !Number.isFinite(value) ? null : rounded(value, digits)

/** Rates and horizon that everything else rests on. */
export function termsValues(terms: FinanceTerms) {
  return {
    money: terms.money,
    years: terms.years,
    discount_rate_pct: rounded(reportedDiscount(terms) * 100, 4),
    real_discount_rate_pct: rounded(terms.realDiscount * 100, 4),
    inflation_pct: rounded(terms.inflation * 100, 4),
    real_escalation_pct: terms.escalation === undefined ? null : rounded(terms.escalation * 100, 4),
  } satisfies Partial<PaybackValues>
}

/** What the cash flow is worth by each measure. */
export function measureValues(flow: CashFlow, terms: FinanceTerms, worth: Worth) {
  const inMoney = (real: number): number => (terms.money === 'real' ? real : nominalRate(real, terms.inflation))
  return {
    simple_payback: paybackYearsValues(worth.simple),
    discounted_payback: paybackYearsValues(worth.discounted),
    npv_usd: cents(worth.npvUsd),
    npv_at: SHOWN_DISCOUNT_PCT.map((percent) => ({
      real_discount_rate_pct: percent,
      npv_usd: cents(netPresentValue(flow.net, inMoney(percent / 100))),
    })),
    irr: internalRateValues(worth.internal),
    sir: worth.savingsToInvestment === undefined ? null : rounded(worth.savingsToInvestment, 3),
    airr_pct: worth.adjustedInternal === undefined ? null : rounded(worth.adjustedInternal * 100, 3),
  } satisfies Partial<PaybackValues>
}

export function paybackYearsValues(years: PaybackYears): PaybackYearsValues {
  return {
    whole_year: years.wholeYear ?? null,
    years: orNull(years.interpolated, 2),
    lasting_years: orNull(years.lasting, 2),
    dips_again_year: years.dipsAgainYear ?? null,
  }
}

export function cashFlowValues(flow: CashFlow, rate: number): CashFlowRowValues[] {
  const cumulative = cumulativePresentValues(flow.net, 0)
  const discounted = cumulativePresentValues(flow.net, rate)
  const settled = settledSums(flow, 0)
  const settledDiscounted = settledSums(flow, rate)
  const hasOneOff = flow.rows.some((row) => row.oneOffUsd !== 0)
  return flow.rows.map((row, t) => ({
    year: row.year,
    output_kwh: rounded(row.outputKwh, 1),
    bill_savings_usd: cents(row.billSavingsUsd),
    performance_usd: cents(row.performanceUsd),
    other_income_usd: cents(row.otherIncomeUsd),
    maintenance_usd: cents(row.maintenanceUsd),
    insurance_usd: cents(row.insuranceUsd),
    purchase_usd: cents(row.purchaseUsd),
    incentives_usd: cents(row.incentivesUsd),
    replacement_usd: cents(row.replacementUsd),
    ...(hasOneOff ? { one_off_usd: cents(row.oneOffUsd) } : {}),
    ...(flow.contract === undefined ? {} : { contract_usd: cents(row.contractUsd + row.contractEndUsd) }),
    ...(flow.contract?.guarantee === undefined ? {} : { guarantee_usd: cents(row.guaranteeUsd) }),
    residual_usd: cents(row.residualUsd),
    loan_received_usd: cents(row.loanReceivedUsd),
    loan_payment_usd: cents(row.loanPaymentUsd),
    loan_payoff_usd: cents(row.loanPayoffUsd),
    loan_owed_usd: cents(row.loanOwedUsd),
    net_usd: cents(row.netUsd),
    cumulative_usd: cents(cumulative[t] ?? 0),
    discounted_cumulative_usd: cents(discounted[t] ?? 0),
    cumulative_less_owed_usd: cents(settled[t] ?? 0),
    discounted_cumulative_less_owed_usd: cents(settledDiscounted[t] ?? 0),
  }))
}

function internalRateValues(found: InternalRate): PaybackValues['irr'] {
  const pct = (rate: number): number => rounded(rate * 100, 3)
  switch (found.kind) {
    case 'one':
      return { kind: 'one', rates_pct: [pct(found.rate)], says: 'one rate makes the present value zero' }
    case 'none':
      return { kind: 'none', rates_pct: [], says: found.why }
    case 'several':
      return {
        kind: 'several',
        rates_pct: found.rates.map(pct),
        says: 'several rates make the present value zero, so none of them is a rate of return; use NPV or AIRR',
      }
  }
}

const exceedance = (sorted: Float64Array, longIsBad: boolean, digits: number): ExceedanceValues => ({
  p10: orNull(quantile(sorted, longIsBad ? 0.1 : 0.9), digits),
  p50: orNull(quantile(sorted, 0.5), digits),
  p90: orNull(quantile(sorted, longIsBad ? 0.9 : 0.1), digits),
})

const NO_PAYBACK: ExceedanceValues = { p10: null, p50: null, p90: null }

/** @param paysBack Whether there is something to pay back: not under a lease or a power purchase. */
export function uncertaintyValues(spread: Spread, samples: Samples, paysBack = true): UncertaintyValues {
  const share = (passes: (value: number) => boolean, of: Float64Array): number =>
    rounded((100 * of.reduce((count, value) => count + (passes(value) ? 1 : 0), 0)) / of.length, 2)
  return {
    seed: spread.seed,
    samples: spread.samples,
    yield_sigma_pct: rounded(spread.yieldSigma * 100, 6),
    weather_sigma_pct: rounded(spread.weatherSigma * 100, 6),
    escalation_sigma_pct: rounded(spread.escalationSigma * 100, 6),
    cost_sigma_pct: rounded(spread.costSigma * 100, 6),
    npv_usd: exceedance(samples.npvUsd, false, 2),
    payback_years: paysBack ? exceedance(samples.paybackYears, true, 2) : NO_PAYBACK,
    never_paid_back_pct: paysBack ? share((years) => years === Infinity, samples.paybackYears) : null,
    npv_below_zero_pct: share((usd) => usd < 0, samples.npvUsd),
    ...(samples.runningUsd.length === 0
      ? {}
      : { cumulative_usd: samples.runningUsd.map((sums) => exceedance(sums, false, 2)) }),
  }
}

export function sensitivityValues(rows: readonly SensitivityRow[]): SensitivityValues[] {
  const bars = sensitivityBars(rows, 30)
  return rows.map((row, i) => ({
    id: row.id,
    says: row.says,
    unit: row.unit,
    central: rounded(row.central, 4),
    low: rounded(row.low, 4),
    high: rounded(row.high, 4),
    npv_at_low_usd: cents(row.npvAtLowUsd),
    npv_at_high_usd: cents(row.npvAtHighUsd),
    swing_usd: cents(row.swingUsd),
    break_even: orNull(row.breakEven, 4),
    bar: bars[i] ?? '',
  }))
}
