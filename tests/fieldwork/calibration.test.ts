import { describe, expect, it } from 'vitest'
import { productionLimits, readProduction, reviewProduction, type ReviewRequest } from '../../src/fieldwork/index.js'
import type { Calibration, ReviewValues } from '../../src/fieldwork/review/review-values.js'
import { weatherSpreadOf } from '../../src/fieldwork/review/judge-days.js'
import { priorTerms, shareOfYear } from '../../src/fieldwork/review/calibration/prior-terms.js'
import { updatedRange, updateTerms } from '../../src/fieldwork/review/calibration/update.js'
import type { Result } from '../../src/worksheet/index.js'
import { dailyCsv, dayOf, drawKinds, model, project, randomOf, run } from './synthetic.js'
import { kindsOfDay, methodSpread } from '../../src/fieldwork/review/index.js'

/** A table in which every day gives the mean of its kinds, times a scale. */
function meanDays(from: string, days: number, scale = 1): string {
  const rows = Array.from({ length: days }, (_, at) => {
    const day = dayOf(from) + at
    const kwh = kindsOfDay(model, day).reduce((sum, kind) => sum + kind, 0) / 10
    return `${new Date(day * 86_400_000).toISOString().slice(0, 10)},${(scale * kwh).toFixed(4)}`
  })
  return `date,production_kwh\n${rows.join('\n')}\n`
}

const reviewed = new Map<string, Result<ReviewValues>>()

function review(text: string, more?: Partial<ReviewRequest>): Result<ReviewValues> {
  const known = more === undefined ? reviewed.get(text) : undefined
  if (known !== undefined) return known
  const mapping = { clock: 'standard', unit: 'kwh', meter: 'interval' } as const
  const read = readProduction('p.csv', text, mapping, productionLimits(project, run))
  if (read.series === undefined) throw new Error(read.problems.map((problem) => problem.message).join('\n'))
  const result = reviewProduction({ project, run, series: read.series, calibrate: true, ...more })
  if (more === undefined) reviewed.set(text, result)
  return result
}

function calibrationOf(text: string, more?: Partial<ReviewRequest>): Calibration {
  const { values, findings } = review(text, more)
  const { calibration } = values
  if (calibration === undefined || calibration === null) {
    throw new Error(findings.map(({ message }) => message).join('\n'))
  }
  return calibration
}

/** The energy of every day as an invented weather of these days would model it, by a method that is good to 3 %. */
const weatherOf = (from: string, days: number): NonNullable<ReviewRequest['weather']> => ({
  name: 'these days',
  spread: 0.03,
  kwhByDay: new Map(
    Array.from({ length: days }, (_, at) => {
      const day = dayOf(from) + at
      return [day, kindsOfDay(model, day).reduce((sum, kind) => sum + kind, 0) / 10]
    }),
  ),
})

