import { fv, npv, pmt } from 'financial'
import { describe, expect, it } from 'vitest'
import { curveThrough } from '../../src/money/bill/index.js'
import { cashFlow, loanOwed, loanPayments, readFinance } from '../../src/money/cash-flow/index.js'
import { chooseSize, payback, readTariff, type PaybackInput } from '../../src/money/index.js'
import { drawCashFlows } from '../../src/money/uncertainty/index.js'
import { worthOf } from '../../src/money/payback/index.js'
import type { Finance, Incentive, Loan } from '../../src/project/index.js'
import { StageError, Worksheet } from '../../src/worksheet/index.js'
import { bell, calendar2025, even } from './hours.js'

const sheet = readTariff({
  name: 'R-1 (invented)',
  energy: { all_year: { usd_per_kwh: 0.2 } },
  rounding: 'line',
  solar: { net_metering: { settle: 'annual', true_up_month: 12 } },
})
const PRICE = 15_000
const plain: Finance = {
  years: 10,
  money: 'nominal',
  discount_rate_pct: 5,
  inflation_pct: 0,
  electricity_escalation_pct: 0,
  degradation_pct_per_year: 0,
  installed_cost_usd: PRICE,
  uncertainty: {
    seed: 1,
    samples: 100,
    yield_sigma_pct: 0,
    weather_sigma_pct: 0,
    escalation_sigma_pct: 0,
    cost_sigma_pct: 0,
  },
}
const input = (change: Finance = {}, incentives: Record<string, Incentive> = {}): PaybackInput => ({
  sheet,
  energy: { kind: 'hourly', usageKwh: even(1), productionKwh: bell(2.5) },
  calendar: calendar2025,
  dcRatingW: 5000,
  finance: { ...plain, ...change },
  incentives,
})
const rebate = (usd: number): Record<string, Incentive> => ({
  town: { name: 'Rebate (invented)', kind: 'upfront', amount_usd: usd, source: 'invented', checked: '2026-03-02' },
})
const long: Loan = { principal_usd: 12_000, apr_pct: 6, term_years: 20, dealer_fee_usd: 0 }
const found = (result: ReturnType<typeof payback>, id: string) => result.findings.find((one) => one.id === id)
const refusal = (run: () => unknown): StageError => {
  try {
    run()
  } catch (error) {
    if (error instanceof StageError) return error
  }
  throw new Error('accepted')
}

describe('what is still owed on a loan', () => {
  it('agrees with a finance library after any number of years, and ends at nothing', () => {
    for (const [apr, term] of [
      [6, 20],
      [7.25, 15],
      [0, 8],
    ] as const) {
      const loan: Loan = { principal_usd: 12_000, apr_pct: apr, term_years: term }
      const payment = pmt(apr / 1200, term * 12, 12_000)
      for (let year = 0; year <= term; year++)
        expect(loanOwed(loan, year)).toBeCloseTo(-fv(apr / 1200, year * 12, payment, 12_000), 6)
      expect(loanOwed(loan, term)).toBe(0)
      expect(loanOwed(loan, term + 3)).toBe(0)
    }
  })

  it('is a table worked by hand: 1,200 USD at 12 % over 1 year, month by month', () => {
    // Payment = 1200 x 0.01 / (1 - 1.01^-12) = 106.6185; the balance after each month in full cents.
    let owed = 1200
    for (let month = 0; month < 12; month++) owed = owed * 1.01 - 106.618_546_414
    expect(owed).toBeCloseTo(0, 5)
    expect(loanPayments({ principal_usd: 1200, apr_pct: 12, term_years: 1 })[0]).toBeCloseTo(12 * 106.618_546_414, 6)
  })
})

