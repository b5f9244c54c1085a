import { describe, expect, it } from 'vitest'
import { payback, readTariff, readTariffs, type PaybackInput } from '../../src/money/index.js'
import { contractPrice } from '../../src/money/tariff/index.js'
import { toNumber } from '../../src/money/bill/index.js'
import { billWeights } from '../../src/money/years/index.js'
import { useOfYears } from '../../src/money/usage/index.js'
import type { Finance, Tariff, Usage } from '../../src/project/index.js'
import { StageError, Worksheet } from '../../src/worksheet/index.js'
import { bell, calendar2025, even, everyDayAt, total } from './hours.js'

const flat: Tariff = {
  name: 'Flat (invented)',
  energy: { all_year: { usd_per_kwh: 0.2 } },
  rounding: 'total',
  solar: { net_metering: { settle: 'annual', true_up_month: 12 } },
}
const plain: Finance = {
  years: 20,
  base_year: 2026,
  discount_rate_pct: 3,
  inflation_pct: 2.5,
  degradation_pct_per_year: 0,
  electricity_escalation_pct: 0,
  installed_cost_usd: 10_000,
  uncertainty: { samples: 100 },
}
const run = (tariff: Tariff, finance: Finance, more: Partial<PaybackInput> = {}) => {
  const { without, withSystem } = readTariffs(tariff)
  return payback({
    sheet: without,
    sheetWithSystem: withSystem,
    energy: { kind: 'hourly', usageKwh: even(1), productionKwh: bell(2) },
    calendar: calendar2025,
    dcRatingW: 5000,
    finance: { ...plain, ...finance },
    incentives: {},
    ...more,
  })
}
const savings = (result: ReturnType<typeof run>): number[] => result.values.cash_flow.map((row) => row.bill_savings_usd)

/*
 * E1: worked example of an export contract, computed apart from this program. 3,000 kWh a year are exported, 0.5 % less each year, at
 * 0.08 USD/kWh in money of each year for 10 years, then at 0.04 in money of the base date with 2.5 % inflation; 20 years.
 */
const E1_CONTRACT: Tariff = {
  ...flat,
  solar: {
    net_billing: {
      netting: 'hour',
      export_usd_per_kwh: 0.04,
      credit: { offsets: 'all', settle: 'monthly', paid_out_pct: 100 },
    },
    export_contract: { steps: [{ years: 10, usd_per_kwh: 0.08 }], afterwards: 'tariff' },
  },
}

describe('an export contract (E1)', () => {
  const contract = readTariff(E1_CONTRACT).exportContract!
  const paid = Array.from({ length: 20 }, (_, i) => {
    const t = i + 1
    const promised = contractPrice(contract, t)
    return 3000 * 0.995 ** i * (promised === undefined ? 0.04 * 1.025 ** t : toNumber(promised))
  })

  it('pays what the worked example pays', () => {
    expect([paid[0], paid[9], paid[10], paid[19]].map((usd) => usd!.toFixed(2))).toEqual([
      '240.00',
      '229.41',
      '149.75',
      '178.77',
    ])
    expect(paid.reduce((a, b) => a + b, 0).toFixed(2)).toBe('3985.53')
    expect(paid.reduce((pv, usd, i) => pv + usd / 1.05 ** (i + 1), 0).toFixed(2)).toBe('2586.47')
  })

  // All output is exported: the house uses its energy in the first hour of the day, and makes it in the 13th.
  const energy = {
    kind: 'hourly' as const,
    usageKwh: everyDayAt(0, 12),
    productionKwh: everyDayAt(12, Math.round((3000 / 365) * 1e6) / 1e6),
  }

  it('comes out of whole bills to the cents that bills are rounded to', () => {
    const nominal: Finance = { money: 'nominal', discount_rate_pct: 5, degradation_pct_per_year: 0.5 }
    const result = run(E1_CONTRACT, nominal, { energy })
    const rows = savings(result)
    // Twelve bills a year, each to half a cent, without and with.
    for (const [i, usd] of paid.entries()) expect(Math.abs(rows[i + 1]! - usd)).toBeLessThan(0.12)
    expect(rows.reduce((a, b) => a + b, 0)).toBeCloseTo(3985.53, 0)
    expect(result.values.years_ahead?.[9]?.contract_usd_per_kwh).toBe(0.08)
    expect(result.values.years_ahead?.[10]?.contract_usd_per_kwh).toBe(null)
    // The bills of the first year know the promised price too.
    expect(result.values.first_year_savings_usd).toBeCloseTo(240, 1)
  })

  it('falls by inflation in constant dollars, and has the same present value', () => {
    const real = run(
      E1_CONTRACT,
      { money: 'real', discount_rate_pct: (1.05 / 1.025 - 1) * 100, degradation_pct_per_year: 0.5 },
      { energy },
    )
    const nominal = run(
      E1_CONTRACT,
      { money: 'nominal', discount_rate_pct: 5, degradation_pct_per_year: 0.5 },
      { energy },
    )
    expect(savings(real)[10]!).toBeCloseTo(229.41 / 1.025 ** 10, 1)
    expect(real.values.npv_usd).toBeCloseTo(nominal.values.npv_usd, 1)
  })

  it('steps down and expires', () => {
    const steps = {
      steps: [
        { years: 2, usd_per_kwh: 0.1 },
        { years: 3, usd_per_kwh: 0.05 },
      ],
      afterwards: 'unpaid' as const,
    }
    const rows = savings(
      run(
        { ...E1_CONTRACT, solar: { ...E1_CONTRACT.solar, export_contract: steps } },
        { money: 'nominal', discount_rate_pct: 5 },
        { energy },
      ),
    )
    expect(rows.slice(1, 7).map((usd) => Math.round(usd))).toEqual([300, 300, 150, 150, 150, 0])
  })

  it('refuses a rule without an export price', () => {
    const tariff = { ...flat, solar: { ...flat.solar, export_contract: E1_CONTRACT.solar!.export_contract! } }
    expect(() => readTariff(tariff)).toThrow(/no export price that a contract could replace/u)
  })
})