describe("Bayes' rule for normal variables", () => {
  // By hand, with the product of two normal densities: precisions 1/0.03^2 = 1111.1 and 1/0.04^2 = 625 add up to 1736.1, so
  // that s' = 0.024; the mean is 0.05 x 625 / 1736.1 = 0.018.
  it('one term: precisions add up, the mean is that of the measurement by its share of the precision', () => {
    const after = updateTerms([{ term: 'a', prior: 0.03, loading: 1 }], 0.05, 0.04)
    expect(after.terms[0]?.posterior).toBeCloseTo(0.024, 12)
    expect(after.terms[0]?.shift).toBeCloseTo(0.018, 12)
    expect(after.factor).toBeCloseTo(1.018, 12)
    expect(after.spread).toBeCloseTo(0.024, 12)
  })
  // By hand: V + r^2 = 0.0004 + 0.0016 + 0.0005 = 0.0025. Shifts -0.1 x 0.0004 / 0.0025 = -0.016 and -0.1 x 0.0016 / 0.0025 = -0.064.
  // Variances 0.0004 (1 - 0.16) = 0.000336 and 0.0016 (1 - 0.64) = 0.000576; of the sum 0.002 - 0.002^2 / 0.0025 = 0.0004.
  it('two terms share the deviation by their variances, and hang together afterwards', () => {
    const priors = [
      { term: 'a', prior: 0.02, loading: 1 },
      { term: 'b', prior: 0.04, loading: 1 },
    ]
    const after = updateTerms(priors, -0.1, Math.sqrt(0.0005))
    expect(after.terms.map(({ shift }) => shift)).toEqual([expect.closeTo(-0.016, 12), expect.closeTo(-0.064, 12)])
    expect(after.terms.map(({ posterior }) => posterior ** 2)).toEqual([
      expect.closeTo(0.000336, 12),
      expect.closeTo(0.000576, 12),
    ])
    expect(after.factor).toBeCloseTo(0.92, 12)
    expect(after.spread).toBeCloseTo(0.02, 12)
  })
  // By hand: the first term is seen three times as large, the second not at all. V + r^2 = 9 x 0.0001 + 0.0016 = 0.0025;
  // C = 3 x 0.0001 = 0.0003; f = 1 + 0.05 x 0.12 = 1.006; variances 0.0001 (1 - 0.36) = 0.000064, of the sum 0.0017 - 0.000036.
  it('loadings: what the days tell nothing of stays as it was', () => {
    const priors = [
      { term: 'a', prior: 0.01, loading: 3 },
      { term: 'b', prior: 0.04, loading: 0 },
    ]
    const after = updateTerms(priors, 0.05, 0.04)
    expect(after.factor).toBeCloseTo(1.006, 12)
    expect(after.terms[0]?.posterior).toBeCloseTo(0.008, 12)
    expect(after.terms[1]).toMatchObject({ posterior: 0.04, shift: 0 })
    expect(after.spread).toBeCloseTo(Math.sqrt(0.001664), 12)
  })
  it('a measurement that says nothing leaves terms, P50 and P90', () => {
    const before = { p50Kwh: 5000, p90Kwh: 4600 }
    for (const [loading, noise] of [
      [0, 0.03],
      [1, 1e9],
    ] as const) {
      const after = updateTerms([{ term: 'a', prior: 0.03, loading }], 0.2, noise)
      expect(after.factor).toBeCloseTo(1, 12)
      expect(after.spread).toBeCloseTo(0.03, 12)
      const range = updatedRange(before, after, 0.04)
      expect(range.p50Kwh).toBeCloseTo(5000, 8)
      expect(range.p90Kwh).toBeCloseTo(4600, 8)
    }
    expect(updateTerms([], 0.1, 0)).toMatchObject({ factor: 1, spread: 0 })
  })
  // By hand: 0.05 of prior spread in all (3 and 4 %), P90 8 % below, so k = 1.6. After: f = 0.9, s_f = 0.0072 and 0.9 x 0.04 = 0.036
  // together sqrt(0.0072^2 + 0.036^2) = 0.0367129; P90 = 1000 (0.9 - 1.6 x 0.0367129) = 841.26.
  it('the weather of a year stays as unsure, relative to its energy', () => {
    const after = { ...updateTerms([{ term: 'a', prior: 0.03, loading: 1 }], 0, 1), factor: 0.9, spread: 0.0072 }
    const range = updatedRange({ p50Kwh: 1000, p90Kwh: 920 }, after, 0.04)
    expect(range.deviations).toBeCloseTo(1.6, 12)
    expect(range.p50Kwh).toBeCloseTo(900, 9)
    expect(range.p90Kwh).toBeCloseTo(841.2594, 3)
  })
})

/**
 * What a posterior is, by simulation: of 600 invented plants whose errors, days, slow weather and meters are drawn from what the update
 * takes them to be, the true energy lies about the factor with the spread that is stated (a rms of 1; the band is three standard errors).
 */
it('600 invented plants, half a year each: the true factor lies where it is said to lie', () => {
  const random = randomOf(20_250_101)
  const first = dayOf('2025-03-01')
  const days = Array.from({ length: 184 }, (_, at) => first + at)
  const kinds = days.map((day) => kindsOfDay(model, day))
  const expectedKwh = kinds.flat().reduce((sum, kwh) => sum + kwh, 0) / 10
  const priors = priorTerms(run, { days, expectedKwh, isWeatherKnown: false, snowIn: undefined })
  const periods = days.map((firstDay) => ({ firstDay, days: 1, kwh: 1, moduleKwh: [] }))
  const other = 0.03
  const noise = Math.hypot(weatherSpreadOf(periods, model, undefined, 0.29), other)
  let [squares, before, after] = [0, 0, 0]
  for (let plant = 0; plant < 600; plant += 1) {
    const errors = priors.map(({ prior }) => prior * random.normal())
    const seen = errors.reduce((sum, error, at) => sum + error * priors[at]!.loading, 0)
    const luck = drawKinds(days.length, 0.29, 5000 + plant)
    const sun = kinds.reduce((sum, kwh, at) => sum + kwh[luck[at]!]!, 0) / expectedKwh
    const found = updateTerms(priors, sun * (1 + other * random.normal()) + seen - 1, noise)
    const off = 1 + errors.reduce((sum, error) => sum + error, 0) - found.factor
    squares += (off / found.spread) ** 2
    before += (off + found.factor - 1) ** 2
    after += off ** 2
  }
  const rms = Math.sqrt(squares / 600)
  expect(rms).toBeGreaterThan(1 - 3 / Math.sqrt(1200))
  expect(rms).toBeLessThan(1 + 3 / Math.sqrt(1200))
  expect(after).toBeLessThan(0.7 * before)
})

