import { describe, expect, it } from 'vitest'
import { curveThrough } from '../../src/money/bill/index.js'
import { cashFlow, contractPayments, readFinance, thirdPartyOf } from '../../src/money/cash-flow/index.js'
import { netPresentValue, payback, readTariff } from '../../src/money/index.js'
import type { Finance } from '../../src/project/index.js'
import { StageError, Worksheet } from '../../src/worksheet/index.js'
import { bell, calendar2025, even } from './hours.js'

/*
 * P1 and P2: worked examples of the arithmetic of a power purchase and a lease, computed apart from this program: payment_t = p (1 + e)^(t-1)
 * kWh_t, kWh_t = 8000 (1 - 0.5 %)^(t-1), against a bill that is avoided at 0.17 USD/kWh and rises 2 % a year; flows at the end of a
 * year, 5 %. Published beside them: 0.13 USD/kWh at 2.9 % is 0.258 in year 25 (consumer site, read).
 */
const YEARS = 20
const base: Finance = {
  years: YEARS,
  money: 'nominal',
  discount_rate_pct: 5,
  inflation_pct: 0,
  degradation_pct_per_year: 0.5,
}
const P1: Finance = { ...base, power_purchase: { usd_per_kwh: 0.14, rise_pct_per_year: 2.9, term_years: 20 } }
const P2: Finance = { ...base, lease: { usd_per_month: 95, rise_pct_per_year: 1.9, term_years: 20 } }

const flowOf = (finance: Finance) => {
  const terms = {
    ...readFinance({ ...finance, electricity_escalation_pct: 0 }, new Worksheet(), undefined),
    priceIndex: Array.from({ length: finance.years ?? YEARS }, (_, i) => 1.02 ** i),
  }
  const curve = curveThrough(Float64Array.of(0, 2), (scale) => scale * 0.17 * 8000)
  return cashFlow({ curve, firstYearKwh: 8000, grossCostUsd: 0, dcRatingW: 6000, finance, incentives: {}, terms })
}
const sum = (values: readonly number[]): number => values.reduce((all, each) => all + each, 0)

describe('a power purchase (P1)', () => {
  const { rows, net } = flowOf(P1)

  it('pays what the worked example pays', () => {
    const paid = rows.map((row) => row.contractUsd)
    expect(paid[1]!.toFixed(2)).toBe('1120.00')
    expect(paid[20]!.toFixed(2)).toBe('1752.87')
    expect(sum(paid).toFixed(2)).toBe('28282.56')
  })

  it('avoids, saves and is worth what the worked example says', () => {
    const avoided = rows.map((row) => row.billSavingsUsd)
    expect(avoided[1]!.toFixed(2)).toBe('1360.00')
    expect(avoided[20]!.toFixed(2)).toBe('1801.28')
    expect(sum(avoided).toFixed(2)).toBe('31417.24')
    expect(sum(net).toFixed(2)).toBe('3134.68')
    expect(netPresentValue(net, 0.05).toFixed(2)).toBe('2149.80')
    expect(net.slice(1).every((usd) => usd > 0)).toBe(true)
  })

  it('crosses later than 20 years, as the example notes', () => {
    const long = flowOf({ ...P1, years: 30, power_purchase: { ...P1.power_purchase!, term_years: 30 } })
    // 0.14 * 1.029^n = 0.17 * 1.02^n at n = ln(0.17/0.14) / ln(1.029/1.02) = 22.1, so the 24th year is the first.
    expect(long.net.findIndex((usd) => usd < 0)).toBe(24)
  })

  it('rises as the published check', () => {
    const contract = thirdPartyOf({ power_purchase: { usd_per_kwh: 0.13, rise_pct_per_year: 2.9, term_years: 25 } })!
    expect(contractPayments(contract, [0, ...Array.from<number>({ length: 25 }).fill(1)])[25]).toBeCloseTo(0.25817, 5)
  })
})

describe('a lease (P2)', () => {
  const { rows, net } = flowOf(P2)

  it('pays and is worth what the worked example says', () => {
    const paid = rows.map((row) => row.contractUsd)
    expect(paid[1]!.toFixed(2)).toBe('1140.00')
    expect(paid[20]!.toFixed(2)).toBe('1630.10')
    expect(sum(paid).toFixed(2)).toBe('27424.86')
    expect(netPresentValue(net, 0.05).toFixed(2)).toBe('2537.53')
  })

  it('has payments in money of each year, which weigh less in constant dollars', () => {
    const real = flowOf({ ...P2, money: 'real', inflation_pct: 3, discount_rate_pct: 0 })
    expect(real.rows[20]!.contractUsd).toBeCloseTo(1630.1 / 1.03 ** 20, 2)
  })

  it('saves nothing after the system was taken away, and goes on when it was bought', () => {
    const shorter = (system: 'removed' | 'bought'): Finance => ({
      ...P2,
      lease: { ...P2.lease!, term_years: 10, at_end: { system, usd: 1500 } },
    })
    const removed = flowOf(shorter('removed'))
    expect(removed.rows[10]!.contractEndUsd).toBe(1500)
    expect(removed.net.slice(11)).toEqual(Array.from({ length: 10 }).fill(0))
    expect(flowOf(shorter('bought')).net[11]).toBeCloseTo(rows[11]!.billSavingsUsd, 9)
  })

  it('takes tax on the payments', () => {
    expect(flowOf({ ...P2, lease: { ...P2.lease!, tax_pct: 5 } }).rows[1]!.contractUsd).toBeCloseTo(1140 * 1.05, 9)
  })
})

