import * as fc from '../fast-check.js'
import { irr, npv } from 'financial'
import { describe, expect, it } from 'vitest'
import {
  internalRate,
  modifiedUniformPresentValue,
  payback,
  paybackYears,
  readTariff,
  type PaybackInput,
} from '../../src/money/index.js'
import type { Finance, Incentive } from '../../src/project/index.js'
import { shiftUse } from '../../src/money/payback/shift-use.js'
import { bell, calendar2025, even, total } from './hours.js'

const sheet = readTariff({
  name: 'R-1 (invented)',
  energy: { all_year: { usd_per_kwh: 0.2 } },
  rounding: 'line',
  solar: { net_metering: { settle: 'annual', true_up_month: 12 } },
})
const finance: Finance = {
  years: 25,
  discount_rate_pct: 3,
  inflation_pct: 2,
  electricity_escalation_pct: 0,
  degradation_pct_per_year: 0.5,
  installed_cost_usd: 15_000,
  replacements: [{ name: 'inverter', year: 13, usd: 1500 }],
  uncertainty: {
    seed: 7,
    samples: 2000,
    yield_sigma_pct: 8,
    weather_sigma_pct: 4,
    escalation_sigma_pct: 1,
    cost_sigma_pct: 5,
  },
}
const input = (change: Finance = {}, incentives: Record<string, Incentive> = {}): PaybackInput => ({
  sheet,
  energy: { kind: 'hourly', usageKwh: even(1), productionKwh: bell(2.5) },
  calendar: calendar2025,
  dcRatingW: 5000,
  finance: { ...finance, ...change },
  incentives,
})
const rebate = (usd: number): Record<string, Incentive> => ({
  town: { name: 'Rebate (invented)', kind: 'upfront', amount_usd: usd, source: 'invented', checked: '2026-03-02' },
})
const ids = (result: { findings: readonly { id: string }[] }): string[] => result.findings.map((finding) => finding.id)