describe('which terms days tell of', () => {
  const loadings = (days: readonly number[], more: { isWeatherKnown?: boolean; snowIn?: number[] } = {}) =>
    Object.fromEntries(
      priorTerms(run, { days, expectedKwh: 100, isWeatherKnown: false, snowIn: undefined, ...more }).map(
        ({ term, loading }) => [term, loading],
      ),
    )
  const span = (from: string, count: number): number[] => Array.from({ length: count }, (_, at) => dayOf(from) + at)
  const snowy = [10, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 10]

  it('not of the weather of other years, and not of the age', () => {
    const terms = Object.keys(loadings(span('2026-06-01', 30)))
    expect(terms).toContain('siting')
    expect(terms).not.toContain('year to year')
    expect(terms).not.toContain('loss with age')
  })
  it('with their own weather not of that of the estimate, by station data and by file', () => {
    const known = loadings(span('2026-06-01', 30), { isWeatherKnown: true })
    expect(known).toMatchObject({ siting: 0, 'monthly method': 0, 'rating of the modules': 1, 'sky model': 1 })
  })
  it('of snow by the snow of their months: January has half of the year in 31 days', () => {
    expect(loadings(span('2026-07-01', 31), { snowIn: snowy })['snow']).toBe(0)
    expect(loadings(span('2026-01-01', 31))['snow']).toBe(0)
    // Half a year's snow falls on days that give 100 kWh of a year's ac_kwh.
    const january = loadings(span('2026-01-01', 31), { snowIn: snowy })['snow']
    expect(january).toBeCloseTo((0.5 * run.result.values.annual.ac_kwh) / 100, 6)
  })
  it('shares of a year: two summers are one, a leap day is none', () => {
    expect(shareOfYear(span('2026-01-01', 365))).toBe(1)
    expect(shareOfYear([...span('2025-06-01', 73), ...span('2026-06-01', 73)])).toBeCloseTo(0.2, 12)
    expect(shareOfYear(span('2024-01-01', 366))).toBe(1)
  })
})