describe('a loan that outlives the study', () => {
  const result = payback(input({ loan: long }))
  const last = result.values.cash_flow.at(-1)!

  it('is settled with a payment of what is still owed in the last year', () => {
    const payment = pmt(0.06 / 12, 240, 12_000)
    const owed = -fv(0.06 / 12, 120, payment, 12_000)
    expect(last.loan_payoff_usd).toBeCloseTo(owed, 2)
    expect(last.loan_owed_usd).toBe(0)
    expect(result.values.cash_flow[9]!.loan_owed_usd).toBeCloseTo(-fv(0.06 / 12, 108, payment, 12_000), 2)
    const saved = result.values.first_year_savings_usd
    const flows = [-3000, ...Array.from({ length: 10 }, (_, i) => saved + 12 * payment - (i === 9 ? owed : 0))]
    expect(result.values.npv_usd).toBeCloseTo(npv(0.05, flows), 1)
  })

  it('is told with the amount and the years', () => {
    const told = found(result, 'payback.loan-outlives-study')
    expect(told).toMatchObject({ severity: 'warning', where: 'finance.loan.term_years' })
    expect(told?.message).toContain(`${last.loan_payoff_usd.toFixed(0)} USD`)
    expect(told?.message).toMatch(/20 years.*10 years/u)
    expect(found(payback(input({ loan: { ...long, term_years: 10 } })), 'payback.loan-outlives-study')).toBeUndefined()
  })

  it('at the discount rate costs nothing: the present value is that of a purchase in cash, whatever the term', () => {
    // 12 monthly payments are counted at the end of their year, so the rates agree but for the months: use 0 % for both.
    const cash = payback(input({ discount_rate_pct: 0 })).values.npv_usd
    for (const term_years of [5, 10, 20, 40]) {
      const { npv_usd } = payback(input({ discount_rate_pct: 0, loan: { ...long, apr_pct: 0, term_years } })).values
      expect(npv_usd).toBeCloseTo(cash, 1)
    }
  })

  it('is deflated in real money, so that both kinds of money agree', () => {
    const real = payback(input({ money: 'real', discount_rate_pct: 3, inflation_pct: 2.5, loan: long })).values
    const nominal = payback(
      input({ discount_rate_pct: (1.03 * 1.025 - 1) * 100, inflation_pct: 2.5, loan: long }),
    ).values
    expect(real.npv_usd).toBeCloseTo(nominal.npv_usd, 1)
    expect(real.cash_flow[10]!.loan_payoff_usd).toBeCloseTo(nominal.cash_flow[10]!.loan_payoff_usd / 1.025 ** 10, 1)
  })
})