describe('a guarantee of output', () => {
  const guarantee = { kwh_first_year: 8200, fall_pct_per_year: 0.5, usd_per_kwh_short: 0.15 }
  const withGuarantee = (rest: Partial<typeof guarantee> = {}): Finance => ({
    ...P2,
    lease: { ...P2.lease!, production_guarantee: { ...guarantee, ...rest } },
  })

  it('credits what is missing of each year', () => {
    const [own, plain] = [flowOf(withGuarantee()), flowOf(P2)]
    // 200 kWh of the first year at 0.15 USD, half a percent less from year to year.
    expect(own.rows.map((row) => row.guaranteeUsd)[1]).toBeCloseTo(30, 9)
    const credits = (30 * (1 - 0.995 ** 20)) / 0.005
    expect(sum(own.rows.map((row) => row.guaranteeUsd))).toBeCloseTo(credits, 6)
    expect(sum(own.net) - sum(plain.net)).toBeCloseTo(credits, 6)
    expect(own.rows[0]!.guaranteeUsd).toBe(0)
  })

  it('credits nothing for output above it, nor after the term', () => {
    expect(sum(flowOf(withGuarantee({ kwh_first_year: 8000 })).rows.map((row) => row.guaranteeUsd))).toBeCloseTo(0, 6)
    const short = withGuarantee({ fall_pct_per_year: 0 })
    const { rows } = flowOf({
      ...short,
      lease: { ...short.lease!, term_years: 10, at_end: { system: 'bought', usd: 0 } },
    })
    // 8200 - 8000 * 0.995^9 = 552.8 kWh.
    expect(rows[10]!.guaranteeUsd).toBeCloseTo((8200 - 8000 * 0.995 ** 9) * 0.15, 9)
    expect(rows[11]!.guaranteeUsd).toBe(0)
  })

  it('is in money of each year', () => {
    const real = flowOf({ ...withGuarantee(), money: 'real', inflation_pct: 3, discount_rate_pct: 0 })
    expect(real.rows[1]!.guaranteeUsd).toBeCloseTo(30 / 1.03, 9)
  })
})