describe('calibrate', () => {
  it('is only there when asked for', () => {
    const { values, findings } = review(meanDays('2025-01-01', 120), { calibrate: false })
    expect(values).not.toHaveProperty('calibration')
    expect(findings.filter(({ id }) => id.startsWith('output.calibration'))).toEqual([])
  })
  it('production as expected: P50 stays, P90 rises, every term is narrower or the same', () => {
    const { factor, terms, ...values } = calibrationOf(meanDays('2025-01-01', 365))
    const { first_year: year } = run.result.values.exceedance
    expect(factor).toBeCloseTo(1, 3)
    expect(values.prior_p50_kwh).toBe(year.p50_kwh)
    expect(values.prior_p90_kwh).toBe(year.p90_kwh)
    expect(values.p50_kwh / year.p50_kwh).toBeCloseTo(1, 3)
    expect(values.p90_kwh).toBeGreaterThan(year.p90_kwh + 1)
    for (const { prior_pct: prior, posterior_pct: posterior } of terms) expect(posterior).toBeLessThanOrEqual(prior)
    expect(values.prior_spread_pct).toBeCloseTo(100 * methodSpread(run), 9)
    expect(values.spread_pct).toBeLessThan(values.prior_spread_pct)
  })
  it('more days narrow more, and with the weather of the days more than without', () => {
    const spreads = [30, 120, 365].map((days) => calibrationOf(meanDays('2025-01-01', days)).spread_pct)
    expect(spreads.toSorted((a, b) => b - a)).toEqual(spreads)
    expect(new Set(spreads).size).toBe(3)
    const year = meanDays('2025-01-01', 365)
    const noise = calibrationOf(year).measurement_pct
    expect(calibrationOf(year, { weather: weatherOf('2025-01-01', 365) }).measurement_pct).toBeLessThan(noise)
  })
  // Never less than the meter's own 2.5 %, however many days there are.
  it('low and high production move factor and P50 part of the way', () => {
    for (const scale of [0.95, 1.03]) {
      const {
        factor,
        measurement_pct: noise,
        p50_kwh: p50,
        prior_p50_kwh: before,
      } = calibrationOf(meanDays('2025-01-01', 365, scale))
      expect((factor - 1) / (scale - 1)).toBeGreaterThan(0.1)
      expect((factor - 1) / (scale - 1)).toBeLessThan(1)
      expect(noise).toBeGreaterThan(2.5)
      expect(p50 / before).toBeCloseTo(factor, 12)
    }
  })
  it('the shifts of the terms add up to the factor', () => {
    const { factor, terms } = calibrationOf(meanDays('2025-01-01', 365, 0.95))
    expect(1 + terms.reduce((sum, { shift_pct: shift }) => sum + shift / 100, 0)).toBeCloseTo(factor, 12)
  })
  it('is refused with a sure fault, and with a sum that nothing explains', () => {
    const broken = dailyCsv('2025-01-01', 365, 3)
      .split('\n')
      .map((row, at) => (at > 150 && at < 166 ? row.replace(/,.*/u, ',0') : row))
    const dead = review(broken.join('\n'))
    expect(dead.values.calibration).toBeNull()
    expect(dead.findings.find(({ id }) => id === 'output.calibration-refused')?.message).toContain(
      'sure sign of a fault',
    )
    const much = review(meanDays('2025-01-01', 365, 1.4))
    expect(much.values.calibration).toBeNull()
    expect(much.findings.find(({ id }) => id === 'output.calibration-refused')?.message).toContain('is 140 %')
  })
  it('says that a hidden fault would make it wrong, and stands on the worksheet', () => {
    const { findings, worksheet, values } = review(meanDays('2025-01-01', 200))
    expect(findings.find(({ id }) => id === 'output.calibration')).toMatchObject({ severity: 'note' })
    const result = (id: string): unknown => worksheet.find((step) => step.id === id)?.result.value
    expect(result('output.calibration.factor')).toBe(values.calibration?.factor)
    expect(result('output.calibration.p90')).toBe(values.calibration?.p90_kwh)
    expect(result('output.calibration.measurement')).toBe(values.calibration?.measurement_pct)
  })
  // Days: a fortieth off the distribution of the sum, worked out kind by kind; slow weather: that of the range; season: 2.5 % of what is not
  // measured; meter: 2.5 %, on its own.
  it('how unsure the measured sum is: days, slow weather, season, meter', () => {
    for (const days of [200, 365]) {
      const { worksheet, values } = review(meanDays('2025-01-01', days))
      const inputs = worksheet.find(({ id }) => id === 'output.calibration.measurement')?.inputs ?? []
      const part = (name: string): number => Number(inputs.find(({ symbol }) => symbol === name)?.value)
      const { expected, calibration } = values
      const spread = (expected.weather_p90_kwh - expected.weather_p10_kwh) / (2 * 1.2816) / expected.mean_kwh
      expect(part('s_d') / (100 * spread)).toBeGreaterThan(0.975)
      expect(part('s_d') / (100 * spread)).toBeLessThan(1.025)
      expect(part('s_w')).toBeCloseTo(expected.slow_weather_pct, 9)
      expect(part('s_s')).toBeCloseTo(2.5 * (1 - days / 365), 9)
      expect(part('s_m')).toBe(2.5)
      expect(inputs).toHaveLength(4)
      const squares = inputs.reduce((sum, { value }) => sum + Number(value) ** 2, 0)
      expect(calibration?.measurement_pct).toBeCloseTo(Math.sqrt(squares), 9)
    }
  })
  it('with the weather of the days its file counts beyond what the estimate is unsure of too', () => {
    const { worksheet } = review(meanDays('2025-01-01', 365), { weather: weatherOf('2025-01-01', 365) })
    const inputs = worksheet.find(({ id }) => id === 'output.calibration.measurement')?.inputs ?? []
    const shared = run.result.values.uncertainty
      .filter(({ term }) => !['siting', 'monthly method', 'year to year', 'loss with age'].includes(term))
      .reduce((sum, { percent }) => sum + percent ** 2, 0)
    expect(Number(inputs.find(({ symbol }) => symbol === 's_w')?.value)).toBeCloseTo(Math.sqrt(9 - shared), 9)
  })
  it('a known weather leaves siting and monthly method as they were', () => {
    const { terms } = calibrationOf(meanDays('2025-01-01', 365, 0.97), { weather: weatherOf('2025-01-01', 365) })
    const siting = terms.find(({ term }) => term === 'siting')
    expect(siting).toMatchObject({ posterior_pct: siting?.prior_pct, shift_pct: 0 })
    expect(terms.find(({ term }) => term === 'sky model')?.shift_pct).toBeLessThan(0)
  })
})
