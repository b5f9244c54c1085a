import { describe, expect, it } from 'vitest'
import type { HourlyClimate } from '../../src/climate/index.js'
import { MOUNTING_COEFFICIENTS } from '../../src/tables/modules/cell-temperature.js'
import {
  cellRiseKPerWM2,
  constantEfficiency,
  curveEfficiency,
  daytimeTemperatureC,
  EFFICIENCY_WEIGHTS,
  installedNoctC,
  lowLightSlope,
  modulePowerW,
  monthlySnowLoss,
  performanceRatio,
  snowCover,
  unlimitedAcW,
} from '../../src/yield/index.js'

describe('cell temperature at 1000 W/m2, 20 deg C, 1 m/s', () => {
  const byMounting = (a: number, b: number, deltaC: number): number =>
    20 + 1000 * cellRiseKPerWM2({ kind: 'by_mounting', a, b, deltaC }, 1)

  // King et al., SAND2004-3535: cell temperatures computed from the published coefficients (module + difference).
  it.each([
    ['glass_back', 'free_rack', 49.32 + 3],
    ['glass_back', 'near_roof', 68.46 + 1],
    ['polymer_back', 'laid_on_roof', 77.53],
  ] as const)('%s on %s', (construction, mounting, expected) => {
    const { a, b, deltaC } = MOUNTING_COEFFICIENTS[construction][mounting]
    expect(byMounting(a, b, deltaC)).toBeCloseTo(expected, 2)
  })

  // Faiman 2008 / IEC 61853-2, mean factors 25 and 6.84: 51.41.
  it('with two heat-loss factors', () => {
    expect(20 + 1000 * cellRiseKPerWM2({ kind: 'faiman', u0: 25, u1: 6.84, windShare: 1 }, 1)).toBeCloseTo(51.41, 2)
  })

  // Definition of NOCT: NOCT 47, 1000 W/m2, 30 deg C: 63.75.
  it('from the nominal operating cell temperature', () => {
    expect(30 + 1000 * cellRiseKPerWM2({ kind: 'noct', installedNoctC: 47 }, 1)).toBeCloseTo(63.75, 6)
  })

  // Fuentes 1987, SAND85-0330 (from memory): rack NOCT - 3, direct mount + 18, stand-off 1 in + 11, 3 in + 2, 6 in - 1.
  it('from the installed NOCT by standoff', () => {
    expect(installedNoctC(47, 'free_rack', 20)).toBe(44)
    expect(installedNoctC(47, 'laid_on_roof', 0)).toBe(65)
    expect(installedNoctC(47, 'near_roof', 1)).toBe(58)
    expect(installedNoctC(47, 'near_roof', 3)).toBe(49)
    expect(installedNoctC(47, 'near_roof', 6)).toBe(46)
    expect(installedNoctC(47, 'near_roof', 2)).toBeCloseTo(53.5, 9)
    expect(installedNoctC(47, 'near_roof', 12)).toBe(46)
  })

  // The two published ways agree where they describe the same mount (800 W/m2, 20 deg C, 1 m/s): King's open rack with
  // polymer back against Fuentes' rack, and insulated back against direct mount, within 2 K for a NOCT of 47.
  it('agrees between two sources for the same mount', () => {
    const rack = MOUNTING_COEFFICIENTS.polymer_back.free_rack
    const insulated = MOUNTING_COEFFICIENTS.polymer_back.laid_on_roof
    expect(Math.abs(20 + 800 * cellRiseKPerWM2({ kind: 'by_mounting', ...rack }, 1) - 44)).toBeLessThan(2.1)
    expect(Math.abs(20 + 800 * cellRiseKPerWM2({ kind: 'by_mounting', ...insulated }, 1) - 65)).toBeLessThan(2.1)
  })
})

describe('module and inverter', () => {
  it('gives the rating at standard test conditions and falls with temperature by the coefficient', () => {
    const model = { pmaxW: 400, powerCoefficientPerK: -0.0035, lowLightSlope: 0 }
    expect(modulePowerW(model, 1000, 25)).toBe(400)
    expect(modulePowerW(model, 1000, 65)).toBeCloseTo(400 * 0.86, 9)
    expect(modulePowerW(model, 0, 25)).toBe(0)
    expect(modulePowerW(model, 1000, 400)).toBe(0)
  })

  it('meets the relative efficiency of the data sheet at 200 W/m2', () => {
    const model = { pmaxW: 400, powerCoefficientPerK: -0.0035, lowLightSlope: lowLightSlope(97) }
    expect(modulePowerW(model, 200, 25)).toBeCloseTo(80 * 0.97, 9)
    expect(modulePowerW(model, 1000, 25)).toBeCloseTo(400, 9)
  })

  // Sandia/CEC test protocol 2004-05 and the European weighting (both secondary): the weights add up to 1.
  it('has weights that add up', () => {
    for (const weights of [EFFICIENCY_WEIGHTS.cec, EFFICIENCY_WEIGHTS.european]) {
      expect(weights.reduce((sum, [, weight]) => sum + weight, 0)).toBeCloseTo(1, 9)
    }
  })

  it('reproduces the points of a part-load curve', () => {
    const inverter = curveEfficiency(
      5000,
      [
        { loadPct: 10, efficiencyPct: 93 },
        { loadPct: 50, efficiencyPct: 97.5 },
        { loadPct: 100, efficiencyPct: 96.5 },
      ],
      0,
    )
    expect(unlimitedAcW(inverter, 500 / 0.93)).toBeCloseTo(500, 6)
    expect(unlimitedAcW(inverter, 2500 / 0.975)).toBeCloseTo(2500, 6)
    expect(unlimitedAcW(inverter, 5000 / 0.965)).toBeCloseTo(5000, 6)
    expect(unlimitedAcW(constantEfficiency(5000, 97, 0), 1000)).toBeCloseTo(970, 9)
  })

  // IEC 61724-1: Yf = E/P0, Yr = H/(1 kW/m2). Measured: 833.0 kWh from 11.34 kWp under 87.0 kWh/m2 is 73.5 kWh/kWp, PR 0.844.
  it('has the performance ratio of a measured plant', () => {
    expect(833 / 11.34).toBeCloseTo(73.5, 1)
    expect(performanceRatio(833, 11.34, 87)).toBeCloseTo(0.844, 3)
  })
})