describe('payback', () => {
  const result = payback(input())
  const { values } = result
  const net = values.cash_flow.map((row) => row.net_usd)

  it('agrees with a finance library on the flows that it prints', () => {
    // Flows are printed to the cent: 26 flows x half a cent.
    expect(Math.abs(values.npv_usd - npv(0.03, net))).toBeLessThan(0.13)
    expect(values.irr.kind).toBe('one')
    expect(values.irr.rates_pct[0]).toBeCloseTo(irr(net) * 100, 3)
  })

  it('is the closed form where nothing but degradation moves', () => {
    const simple = payback(input({ replacements: [] })).values
    const saved = simple.first_year_savings_usd
    const factor = modifiedUniformPresentValue(0.03, -0.005, 25) / 0.995
    // Yearly bills are rounded to the cent: at most 25 x 12 x half a cent.
    expect(Math.abs(simple.npv_usd - (saved * factor - 15_000))).toBeLessThan(1.5)
    expect(simple.lcoe_usd_per_kwh).toBeCloseTo(15_000 / (simple.first_year_kwh * factor), 4)
    expect(simple.sir).toBeCloseTo((saved * factor) / 15_000, 3)
    expect(simple.airr_pct).toBeCloseTo((1.03 * ((saved * factor) / 15_000) ** (1 / 25) - 1) * 100, 2)
  })

  it('shows the worth at 0, 3 and 7 % real, the middle one being its own', () => {
    expect(values.npv_at.map((one) => one.real_discount_rate_pct)).toEqual([0, 3, 7])
    expect(values.npv_at[1]!.npv_usd).toBe(values.npv_usd)
    expect(values.npv_at[0]!.npv_usd).toBeGreaterThan(values.npv_usd)
  })

  it('assumes no incentive and says why', () => {
    const note = result.findings.find((finding) => finding.id === 'incentive.none-assumed')
    expect(note?.message).toContain('2025-12-31')
    expect(values.incentives_usd).toBe(0)
    expect(ids(payback(input({}, rebate(1000))))).toContain('incentive.unchecked')
  })

  it('sorts the sensitivity by effect, with bars and break-even values that break even', () => {
    const swings = values.sensitivity.map((row) => row.swing_usd)
    expect(swings).toEqual([...swings].sort((a, b) => b - a))
    expect(values.sensitivity[0]!.bar.length).toBe(30)
    const cost = values.sensitivity.find((row) => row.id === 'installed_cost')!
    expect(Math.abs(payback(input({ installed_cost_usd: cost.break_even ?? 0 })).values.npv_usd)).toBeLessThan(0.05)
    expect(values.sensitivity.map((row) => row.id)).toContain('escalation')
    expect(values.sensitivity.find((row) => row.id === 'escalation')).toMatchObject({ low: -1, high: 2 })
  })

  it('varies the export price only where exports are paid', () => {
    expect(values.sensitivity.map((row) => row.id)).not.toContain('export_price')
    const billing = readTariff({
      name: 'R-2 (invented)',
      energy: { all_year: { usd_per_kwh: 0.2 } },
      rounding: 'line',
      solar: {
        net_billing: {
          netting: 'hour',
          export_usd_per_kwh: 0.05,
          credit: { offsets: 'all', settle: 'annual', true_up_month: 12 },
        },
      },
    })
    const row = payback({ ...input(), sheet: billing }).values.sensitivity.find((one) => one.id === 'export_price')
    expect(row!.npv_at_high_usd).toBeGreaterThan(row!.npv_at_low_usd)
  })

  it('moves use into and out of the hours of production', () => {
    const unpaid = readTariff({ name: 'R-3 (invented)', energy: { all_year: { usd_per_kwh: 0.2 } }, rounding: 'line' })
    const row = payback({ ...input(), sheet: unpaid }).values.sensitivity.find((one) => one.id === 'own_use')
    expect(row!.npv_at_high_usd).toBeGreaterThan(row!.npv_at_low_usd)
    const usage = Float64Array.from({ length: 8760 }, (_, h) => 0.2 + (h % 5) / 10)
    for (const share of [0.1, -0.1, 0.9, -0.9]) {
      const shifted = shiftUse(usage, bell(2.5), share)
      const sunny = (hours: Float64Array): number => total(hours.slice(24, 48).filter((_, h) => h >= 6 && h < 18))
      expect(total(shifted.slice(24, 48))).toBeCloseTo(total(usage.slice(24, 48)), 9)
      expect(Math.min(...shifted)).toBeGreaterThanOrEqual(0)
      expect(Math.sign(sunny(shifted) - sunny(usage))).toBe(Math.sign(share))
    }
  })

  it('gives no value that is no number', () => {
    expect(JSON.stringify(values)).not.toMatch(/NaN|Infinity|undefined/)
    const walk = (value: unknown): void => {
      if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true)
      else if (typeof value === 'object' && value !== null) Object.values(value).forEach(walk)
      else expect(value).not.toBeUndefined()
    }
    walk(payback(input({ installed_cost_usd: 1e6 })))
    walk(payback(input({ installed_cost_usd: 0 })))
  })

  it('says that it never pays back', () => {
    const never = payback(input({ installed_cost_usd: 200_000 }))
    expect(never.values.simple_payback.years).toBeNull()
    expect(never.values.uncertainty.payback_years.p50).toBeNull()
    expect(never.values.uncertainty.never_paid_back_pct).toBe(100)
    expect(ids(never)).toEqual(expect.arrayContaining(['payback.never', 'payback.cost-implausible']))
  })

  it('says that a late replacement undoes the payback', () => {
    const late = payback(
      input({ installed_cost_usd: 10_000, replacements: [{ name: 'inverter', year: 12, usd: 9000 }] }),
    )
    expect(late.values.simple_payback).toMatchObject({ dips_again_year: 12 })
    expect(late.values.simple_payback.lasting_years).toBeGreaterThan(12)
    expect(ids(late)).toContain('payback.dips-again')
  })

  it('payback shrinks with a rebate', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000 }), fc.integer({ min: 0, max: 10_000 }), (a, b) => {
        const years = (usd: number): number =>
          payback(input({ uncertainty: { seed: 1, samples: 100 } }, rebate(usd))).values.simple_payback.years ??
          Infinity
        expect(years(Math.max(a, b))).toBeLessThanOrEqual(years(Math.min(a, b)))
      }),
      { numRuns: 5 },
    )
  })

  it('refuses a missing cost', () => {
    const { installed_cost_usd: _, ...rest } = finance
    expect(() => payback({ ...input(), finance: rest })).toThrow('the installed cost is not known')
    expect(payback({ ...input(), finance: rest, billOfMaterialsUsd: 12_000 }).values.gross_cost_usd).toBe(12_000)
  })
})

