import { describe, expect, it } from 'vitest'
import { irr, npv } from 'financial'
import {
  compareAlternatives,
  impliedInflation,
  internalRate,
  lifeCycleCost,
  makeCalendar,
  modifiedInternalRate,
  modifiedUniformPresentValue,
  monthlyRate,
  netPresentValue,
  payback,
  readTariff,
  nominalRate,
  paybackYears,
  cumulativePresentValues,
  realRate,
  singlePresentValue,
  uniformCapitalRecovery,
  uniformPresentValue,
  type Alternative,
} from '../../src/money/index.js'

describe('NIST BLCC 5.3-20 sample report, Heating/Cooling System, run 1 Sep 2020 (10 CFR 436)', () => {
  const percent = [-1.47, -0.69, -0.46, 0.62, 0.92, 0.99, 0.53, -0.15, -0.38, -0.45, -0.76, -0.8, -0.08, -0.15, -0.66]
  let level = 1
  const index = percent.map((p) => (level *= 1 + p / 100))
  const base: Alternative = {
    investmentUsd: 1500,
    operationUsdPerYear: 50,
    operationOnce: [{ year: 10, usd: 200 }],
    replacements: [{ year: 10, usd: 600 }],
    residualUsd: 0.1 * 1500 + 0.5 * 600,
    energyUsdPerYear: 15_000 * 0.08,
  }
  const alternative: Alternative = {
    investmentUsd: 3000,
    operationUsdPerYear: 100,
    operationOnce: [{ year: 8, usd: 600 }],
    replacements: [],
    residualUsd: 0.25 * 3000,
    energyUsdPerYear: 10_250 * 0.08,
  }
  const a = lifeCycleCost(base, index, 0.03)
  const b = lifeCycleCost(alternative, index, 0.03)
  const comparison = compareAlternatives(base, alternative, index, 0.03)

  // The report prints escalation rates to 0.01 % and prorates energy by days, hence 3 USD (0.03 % of 16,539 is 5 USD).
  it.each([
    ['base energy', a.energyUsd, 14_135, 3],
    ['alternative energy', b.energyUsd, 9659, 3],
    ['base operation', a.operationUsd, 746, 1],
    ['alternative operation', b.operationUsd, 1668, 1],
    ['base replacement', a.replacementUsd, 446, 1],
    ['alternative replacement', b.replacementUsd, 0, 0.001],
    ['base residual', a.residualUsd, 289, 1],
    ['alternative residual', b.residualUsd, 481, 1],
    ['base total', a.totalUsd, 16_539, 3],
    ['alternative total', b.totalUsd, 13_845, 3],
    ['net savings', comparison.netSavingsUsd, 2693, 1],
  ])('%s', (_, value, published, tolerance) => {
    expect(Math.abs(value - published)).toBeLessThan(tolerance)
  })

  it('ratios and payback', () => {
    expect(comparison.savingsToInvestment?.toFixed(2)).toBe('4.13')
    expect(((comparison.adjustedInternalRate ?? 0) * 100).toFixed(2)).toBe('13.21')
    expect(comparison.simplePayback.wholeYear).toBe(5)
    expect(comparison.discountedPayback.wholeYear).toBe(6)
    // The overhaul of year 8 lowers the running sum, but not below zero.
    expect(comparison.discountedPayback.dipsAgainYear).toBeUndefined()
    expect(comparison.discountedPayback.lasting).toBe(comparison.discountedPayback.interpolated)
  })
})

describe('factors', () => {
  it('single and uniform present value at 3 % (computed from the formulas of NIST Handbook 135)', () => {
    const years = [10, 15, 20, 25]
    expect(years.map((n) => singlePresentValue(0.03, n).toFixed(4))).toEqual(['0.7441', '0.6419', '0.5537', '0.4776'])
    expect(years.map((n) => uniformPresentValue(0.03, n).toFixed(4))).toEqual([
      '8.5302',
      '11.9379',
      '14.8775',
      '17.4131',
    ])
    expect(modifiedUniformPresentValue(0.03, 0.01, 20).toFixed(4)).toBe('16.3827')
    expect(uniformCapitalRecovery(0.03, 10)).toBeCloseTo(0.03 / (1 - 1.03 ** -10), 12)
    expect(modifiedUniformPresentValue(0.03, 0.03, 20)).toBe(20)
    expect(singlePresentValue(0.03, 10, 'middle')).toBeCloseTo(1.03 ** -9.5, 12)
  })

  it('single present value at 10 % (UConn ITAC training text, TVM and NPV)', () => {
    const values = [1, 2, 3, 4, 5, 10, 20].map((n) => singlePresentValue(0.1, n).toFixed(3))
    expect(values).toEqual(['0.909', '0.826', '0.751', '0.683', '0.621', '0.386', '0.149'])
    expect((1000 / singlePresentValue(0.08, 5)).toFixed(0)).toBe('1469')
  })

  it('real and nominal rates (NIST data table: OMB 2024, 4.5 % nominal and 2.2 % real)', () => {
    expect((impliedInflation(0.045, 0.022) * 100).toFixed(5)).toBe('2.25049')
    expect(realRate(nominalRate(0.022, 0.0225049), 0.0225049)).toBeCloseTo(0.022, 12)
    expect((1 + monthlyRate(0.12)) ** 12).toBeCloseTo(1.12, 12)
  })
})

