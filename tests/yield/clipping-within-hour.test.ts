import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { estimateYield, runYield } from '../../src/yield/index.js'
import { spreadWithinHour } from '../../src/yield/clipping-within-hour.js'
import { meanClippedW } from '../../src/yield/kernel/index.js'
import { SEATTLE_EPW } from '../climate/epw-fixture.js'

/** Mean excess over a limit by the trapezoid rule over the normal density. */
function integrated(mean: number, limit: number, spread: number): number {
  let sum = 0
  const step = 1e-3
  for (let z = -9; z < 9; z += step) {
    const excess = Math.max(0, mean + z * spread - limit)
    sum += (excess * Math.exp((-z * z) / 2) * step) / Math.sqrt(2 * Math.PI)
  }
  return sum
}

describe('what a limit cuts off on average', () => {
  it.each([
    [800, 1000, 100],
    [1000, 1000, 100],
    [1200, 1000, 140],
    [300, 1000, 250],
    [990, 1000, 5],
  ])('mean %d W, limit %d W, spread %d W: as integrated', (mean, limit, spread) => {
    expect(meanClippedW(mean, limit, spread)).toBeCloseTo(integrated(mean, limit, spread), 3)
  })

  it('is the excess of the mean without a spread, and never less', () => {
    expect(meanClippedW(1100, 1000, 0)).toBe(100)
    expect(meanClippedW(900, 1000, 0)).toBe(0)
    for (const mean of [10, 500, 1500, 5000]) expect(meanClippedW(mean, 1000, 3)).toBeGreaterThanOrEqual(mean - 1000)
  })

  // 140 W/m2 between 350 and 700 W/m2, falling to 0.15 of it on both sides; a tenth of it under a clear sky.
  it.each([
    [500, 0.4, 140 / 500],
    [350, 0.55, 140 / 350],
    [175, 0.3, 70 / 175],
    [875, 0.5, 70 / 875],
    [1100, 0.5, 21 / 1100],
    [500, 0.675, 70 / 500],
    [500, 0.8, 14 / 500],
    [0, 0.5, 0],
  ])('spread at %d W/m2 and clearness %d', (planeWM2, clearness, share) => {
    expect(spreadWithinHour(planeWM2, clearness)).toBeCloseTo(share, 12)
  })
})

const project = (ratio: number, more: Partial<Project> = {}): Project => ({
  format: 'gablewatt/2',
  title: 'clipping',
  site: { latitude_deg: 47.47, longitude_deg: -122.32, elevation_ft: 400, climate: { epw: 'w.epw' } },
  roof_planes: { p: { azimuth_deg: 180, tilt_deg: 25 } },
  arrays: { a: { roof_plane: 'p', module: 'm', inverter: 'i', modules: 10, mounting: 'near_roof', standoff_in: 4 } },
  equipment: {
    modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35 } },
    inverters: { i: { kind: 'module_level', ac_power_w: 400 / ratio, weighted_efficiency_pct: 97 } },
  },
  ...more,
})
const files = new Map([['w.epw', SEATTLE_EPW]])

describe('clouds within the hour in the estimate', () => {
  const effect = (ratio: number): { readonly pct: number; readonly stepKwh: unknown; readonly apart: number } => {
    const on = estimateYield(project(ratio), files)
    const off = estimateYield(project(ratio, { model: { clipping_within_hour: 'none' } }), files)
    const apart = off.values.annual.ac_kwh - on.values.annual.ac_kwh
    const stepKwh = on.worksheet.find(({ id }) => id === 'yield.clipping-within-hour')?.result.value
    expect(off.worksheet.some(({ id }) => id === 'yield.clipping-within-hour')).toBe(false)
    return { pct: (100 * apart) / off.values.annual.ac_kwh, stepKwh, apart }
  }

  it('change nothing that counts up to DC/AC 1.2', () => {
    expect(effect(1.2).pct).toBeLessThan(0.05)
    expect(effect(1.2).pct).toBeGreaterThanOrEqual(0)
  })

  // US typical years, south, 25 deg, by the same stand-in elsewhere: 1.5 +0.1 to +0.3 %, 1.7 +0.2 to +0.8 % of the year.
  it('take 0.1 to 0.5 % at 1.5 and more at 1.7, and say how much', () => {
    const [mid, high] = [effect(1.5), effect(1.7)]
    expect(mid.pct).toBeGreaterThan(0.1)
    expect(mid.pct).toBeLessThan(0.5)
    expect(high.pct).toBeGreaterThan(mid.pct)
    expect(high.pct).toBeLessThan(0.9)
    // Cables and time out of order come after clipping, so a little less than what was cut off is lost.
    expect(mid.apart / Number(mid.stepKwh)).toBeGreaterThan(0.95)
    expect(mid.apart / Number(mid.stepKwh)).toBeLessThan(1)
  })

  it('are an assumption with its effect, unless the project states them', () => {
    const path = 'model.clipping_within_hour'
    const silent = estimateYield(project(1.5), files).assumptions.find((one) => one.path === path)
    expect(silent?.why).toMatch(/takes \d+\.\d kWh a year/u)
    const stated = estimateYield(project(1.5, { model: { clipping_within_hour: 'published_spread' } }), files)
    expect(stated.assumptions.some((one) => one.path === path)).toBe(false)
    expect(stated.values.annual.ac_kwh).toBe(estimateYield(project(1.5), files).values.annual.ac_kwh)
  })

  it('count in the monthly method, and not in steps of a quarter of an hour', () => {
    const nearby = (model: Project['model']): number => {
      const { site } = project(1.6)
      const { climate: _, ...place } = site
      return estimateYield(project(1.6, { site: place, ...(model && { model }) })).values.annual.ac_kwh
    }
    expect(nearby(undefined)).toBeLessThan(nearby({ clipping_within_hour: 'none' }))
    const run = runYield(project(1.6), files)
    const short = { ...run.climate, stepH: 0.25 } as typeof run.climate
    const stepped = (model?: Project['model']): number =>
      runYield(project(1.6, model && { model }), files, { climate: short, steps: run.steps }).result.values.annual
        .ac_kwh
    expect(stepped()).toBe(stepped({ clipping_within_hour: 'none' }))
  })
})