describe('temperature by day', () => {
  // Erbs, Klein & Beckman 1983: the course has no mean of its own, is coldest before sunrise and warmest about 15 h.
  it('swings about the mean', () => {
    const hours = Array.from({ length: 240 }, (_, index) => index / 10)
    const course = hours.map((hour) => daytimeTemperatureC(10, 10, hour))
    expect(course.reduce((sum, celsius) => sum + celsius, 0) / course.length).toBeCloseTo(10, 6)
    const warmest = hours[course.indexOf(Math.max(...course))] as number
    const coldest = hours[course.indexOf(Math.min(...course))] as number
    expect(warmest).toBeGreaterThan(13.5)
    expect(warmest).toBeLessThan(16.5)
    expect(coldest).toBeGreaterThan(3)
    expect(coldest).toBeLessThan(7)
    expect(Math.max(...course) - Math.min(...course)).toBeCloseTo(10, 0)
  })
})

describe('snow', () => {
  const winter = (depthCm: readonly number[], dryBulbC: number): HourlyClimate =>
    ({
      kind: 'hourly',
      stepH: 1,
      length: depthCm.length,
      snowDepthCm: Float64Array.from(depthCm),
      dryBulbC: new Float64Array(depthCm.length).fill(dryBulbC),
    }) as unknown as HourlyClimate

  // Marion et al. 2013 (from memory): covered at a fall of 1 cm or more, slides 0.197 sin(tilt) an hour when warm enough.
  it('covers at a snowfall and slides by the published share of the slant height', () => {
    const cover = snowCover(winter([5, 15, 15, 15, 15], 5), new Float64Array(5).fill(500), 30, undefined)
    expect(cover[1]).toBe(1)
    expect(cover[2]).toBeCloseTo(1 - 0.197 * 0.5, 9)
    expect(cover[4]).toBeCloseTo(1 - 3 * 0.197 * 0.5, 9)
  })

  it('stays in deep frost and dull light: air below light over -80 W/m2/K', () => {
    const cover = snowCover(winter([5, 15, 15, 15], -5), new Float64Array(4).fill(399), 30, undefined)
    expect(Array.from(cover.slice(1))).toEqual([1, 1, 1])
    const sunny = snowCover(winter([5, 15, 15, 15], -5), new Float64Array(4).fill(401), 30, undefined)
    expect(sunny[3]).toBeLessThan(1)
  })

  it('is gone with the snow on the ground, however cold', () => {
    const cover = snowCover(winter([5, 15, 15, 0, 0], -20), new Float64Array(5), 30, undefined)
    // The year goes round: the first hour follows on the bare ground of the last.
    expect(Array.from(cover)).toEqual([1, 1, 1, 0, 0])
  })

  it('takes a partly covered row as covered', () => {
    const cover = snowCover(winter([5, 15, 15, 15], 5), new Float64Array(4).fill(500), 30, 2)
    expect(cover[2]).toBe(1)
  })

  // Townsend & Powers 2011 (from memory): more snow, flatter roof, colder and duller month never lose less.
  it('loses more with more snow, less tilt and less sun in the monthly method', () => {
    const month = { snowfallIn: 20, snowfallBeforeIn: 10, events: 5, eventsBefore: 3, meanC: -3, planeKwhM2: 100 }
    const slope = { tiltDeg: 30, slantIn: 68, dropIn: 120 }
    const loss = monthlySnowLoss(month, slope)
    expect(loss).toBeGreaterThan(0.02)
    expect(loss).toBeLessThan(0.5)
    expect(monthlySnowLoss({ ...month, snowfallIn: 30 }, slope)).toBeGreaterThan(loss)
    expect(monthlySnowLoss({ ...month, planeKwhM2: 50 }, slope)).toBeGreaterThan(loss)
    expect(monthlySnowLoss(month, { ...slope, tiltDeg: 10 })).toBeGreaterThan(loss)
    expect(monthlySnowLoss({ ...month, snowfallIn: 0, snowfallBeforeIn: 0 }, slope)).toBe(0)
    expect(monthlySnowLoss({ ...month, snowfallIn: 400 }, slope)).toBeLessThanOrEqual(1)
  })
})