describe('prices that go their own ways', () => {
  it('gives the same years as one escalation where all parts follow it', () => {
    const one = run(flat, { electricity_escalation_pct: 2 })
    const parts = { real_pct_per_year: 2 }
    const apart = run(flat, {
      electricity_escalation_pct: 0,
      price_path: { energy: parts, fixed: parts, export: parts },
    })
    // Twelve bills of the year, rounded to the cent without and with: 24 half cents.
    savings(one).forEach((usd, t) => expect(Math.abs(savings(apart)[t]! - usd)).toBeLessThan(0.13))
    expect(apart.values.npv_usd).toBeCloseTo(one.values.npv_usd, 0)
  })

  it('lets a fixed charge rise without moving what the system saves, and energy move it in proportion', () => {
    const withFixed: Tariff = { ...flat, fixed: { customer: { usd_per_month: 12 } } }
    const still = savings(run(withFixed, {}))
    const fixed = savings(run(withFixed, { price_path: { fixed: { real_pct_per_year: 5 } } }))
    const energy = savings(run(withFixed, { price_path: { energy: { relative_by_year: [1, 1.5] } } }))
    expect(Math.abs(fixed[20]! - still[20]!)).toBeLessThan(0.13)
    expect(energy[1]!).toBeCloseTo(still[1]!, 0)
    // The last year of a path goes on.
    expect(energy[20]! / still[20]!).toBeCloseTo(1.5, 3)
  })

  it('lets charges that only a solar customer has follow the path of fixed charges alone', () => {
    const solarFixed: Tariff = {
      ...flat,
      fixed: { customer: { usd_per_month: 12 } },
      solar: { ...flat.solar, fixed: { customer: { usd_per_month: 32 } } },
    }
    const still = savings(run(solarFixed, {}))
    const rising = savings(run(solarFixed, { price_path: { fixed: { real_pct_per_year: 5 } } }))
    // 20 USD a month more than without the system, 1.05^10 times as much in year 10.
    expect(still[10]! - rising[10]!).toBeCloseTo(240 * (1.05 ** 10 - 1), 0)
    const energy = savings(run(solarFixed, { price_path: { energy: { relative_by_year: [2] } } }))
    expect(energy[1]!).toBeCloseTo(2 * (still[1]! + 240) - 240, 0)
  })

  it('refuses a part that states no path, or two', () => {
    expect(() => run(flat, { price_path: { energy: {} } })).toThrow(StageError)
    expect(() => run(flat, { price_path: { energy: { real_pct_per_year: 1, relative_by_year: [1] } } })).toThrow(
      /both/u,
    )
  })
})