describe('net present value and payback (UConn ITAC training text)', () => {
  it('-5000, then 1500 x 5 at 10 %: +686', () => {
    const flows = [-5000, 1500, 1500, 1500, 1500, 1500]
    expect(netPresentValue(flows, 0.1).toFixed(2)).toBe('686.18')
    expect(netPresentValue(flows, 0.1)).toBeCloseTo(npv(0.1, flows), 8)
  })

  it('12,000 less 2,000 rebate, 4,000 a year: 2.5 years', () => {
    const flows = [-10_000, 4000, 4000, 4000]
    expect(paybackYears(cumulativePresentValues(flows, 0)).interpolated).toBe(2.5)
  })

  it('uneven flows: 2.7 years simple, between 3 and 4 discounted', () => {
    const flows = [-20_000, 5000, 8000, 10_000, 10_000]
    expect(paybackYears(cumulativePresentValues(flows.slice(0, 4), 0)).interpolated).toBeCloseTo(2.7, 10)
    const discounted = cumulativePresentValues(flows, 0.1)
    const published = [-15_455, -8847, -1337, 5493]
    // The text uses factors of three digits: 0.0005 x (5,000 + 8,000 + 10,000 + 10,000) = 16.5 at most.
    for (const [i, value] of published.entries()) expect(Math.abs((discounted[i + 1] ?? 0) - value)).toBeLessThan(16.5)
    const years = paybackYears(discounted).interpolated ?? 0
    expect(years).toBeGreaterThan(3)
    expect(years).toBeLessThan(4)
  })

  it('15,000 at 5,000 a year and 10 %: 3.75 interpolated; the text says 3.5, which its own formula refutes', () => {
    const flows = [-15_000, 5000, 5000, 5000, 5000, 5000]
    const years = paybackYears(cumulativePresentValues(flows, 0.1)).interpolated ?? 0
    expect(years.toFixed(2)).toBe('3.75')
    expect(Math.abs(years - -Math.log(1 - 0.1 * 3) / Math.log(1.1))).toBeLessThan(0.02)
  })
})

describe('internal rate of return', () => {
  const ten = (first: number, then: number): number[] => [first, ...Array.from<number>({ length: 10 }).fill(then)]

  it.each([
    ['NumPy 1.3-1.17 manual', [-100, 39, 59, 55, 20], 0.28095, 5],
    ['NumPy 1.3-1.17 manual', [-100, 0, 0, 74], -0.0955, 4],
    ['NumPy 1.3-1.17 manual', [-100, 100, 0, 7], 0.06206, 5],
    ['USC ISE460 session 16, project A', ten(-150, 45), 0.2732, 4],
    ['USC ISE460 session 16, project B', ten(-220, 60), 0.2413, 4],
  ])('%s: %j', (_, flows, published, digits) => {
    const found = internalRate(flows)
    expect(found.kind).toBe('one')
    if (found.kind !== 'one') return
    expect(found.rate).toBeCloseTo(published, digits)
    expect(found.rate).toBeCloseTo(irr(flows), 8)
  })

  it('modified rate (Microsoft Excel help page of MIRR: 13 % and 13 %)', () => {
    const flows = [-120_000, 39_000, 30_000, 21_000, 37_000, 46_000]
    expect(modifiedInternalRate(flows, 0.1, 0.12)?.toFixed(6)).toBe('0.126094')
    expect(modifiedInternalRate(flows, 0.1, 0.14)?.toFixed(6)).toBe('0.134759')
  })
})

describe('exceedance (P90 = P50 (1 - 1.2816 sigma), computed example of 4 % weather and 8 % model)', () => {
  const yieldLow = (years: number): number => {
    const hours = new Float64Array(8760).fill(1)
    const { values } = payback({
      sheet: readTariff({ name: 'R-1 (invented)', energy: { all_year: { usd_per_kwh: 0.1 } }, rounding: 'line' }),
      energy: { kind: 'hourly', usageKwh: hours, productionKwh: hours },
      calendar: makeCalendar('2025-01-01', true),
      dcRatingW: 5000,
      finance: {
        years,
        installed_cost_usd: 10_000,
        uncertainty: { yield_sigma_pct: 8, weather_sigma_pct: 4, samples: 100 },
      },
      incentives: {},
    })
    return values.sensitivity.find((row) => row.id === 'yield')!.low / 100
  }

  it('0.885 for one year and 0.897 for the mean of 25', () => {
    expect(yieldLow(1).toFixed(3)).toBe('0.885')
    expect(yieldLow(25).toFixed(3)).toBe('0.897')
  })
})
