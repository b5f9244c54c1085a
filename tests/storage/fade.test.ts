import { describe, expect, test } from 'vitest'
import {
  afterYear,
  calendarRate,
  cycleRate,
  NEW,
  rainflow,
  storageLife,
  warrantyEndAt,
  type Aged,
  type Fade,
  type YearRun,
} from '../../src/storage/index.js'

const YEAR_S = 365.25 * 86_400

describe('the published cell model', () => {
  // Recomputed outside the project with the forms of Naumann et al. 2018 and 2020 (constants from memory).
  test.each([
    [25, 0.5, 1, 4.25],
    [25, 0.5, 10, 13.45],
    [35, 0.5, 10, 16.83],
    [25, 0.9, 10, 17.53],
  ])('calendar at %d deg C, filled %d, %d years: %d %%', (celsius, filled, years, lostPct) => {
    expect(100 * calendarRate(celsius, filled) * Math.sqrt(years * YEAR_S)).toBeCloseTo(lostPct, 2)
  })

  test.each([
    [300, 2.5],
    [3000, 7.92],
  ])('%d full cycles of 0.5C and a depth of 0.8: %d %%', (cycles, lostPct) => {
    expect(100 * cycleRate(0.5, 0.8) * Math.sqrt(cycles)).toBeCloseTo(lostPct, 2)
  })

  test('ten years of 300 full cycles add up as squares: 21.4 %', () => {
    const fade: Fade = { kind: 'cell', temperatureC: 25 }
    const use = { fullCycles: 300, meanFilled: 0.5, cycles: [{ depth: 0.8, count: 375 }], cRate: 0.5 }
    let aged: Aged = NEW
    for (let year = 0; year < 10; year++) aged = afterYear(aged, fade, use)
    expect(100 - aged.capacityPct).toBeCloseTo(21.4, 1)
  })
})

describe('the other two ways to fade', () => {
  const use = { fullCycles: 250, meanFilled: 0.5, cycles: [], cRate: 0.3 }
  test('a straight line reaches the warranted capacity at the end of the warranty', () => {
    let aged: Aged = NEW
    for (let year = 0; year < 10; year++) aged = afterYear(aged, { kind: 'line', endPct: 70, years: 10 }, use)
    expect(aged.capacityPct).toBeCloseTo(70, 9)
  })

  test('stated percents: by age and by full cycle', () => {
    const aged = afterYear(NEW, { kind: 'stated', calendarPctPerYear: 1, cyclePctPerFullCycle: 0.004 }, use)
    expect(aged.capacityPct).toBeCloseTo(98, 9)
  })

  test('capacity never falls below zero', () => {
    expect(afterYear({ ...NEW, capacityPct: 1 }, { kind: 'line', endPct: 1, years: 1 }, use).capacityPct).toBe(0)
  })
})

describe('rainflow count', () => {
  test('the worked example of ASTM E1049 figure 6', () => {
    // -2 1 -3 5 -1 3 -4 4 -2: half cycles of 3, 4, 6, 8, 9, 8 and one cycle of 4 (from memory).
    const cycles = rainflow([-2, 1, -3, 5, -1, 3, -4, 4, -2])
    const counts = new Map<number, number>()
    for (const { range, count } of cycles) counts.set(range, (counts.get(range) ?? 0) + count)
    expect([...counts].toSorted((a, b) => a[0] - b[0])).toEqual([
      [3, 0.5],
      [4, 1.5],
      [6, 0.5],
      [8, 1],
      [9, 0.5],
    ])
  })

  test('values between two turning points change nothing', () => {
    expect(rainflow([0, 1, 2, 2, 5, 3, 0])).toEqual(rainflow([0, 5, 0]))
  })
})

describe('warranty and replacement', () => {
  const run = (cycles: number, kwh = 13.5): YearRun => ({
    chargedKwh: (cycles * kwh) / 0.9,
    dischargedKwh: cycles * kwh,
    use: { fullCycles: cycles, meanFilled: 0.5, cycles: [], cRate: 0.3 },
  })

  test('37 MWh at one full cycle of 13.5 kWh a day: 7.5 years (computed from a retailer page)', () => {
    const warranty = { years: 10, throughputKwh: 37_000, counts: 'discharge' as const }
    const end = warrantyEndAt(warranty, run(365))
    expect(end.by).toBe('throughput')
    expect(end.afterYears).toBeCloseTo(7.51, 2)
    expect(warrantyEndAt({ ...warranty, counts: 'both' }, run(365)).afterYears).toBeCloseTo(
      37_000 / (365 * 13.5 * (1 + 1 / 0.9)),
      9,
    )
    expect(warrantyEndAt({ ...warranty, counts: 'charge' }, run(365)).afterYears).toBeCloseTo(37_000 / (365 * 15), 9)
    expect(warrantyEndAt({ years: 10, fullCycles: 2700 }, run(365)).by).toBe('full cycles')
    expect(warrantyEndAt({ years: 5, fullCycles: 2700 }, run(365))).toEqual({ afterYears: 5, by: 'years' })
  })

  test('a battery is bought again when its warranty ends, and starts new', () => {
    const life = storageLife(20, { kind: 'line', endPct: 70, years: 10 }, { years: 10 }, { atWarrantyEnd: true }, () =>
      run(250),
    )
    expect(life.years.filter(({ replaced }) => replaced).map(({ year }) => year)).toEqual([10, 20])
    expect(life.warrantyEnd).toEqual({ afterYears: 10, by: 'years' })
    expect(life.years[9]?.capacityPct).toBeCloseTo(70, 9)
    expect(life.years[10]?.capacityPct).toBeCloseTo(97, 9)
  })

  test('a throughput limit counts what every year used', () => {
    const warranty = { years: 15, throughputKwh: 37_000, counts: 'discharge' as const }
    const life = storageLife(15, { kind: 'line', endPct: 70, years: 15 }, warranty, undefined, (_, pct) =>
      run(3.65 * pct),
    )
    // 98, 96, ... % of 4927.5 kWh a year: 36.08 MWh after 8 years, and the rest in the ninth.
    const perYear = 4927.5
    const after8 = perYear * (8 - 0.02 * 36)
    expect(life.warrantyEnd?.by).toBe('throughput')
    expect(life.warrantyEnd?.afterYears).toBeCloseTo(8 + (37_000 - after8) / (perYear * 0.82), 6)
  })

  test('a floor of capacity asks for a new battery in the year that falls below it', () => {
    const life = storageLife(
      10,
      { kind: 'line', endPct: 70, years: 10 },
      undefined,
      { floorPct: 80, atWarrantyEnd: false },
      () => run(1),
    )
    expect(life.years.filter(({ replaced }) => replaced).map(({ year }) => year)).toEqual([7])
    expect(life.warrantyEnd).toBeUndefined()
  })
})
