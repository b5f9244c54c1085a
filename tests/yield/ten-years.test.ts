import { describe, expect, it } from 'vitest'
import { yieldFigures } from '../../src/fleet/stage-figures.js'
import { constantIndex, readFinance, outputShare } from '../../src/money/cash-flow/index.js'
import type { Project } from '../../src/project/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import { AGE_TERM, estimateYield, statedDegradation } from '../../src/yield/index.js'

const base: Project = {
  format: 'gablewatt/2',
  title: 'ten years',
  site: { latitude_deg: 38.75, longitude_deg: -90.37, elevation_ft: 500 },
  roof_planes: { south: { azimuth_deg: 180, tilt_deg: 26.6 } },
  arrays: {
    south: { roof_plane: 'south', module: 'm', inverter: 'i', modules: 6, mounting: 'near_roof', standoff_in: 4 },
  },
  equipment: {
    modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35 } },
    inverters: { i: { kind: 'module_level', ac_power_w: 380, weighted_efficiency_pct: 97 } },
  },
}

/** Year by year, as a person adds it up. */
function yearByYear(pctPerYear: number): number {
  let left = 1
  let sum = 0
  for (let year = 1; year <= 10; year++) {
    sum += left
    left -= (left * pctPerYear) / 100
  }
  return sum / 10
}

describe('the mean of years 1 to 10', () => {
  it.each([
    ['the default of 0.5 % a year', {}, 0.5],
    ['what losses state', { losses: { degradation_pct_per_year: 0.8 } }, 0.8],
    ['what finance states', { finance: { degradation_pct_per_year: 1 } }, 1],
    ['finance before losses', { finance: { degradation_pct_per_year: 1 }, losses: { degradation_pct_per_year: 2 } }, 1],
    ['no ageing', { losses: { degradation_pct_per_year: 0 } }, 0],
  ] as const)('loses output with age, by %s', (_, stated, pctPerYear) => {
    const { values, assumptions, worksheet } = estimateYield({ ...base, ...stated })
    const { first_year: one, ten_year_mean: ten } = values.exceedance
    expect(values.lifetime.degradation_pct_per_year).toBe(pctPerYear)
    // Causes multiply, so that half of the cases lie below the mean by half of the sum of their squares.
    const ofYear = values.uncertainty.filter(({ term }) => term !== AGE_TERM).map(({ percent }) => percent / 100)
    const median = Math.exp(-(Math.hypot(...ofYear) ** 2) / 2)
    expect(Math.abs(one.p50_kwh / values.annual.ac_kwh - median)).toBeLessThan(0.001)
    const mean = worksheet.find((step) => step.id === 'yield.ten-year-mean')?.result.value as number
    expect(mean / values.annual.ac_kwh).toBeCloseTo(yearByYear(pctPerYear), 12)
    // A fall with age that is drawn cannot be a rise.
    expect(Math.abs(ten.p50_kwh / mean - 1)).toBeLessThan(pctPerYear === 0 ? 0.01 : 0.003)
    expect(ten.p90_kwh / ten.p50_kwh).toBeGreaterThan(one.p90_kwh / one.p50_kwh)
    const assumed = assumptions.find((one) => one.path === 'losses.degradation_pct_per_year')
    expect(assumed?.value).toBe(Object.keys(stated).length === 0 ? 0.5 : undefined)
    expect(yieldFigures(values)['ten_year_p90_kwh']).toBeCloseTo(ten.p90_kwh, 1)
  })

  it('starts with the age that the project states', () => {
    const old = estimateYield({ ...base, losses: { in_use_years: 12, degradation_pct_per_year: 0.5 } }).values
    const fresh = estimateYield({ ...base, losses: { degradation_pct_per_year: 0.5 } }).values
    expect(old.exceedance.first_year.p50_kwh).toBeLessThan(0.95 * fresh.exceedance.first_year.p50_kwh)
    expect(old.exceedance.ten_year_mean.p50_kwh / old.annual.ac_kwh).toBeCloseTo(yearByYear(0.5), 2)
  })

  it('ages as the payback does, stated or not', () => {
    for (const stated of [
      {},
      { finance: { degradation_pct_per_year: 0.7 } },
      { losses: { degradation_pct_per_year: 2 } },
    ]) {
      const project: Project = { ...base, ...stated }
      const terms = readFinance(project.finance ?? {}, new Worksheet(), statedDegradation(project)?.pctPerYear)
      const share = constantIndex(0, 10).reduce((sum, _, index) => sum + outputShare(terms, index + 1), 0) / 10
      const { values, worksheet } = estimateYield(project)
      const mean = worksheet.find((step) => step.id === 'yield.ten-year-mean')?.result.value as number
      expect(mean / values.annual.ac_kwh).toBeCloseTo(share, 12)
    }
  })
})