describe('rate sheets with a date', () => {
  const later = (usd: number, from: string): Tariff => ({
    ...flat,
    later: [{ from, tariff: { ...flat, name: 'Later (invented)', energy: { all_year: { usd_per_kwh: usd } } } }],
  })

  it('replaces the earlier one from its day on, in money of its day', () => {
    const result = run(later(0.3, '2029-01-01'), { money: 'nominal', discount_rate_pct: 5 })
    const rows = savings(result)
    const kwh = total(bell(2))
    expect(rows[2]!).toBeCloseTo(kwh * 0.2 * 1.025 ** 2, 0)
    // 2029 is year 3: the printed price, not an inflated one; from then on it follows inflation.
    expect(rows[3]!).toBeCloseTo(kwh * 0.3, 0)
    expect(rows[5]!).toBeCloseTo(kwh * 0.3 * 1.025 ** 2, 0)
    expect(result.values.years_ahead?.[2]).toMatchObject({ calendar_year: 2029, tariffs: ['Later (invented)'] })
  })

  it('shares a year out by the days of its bills', () => {
    const rows = savings(run(later(0.4, '2029-07-16'), { inflation_pct: 0 }))
    const kwh = bell(2)
    const day = total(kwh.slice(0, 24))
    // 196 days at 0.20 (to 15 July), 169 at 0.40.
    expect(rows[3]!).toBeCloseTo(day * (196 * 0.2 + 169 * 0.4), 0)
  })

  it('weighs bills by days', () => {
    const calendar = billWeights(['2029-07-16'], 2029, undefined)
    expect(calendar[5]).toEqual([1, 0])
    expect(calendar[6]![0]).toBeCloseTo(15 / 31, 12)
    expect(calendar[7]).toEqual([0, 1])
    // A bill that is read on the 15th runs from the 16th of the month before.
    const read = billWeights(['2029-01-01'], 2029, 15)
    expect(read[0]![0]).toBeCloseTo(16 / 31, 12)
  })

  it('needs the year of purchase', () => {
    const { without } = readTariffs(later(0.3, '2029-01-01'))
    const { base_year: _, ...undated } = plain
    const input: PaybackInput = {
      sheet: without,
      energy: { kind: 'hourly', usageKwh: even(1), productionKwh: bell(2) },
      calendar: calendar2025,
      dcRatingW: 5000,
      finance: undated,
      incentives: {},
    }
    expect(() => payback(input)).toThrow(/year of purchase is not stated/u)
  })

  it('refuses sheets out of order and days that do not exist', () => {
    const sheet = later(0.3, '2029-01-01').later![0]!
    expect(() => readTariffs({ ...flat, later: [sheet, { ...sheet, from: '2028-01-01' }] })).toThrow(/not after/u)
    expect(() => readTariffs({ ...flat, later: [{ ...sheet, from: '2029-02-30' }] })).toThrow(/no day/u)
  })

  it('warns when the later sheet pays nothing for exports', () => {
    const { solar: _, ...unpaid } = flat
    const { findings } = run({ ...flat, later: [{ from: '2029-01-01', tariff: unpaid }] }, {})
    expect(findings.map(({ id }) => id)).toContain('payback.later-sheet-unpaid')
  })
})