describe('uncertainty', () => {
  it('is the same for the same seed and another for another', () => {
    const of = (seed: number) => payback(input({ uncertainty: { ...finance.uncertainty, seed } })).values.uncertainty
    expect(of(7)).toEqual(of(7))
    expect(of(7).npv_usd).not.toEqual(of(8).npv_usd)
    expect(of(7).seed).toBe(7)
  })

  it('collapses to the central value without spread', () => {
    const none = {
      seed: 3,
      samples: 100,
      yield_sigma_pct: 0,
      weather_sigma_pct: 0,
      escalation_sigma_pct: 0,
      cost_sigma_pct: 0,
    }
    const { uncertainty, npv_usd, simple_payback } = payback(input({ uncertainty: none })).values
    expect(uncertainty.npv_usd).toEqual({ p10: npv_usd, p50: npv_usd, p90: npv_usd })
    expect(uncertainty.payback_years.p90).toBe(simple_payback.years)
  })

  it('orders P10, P50 and P90 as exceedance', () => {
    const { npv_usd, payback_years } = payback(input()).values.uncertainty
    expect(npv_usd.p10).toBeGreaterThan(npv_usd.p50 ?? 0)
    expect(npv_usd.p50).toBeGreaterThan(npv_usd.p90 ?? 0)
    expect(payback_years.p90).toBeGreaterThan(payback_years.p10 ?? 0)
  })

  it('spreads as the normal law says where the bill is linear', () => {
    // Only the long-term yield is drawn: NPV is linear in it, so P90 = NPV of 1 - 1.2816 sigma.
    const only = {
      seed: 11,
      samples: 20_000,
      yield_sigma_pct: 8,
      weather_sigma_pct: 0,
      escalation_sigma_pct: 0,
      cost_sigma_pct: 0,
    }
    const small: PaybackInput = {
      ...input({ uncertainty: only, replacements: [] }),
      energy: { kind: 'hourly', usageKwh: even(5), productionKwh: bell(2.5) },
    }
    const { uncertainty, npv_usd } = payback(small).values
    const present = npv_usd + 15_000
    const expected = npv_usd - present * 0.08 * 1.2816
    // Standard error of a 10 % quantile of n samples: sigma sqrt(0.1 x 0.9 / n) / 0.1755; four of them.
    const tolerance = 4 * present * 0.08 * (Math.sqrt(0.09 / 20_000) / 0.1755)
    expect(Math.abs((uncertainty.npv_usd.p90 ?? 0) - expected)).toBeLessThan(tolerance)
  })

  it('30 years x 2,000 samples and all bills take less than a second', () => {
    // Processor time, so that a busy machine does not fail it.
    const start = process.cpuUsage()
    payback(input({ years: 30 }))
    const { user, system } = process.cpuUsage(start)
    expect((user + system) / 1e6).toBeLessThan(1)
  })
})

describe('rates of return that are not one', () => {
  it('several: -100, 230, -132 has 10 % and 20 %', () => {
    const found = internalRate([-100, 230, -132])
    expect(found.kind).toBe('several')
    if (found.kind === 'several')
      expect(found.rates.map((rate) => rate.toFixed(9))).toEqual(['0.100000000', '0.200000000'])
  })

  it('none: the flows never change sign, or no rate will do', () => {
    expect(internalRate([-100, -10, -10]).kind).toBe('none')
    expect(internalRate([0, 0]).kind).toBe('none')
    expect(internalRate([100, -200, 150]).kind).toBe('none')
  })

  it('a payback at once, and one that never comes', () => {
    expect(paybackYears([0, 5])).toEqual({ wholeYear: 0, interpolated: 0, dipsAgainYear: undefined, lasting: 0 })
    expect(paybackYears([-10, -5, -1]).wholeYear).toBeUndefined()
  })
})