describe('payback of a system that somebody else owns', () => {
  const sheet = readTariff({
    name: 'R-1 (invented)',
    energy: { all_year: { usd_per_kwh: 0.17 } },
    rounding: 'total',
    solar: { net_metering: { settle: 'annual', true_up_month: 12 } },
  })
  const run = (finance: Finance, incentives = {}) =>
    payback({
      sheet,
      energy: { kind: 'hourly', usageKwh: even(1), productionKwh: bell(2.5) },
      calendar: calendar2025,
      dcRatingW: 5000,
      finance: { uncertainty: { samples: 100 }, ...finance },
      incentives,
    })

  it('is not defined: saving, first year that costs more, sum and present value are told', () => {
    const { values, findings } = run({ ...P1, power_purchase: { ...P1.power_purchase!, usd_per_kwh: 0.16 } })
    expect(values.simple_payback).toEqual({ whole_year: null, years: null, lasting_years: null, dips_again_year: null })
    expect([values.sir, values.airr_pct, values.lcoe_usd_per_kwh, values.uncertainty.never_paid_back_pct]).toEqual([
      null,
      null,
      null,
      null,
    ])
    expect(values.irr.kind).toBe('none')
    const saving = values.cash_flow.map((row) => row.net_usd)
    const { contract } = values
    expect(contract?.first_year_saving_usd).toBe(saving[1])
    // 0.16 * 1.029^n passes 0.17 at n = 2.1: the fourth year.
    expect(contract?.first_negative_year).toBe(4)
    expect(contract?.saving_usd).toBeCloseTo(sum(saving), 1)
    expect(contract?.saving_present_value_usd).toBe(values.npv_usd)
    expect(findings.map(({ id }) => id)).toContain('payback.contract-costs-more')
    expect(findings.map(({ id }) => id)).not.toContain('payback.never')
  })

  it('lets payments for energy follow the output of every draw', () => {
    const sure = { seed: 1, samples: 200, weather_sigma_pct: 0, escalation_sigma_pct: 0, cost_sigma_pct: 0 }
    const spread = (finance: Finance): number => {
      const { npv_usd: npv } = run({ ...finance, uncertainty: { ...sure, yield_sigma_pct: 10 } }).values.uncertainty
      return npv.p10! - npv.p90!
    }
    // With net metering savings follow the output too: of 0.17 less 0.14 USD/kWh is left, a share of what a lease leaves.
    expect(spread(P1)).toBeLessThan(0.3 * spread(P2))
  })

  const refused = (finance: Finance, incentives = {}): StageError => {
    try {
      run(finance, incentives)
    } catch (error) {
      if (error instanceof StageError) return error
    }
    throw new Error('nothing was refused')
  }

  it.each([
    ['both contracts', { ...P1, lease: P2.lease! }, 'finance.power_purchase'],
    ['a loan', { ...P1, loan: { principal_usd: 1000, apr_pct: 5, term_years: 5 } }, 'finance.loan'],
    ['a price', { ...P1, installed_cost_usd: 15_000 }, 'finance.installed_cost_usd'],
    ['an end within the study without a word', { ...P1, years: 25 }, 'finance.power_purchase.at_end'],
  ] as const)('refuses %s', (_, finance, where) => {
    expect(refused(finance).where).toBe(where)
  })

  it('tells guarantee and prices of buying it, and draws a credit for bad years alone', () => {
    const made = run(P2).values.first_year_kwh
    const sure = { seed: 1, samples: 400, weather_sigma_pct: 0, escalation_sigma_pct: 0, cost_sigma_pct: 0 }
    const uncertainty = { ...sure, yield_sigma_pct: 10 }
    const of = (kwh: number, yieldPct = 10) => {
      const guarantee = { kwh_first_year: kwh, fall_pct_per_year: 0.5, usd_per_kwh_short: 0.15 }
      const lease = { ...P2.lease!, production_guarantee: guarantee, buyout_by_year: [{ after_year: 6, usd: 9000 }] }
      return run({ ...P2, uncertainty: { ...uncertainty, yield_sigma_pct: yieldPct }, lease })
    }
    const plain = run({ ...P2, uncertainty }).values
    const even = of(made).values
    expect(even.contract).toMatchObject({
      guarantee: { first_year_kwh: made, credits_usd: 0 },
      buyout: [{ after_year: 6, usd: 9000 }],
    })
    expect(plain.contract).not.toHaveProperty('guarantee')
    expect(plain.contract).not.toHaveProperty('buyout')
    const { npv_usd: own } = even.uncertainty
    expect(own.p10!).toBeCloseTo(plain.uncertainty.npv_usd.p10!, 0)
    // Of a draw a tenth (1.2816 sigma) below: that share of the output is credited in each year.
    const short = 0.12816 * made * 0.15
    const worth = Array.from({ length: 20 }, (_, i) => (short * 0.995 ** i) / 1.05 ** (i + 1)).reduce((a, b) => a + b)
    expect(own.p90! - plain.uncertainty.npv_usd.p90!).toBeGreaterThan(0.85 * worth)
    expect(own.p90! - plain.uncertainty.npv_usd.p90!).toBeLessThan(1.15 * worth)
    const above = of(made + 100)
    // Draws without any spread are the cash flow: its credits count once.
    const still = of(made + 100, 0).values
    expect(still.uncertainty.npv_usd.p50!).toBeCloseTo(still.npv_usd, 0)
    expect(above.values.contract?.guarantee?.first_short_year).toBe(1)
    // The output is told to a tenth of a kWh, which is 1.5 cents.
    expect(above.values.cash_flow[1]?.guarantee_usd).toBeCloseTo(15, 1)
    expect(above.findings.find(({ id }) => id === 'payback.below-guarantee')?.message).toContain('from year 1 on')
  })

  it.each([
    ['after the term', [{ after_year: 21, usd: 1 }], 'finance.lease.buyout_by_year.0.after_year'],
    [
      'twice',
      [
        { after_year: 6, usd: 2 },
        { after_year: 6, usd: 1 },
      ],
      'finance.lease.buyout_by_year.1.after_year',
    ],
    ['another at its end', [{ after_year: 20, usd: 2 }], 'finance.lease.buyout_by_year.0.usd'],
  ] as const)('refuses a price of buying it %s', (_, buyouts, where) => {
    const lease = { ...P2.lease!, at_end: { system: 'bought' as const, usd: 1 }, buyout_by_year: [...buyouts] }
    expect(refused({ ...P2, lease }).where).toBe(where)
  })

  it('refuses incentives, which go to the owner', () => {
    const town = {
      name: 'Rebate (invented)',
      kind: 'upfront' as const,
      amount_usd: 1,
      source: 'invented',
      checked: '2026-03-02',
    }
    expect(refused(P1, { town }).where).toBe('incentives.town')
  })

  it('tells payments after the study', () => {
    const { findings } = run({ ...P1, years: 15 })
    expect(findings.find(({ id }) => id === 'payback.contract-outlives-study')?.message).toContain('5 more years')
  })

  it('tells the next payment of a lease in cents, the next price of a kWh to a hundredth of one', () => {
    const said = (finance: Finance): string =>
      run(finance).findings.find(({ id }) => id === 'payback.contract-outlives-study')!.message
    // 1140 * 1.019^15 and 0.14 * 1.029^15.
    expect(said({ ...P2, years: 15 })).toContain(', 1511.88 USD a year in the next one')
    expect(said({ ...P1, years: 15 })).toContain(', 0.2150 USD/kWh in the next one')
  })
})