describe('use that grows, and new loads', () => {
  const useOf = (usage: Usage, baseYear: number | undefined = 2026) =>
    useOfYears(usage, even(1), { calendar: calendar2025, outdoorC: () => even(0) }, baseYear, new Worksheet())!

  it('grows every hour from the second year on', () => {
    const use = useOf({ growth_pct_per_year: 2 })
    expect(total(use(1))).toBeCloseTo(8760, 6)
    expect(total(use(11))).toBeCloseTo(8760 * 1.02 ** 10, 2)
  })

  it('adds a load from its year or its day on, exact over the year', () => {
    const car = { kwh_per_year: 2400, shape: 'ev_timed', kw: 7.2 }
    const byYear = useOf({ new_loads: { car: { ...car, from_year: 3 } } })
    expect(total(byYear(2))).toBeCloseTo(8760, 6)
    expect(total(byYear(3))).toBeCloseTo(8760 + 2400, 6)
    const byDay = useOf({ new_loads: { car: { ...car, from: '2029-07-01' } } })
    expect(total(byDay(2))).toBeCloseTo(8760, 6)
    // 1 July to 31 December are 184 of 365 days.
    expect(Math.abs(total(byDay(3)) - 8760 - (2400 * 184) / 365)).toBeLessThan(0.01)
    expect(total(byDay(4))).toBeCloseTo(8760 + 2400, 6)
  })

  it('charges at the stated power from midnight, or from 18:00, until the day is done', () => {
    // 3,285 kWh a year are 9 kWh a day: 7.2 kW in the first hour, 1.8 in the second (winter: clock time is standard time).
    const car = { from_year: 1, kwh_per_year: 3285, kw: 7.2 }
    const day = (shape: string): number[] =>
      Array.from(useOf({ new_loads: { car: { ...car, shape } } })(1).slice(24, 48), (kwh) => kwh - 1)
    const timed = day('ev_timed')
    expect([timed[0], timed[1], timed[2]]).toEqual([
      expect.closeTo(7.2, 2),
      expect.closeTo(1.8, 2),
      expect.closeTo(0, 6),
    ])
    const home = day('ev_unmanaged')
    expect([home[17], home[18], home[19], home[20]]).toEqual(
      [0, expect.closeTo(7.2, 2), expect.closeTo(1.8, 2), 0].map((kwh) => (kwh === 0 ? expect.closeTo(0, 6) : kwh)),
    )
  })

  it('heats by degree hours over a coefficient that falls with the cold', () => {
    // Half of the hours at 32 deg F (30 below balance), half at 2 deg F (60 below), COP 3 and 2: weights 10 and 30.
    const outdoorC = Float64Array.from({ length: 8760 }, (_, h) => (h % 2 === 0 ? 0 : (2 - 32) / 1.8))
    const heat_pump = {
      balance_f: 62,
      cop: [
        { outdoor_f: 32, cop: 3 },
        { outdoor_f: 2, cop: 2 },
      ],
    }
    const pump = { from_year: 1, kwh_per_year: 4380, shape: 'heat_pump', heat_pump }
    const use = useOfYears(
      { new_loads: { pump } },
      even(0),
      { calendar: calendar2025, outdoorC: () => outdoorC },
      2026,
      new Worksheet(),
    )!(1)
    expect(use[0]).toBeCloseTo(0.25, 5)
    expect(use[1]).toBeCloseTo(0.75, 5)
  })

  it.each([
    ['no beginning', { kwh_per_year: 100, shape: 'even' }, 'usage.new_loads.x'],
    ['two beginnings', { kwh_per_year: 100, shape: 'even', from_year: 1, from: '2029-01-01' }, 'usage.new_loads.x'],
    ['a car without power', { kwh_per_year: 100, shape: 'ev_timed', from_year: 1 }, 'usage.new_loads.x.kw'],
    ['power without a car', { kwh_per_year: 100, shape: 'even', from_year: 1, kw: 3 }, 'usage.new_loads.x.kw'],
    [
      'more than the charger gives',
      { kwh_per_year: 20_000, shape: 'ev_timed', from_year: 1, kw: 1.4 },
      'usage.new_loads.x.kw',
    ],
    ['an unknown shape', { kwh_per_year: 100, shape: 'sauna', from_year: 1 }, 'usage.new_loads.x.shape'],
    [
      'a heat pump without its sheet',
      { kwh_per_year: 100, shape: 'heat_pump', from_year: 1 },
      'usage.new_loads.x.heat_pump',
    ],
  ])('refuses %s', (_, load, where) => {
    try {
      useOf({ new_loads: { x: load } })
    } catch (error) {
      expect((error as StageError).where).toBe(where)
      return
    }
    expect.unreachable()
  })

  it('is carried by the bills without and with the system', () => {
    const usageOf = useOf({ new_loads: { car: { kwh_per_year: 2400, shape: 'ev_timed', kw: 7.2, from_year: 3 } } })
    // Exports are unpaid, and the car is charged at night: it moves both bills alike, and no saving.
    const { solar: _, ...unpaid } = flat
    const rows = savings(run(unpaid, {}, { usageOf }))
    expect(Math.abs(rows[3]! - rows[2]!)).toBeLessThan(0.3)
    // Energy that is used by day saves: the same load in the sunny hours takes exports in.
    const noon = (year: number): Float64Array =>
      year < 3 ? even(1) : even(1).map((kwh, h) => (h % 24 === 12 ? 2 : kwh))
    const sunny = savings(run(unpaid, {}, { usageOf: noon }))
    expect(sunny[3]! - sunny[2]!).toBeGreaterThan(50)
  })
})

describe('years that differ', () => {
  it('leave the sensitivity table and the draws whole', () => {
    const result = run(E1_CONTRACT, { price_path: { energy: { real_pct_per_year: 1 } } })
    const ids = result.values.sensitivity.map(({ id }) => id)
    expect(ids).toContain('own_use')
    expect(ids).toContain('escalation_added')
    const price = result.values.sensitivity.find(({ id }) => id === 'export_price')!
    expect(price.npv_at_low_usd).toBeLessThan(result.values.npv_usd)
    expect(price.npv_at_high_usd).toBeGreaterThan(result.values.npv_usd)
    const { npv_usd: npv } = result.values.uncertainty
    expect(npv.p90!).toBeLessThan(result.values.npv_usd)
    expect(npv.p10!).toBeGreaterThan(result.values.npv_usd)
  })

  it('count one-off costs in their year, and tell those after the study', () => {
    const result = run(flat, {
      one_off_costs: [
        { name: 'panel', year: 4, usd: 900 },
        { name: 'late', year: 30, usd: 5 },
      ],
    })
    expect(result.values.cash_flow[4]?.one_off_usd).toBe(900)
    expect(result.values.npv_usd).toBeCloseTo(run(flat, {}).values.npv_usd - 900 / 1.03 ** 4, 1)
    expect(result.findings.map(({ id }) => id)).toContain('payback.cost-after-study')
  })
})