describe('payback with a loan', () => {
  const whole: Loan = { principal_usd: PRICE, apr_pct: 6, term_years: 15, dealer_fee_usd: 0 }

  it('wholly on credit is not paid back at once, but when savings have paid price and interest', () => {
    const { values } = payback(input({ years: 25, loan: whole }))
    const cash = payback(input({ years: 25 })).values
    expect(values.simple_payback.years).toBeGreaterThan(cash.simple_payback.years ?? Infinity)
    // By hand: the sum of the flows less what is owed, year by year, until it is above zero.
    const saved = values.first_year_savings_usd
    const payment = 12 * pmt(0.06 / 12, 180, PRICE)
    const position = Array.from(
      { length: 26 },
      (_, t) => t * saved + Math.min(t, 15) * payment + (t < 15 ? fv(0.06 / 12, t * 12, payment / 12, PRICE) : 0),
    )
    expect(position[0]).toBeCloseTo(-PRICE, 6)
    const year = position.findIndex((usd) => usd >= 0)
    expect(values.simple_payback.whole_year).toBe(year)
    const before = position[year - 1]!
    expect(values.simple_payback.years).toBeCloseTo(year - 1 + -before / (position[year]! - before), 2)
    expect(values.cash_flow[4]!.cumulative_less_owed_usd).toBeCloseTo(position[4]!, 1)
  })

  it('costs nothing extra without interest: the payback is that of cash', () => {
    const of = (loan?: Loan) => payback(input(loan === undefined ? {} : { loan })).values.simple_payback
    expect(of({ ...whole, apr_pct: 0 })).toEqual(of())
    expect(of({ ...whole, apr_pct: 0, principal_usd: 4000, term_years: 30 })).toEqual(of())
  })

  it('the drawn paybacks follow the same definition', () => {
    const finance: Finance = { ...plain, years: 25, loan: whole }
    const terms = readFinance(finance, new Worksheet(), undefined)
    const base = {
      curve: curveThrough(Float64Array.of(0, 2), (scale) => scale * 2200),
      firstYearKwh: 8000,
      grossCostUsd: PRICE,
      dcRatingW: 6000,
      finance,
      incentives: {},
      terms,
    }
    const flow = cashFlow(base)
    const none = { seed: 1, samples: 3, yieldSigma: 0, weatherSigma: 0, escalationSigma: 0, costSigma: 0 }
    const { paybackYears } = drawCashFlows(base, flow, none)
    expect(paybackYears[0]).toBeCloseTo(worthOf(flow, terms).simple.lasting ?? Number.NaN, 9)
    expect(paybackYears[0]).toBeGreaterThan(6)
  })

  it('says in words what payback means', () => {
    expect(payback(input({ loan: whole })).values.payback_means).toContain('still owed on the loan')
    expect(payback(input()).values.payback_means).not.toContain('loan')
  })

  it('a loan above the price with its fee is refused, whole price and fee are taken', () => {
    const error = refusal(() => payback(input({ loan: { ...whole, principal_usd: 15_601, dealer_fee_usd: 600 } })))
    expect(error.where).toBe('finance.loan.principal_usd')
    expect(error.message).toBe(
      'the loan of 15601 USD is above the price of 15600 USD (15000 USD and a dealer fee of 600 USD)',
    )
    payback(input({ loan: { ...whole, principal_usd: 15_600, dealer_fee_usd: 600 } }))
  })

  it('a loan above what the incentives at purchase leave to pay is told', () => {
    const over = found(payback(input({ loan: whole }, rebate(2000))), 'payback.loan-above-need')
    expect(over?.message).toContain('2000 USD more than')
    expect(
      found(payback(input({ loan: { ...whole, principal_usd: 13_000 } }, rebate(2000))), 'payback.loan-above-need'),
    ).toBeUndefined()
  })
})

describe('sizes with a loan', () => {
  const sizes = (loan?: Loan) =>
    chooseSize({
      sheet,
      usageKwh: even(1),
      calendar: calendar2025,
      candidates: [4, 8].map((modules) => ({
        modules,
        productionKwh: bell(modules / 4),
        grossCostUsd: modules * 1500,
        dcRatingW: modules * 400,
      })),
      stoppedBy: 'the roof',
      finance: { ...plain, years: 25, ...(loan === undefined ? {} : { loan }) },
      incentives: {},
    })

  it('no size borrows more than its price, and that is told', () => {
    const result = sizes({ principal_usd: 12_000, apr_pct: 0, term_years: 10, dealer_fee_usd: 0 })
    expect(result.values.sizes.map((row) => row.payback_years)).toEqual(
      sizes().values.sizes.map((row) => row.payback_years),
    )
    // Both sizes cost the same per kWh, so wholly on credit they are paid back at the same time.
    const dear = sizes({ principal_usd: 12_000, apr_pct: 6, term_years: 15, dealer_fee_usd: 0 }).values.sizes
    expect(dear[0]?.payback_years).toBeCloseTo(dear[1]?.payback_years ?? Number.NaN, 1)
    expect(result.findings.find((one) => one.id === 'size.loan-capped')?.message).toContain('4 modules')
    expect(sizes().findings.some((one) => one.id === 'size.loan-capped')).toBe(false)
  })

  it('the payback of a size counts the loan', () => {
    const [small] = sizes({ principal_usd: 6000, apr_pct: 8, term_years: 20, dealer_fee_usd: 0 }).values.sizes
    expect(small?.payback_years).toBeGreaterThan(sizes().values.sizes[0]?.payback_years ?? Infinity)
  })
})
