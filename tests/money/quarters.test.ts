import { describe, expect, test } from 'vitest'
import {
  computeBill,
  computeSavings,
  makeCalendar,
  paybackOfProject,
  readTariff,
  readUsage,
  sizesOfProject,
} from '../../src/money/index.js'
import { loadProject } from '../../src/project/index.js'
import { behindMeter, runStorage, type StorageSystem } from '../../src/money/storage/index.js'
import { shiftUse } from '../../src/money/payback/shift-use.js'
import { useOfYears } from '../../src/money/usage/use-of-years.js'
import { Worksheet } from '../../src/worksheet/index.js'
import type { IntervalCsv, Project, Tariff, Usage } from '../../src/project/index.js'
import { total } from './hours.js'

// Energy by quarters of an hour. What bills and batteries make of it was worked out by hand beside each check.

const calendar = makeCalendar('2025-01-01', false)
const spread = (hours: Float64Array): Float64Array =>
  Float64Array.from({ length: 35_040 }, (_, i) => (hours[Math.floor(i / 4)] ?? 0) / 4)
/** kWh in the four quarters of one hour of every day. */
const quartersAt = (hour: number, kwh: readonly number[]): Float64Array =>
  Float64Array.from({ length: 35_040 }, (_, i) => (Math.floor(i / 4) % 24 === hour ? (kwh[i % 4] ?? 0) : 0))

const tariff = (netting: 'instant' | 'hour', rest: Partial<Tariff> = {}): Tariff => ({
  name: 'R-1 (invented)',
  energy: { all_year: { usd_per_kwh: 0.1 } },
  rounding: 'line',
  solar: { net_billing: { netting, export_usd_per_kwh: 0.04, credit: { offsets: 'all', settle: 'never' } } },
  ...rest,
})
const spiky = {
  kind: 'hourly',
  usageKwh: quartersAt(12, [0.4]),
  productionKwh: quartersAt(12, [0.1, 0.1, 0.1, 0.1]),
} as const

describe('bills by quarters of an hour', () => {
  test('see what a kettle draws and the roof gives within one hour', () => {
    const { values } = computeSavings(readTariff(tariff('instant')), spiky, calendar)
    // Each day .3 kWh are drawn in the first quarter, and .1 kWh given in each of the others.
    expect(values.with.import_kwh).toBeCloseTo(365 * 0.3, 9)
    expect(values.with.export_kwh).toBeCloseTo(365 * 0.3, 9)
    expect(values.without.import_kwh).toBeCloseTo(365 * 0.4, 9)
  })

  test('net over the hour where the tariff does', () => {
    const { values } = computeSavings(readTariff(tariff('hour')), spiky, calendar)
    expect([values.with.import_kwh, values.with.export_kwh]).toEqual([0, 0])
    expect(values.with.generation_kwh).toBeCloseTo(365 * 0.4, 9)
  })

  test.each([
    [15, 1.6, 1.2],
    [30, 0.8, 0.6],
    [60, 0.4, 0.3],
    [undefined, 0.4, 0.3],
  ] as const)('demand over %s minutes is %s kW without and %s kW with the system', (minutes, without, withSystem) => {
    const demand: Partial<Tariff> = {
      demand: { peak: { usd_per_kw: 10 } },
      ...(minutes === undefined ? {} : { demand_interval_min: minutes }),
    }
    for (const netting of ['instant', 'hour'] as const) {
      const { values, findings } = computeSavings(readTariff(tariff(netting, demand)), spiky, calendar)
      const kw = (bills: typeof values.with): number | undefined =>
        bills.bills[5]?.lines.find(({ id }) => id === 'demand.peak')?.quantity
      expect(kw(values.without)).toBeCloseTo(without, 9)
      // The meter counts what is drawn; what is given back within the window lowers no demand.
      expect(kw(values.with)).toBeCloseTo(withSystem, 9)
      const said = values.with.bills[5]?.lines.find(({ id }) => id === 'demand.peak')?.says
      expect(said).toBe(minutes === 15 || minutes === 30 ? `peak: highest ${minutes} minutes` : 'peak: highest hour')
      expect(findings.map(({ id }) => id)).not.toContain('bill.demand-interval')
    }
  })

  test('demand counts in the period of its window alone', () => {
    const onPeak: Partial<Tariff> = {
      time_of_use: {
        periods: ['on', 'off'],
        rules: [{ period: 'on', days: ['every_day'], from_hour: 12, to_hour: 13 }],
        otherwise: 'off',
      },
      energy: { all_year: { periods_usd_per_kwh: { on: 0.2, off: 0.1 } } },
      demand: { on: { usd_per_kw: 10, periods: ['on'] }, off: { usd_per_kw: 5, periods: ['off'] } },
      demand_interval_min: 30,
    }
    const { values } = computeSavings(readTariff(tariff('instant', onPeak)), spiky, calendar)
    const lines = Object.fromEntries(values.without.bills[5]!.lines.map(({ id, quantity }) => [id, quantity]))
    expect(lines['demand.on']).toBeCloseTo(0.8, 9)
    // No line for nothing.
    expect(lines['demand.off']).toBeUndefined()
  })

  test('periods that begin within an hour get what was used in them', () => {
    const late: Partial<Tariff> = {
      time_of_use: {
        periods: ['on', 'off'],
        rules: [{ period: 'on', days: ['every_day'], from_hour: 12.25, to_hour: 13 }],
        otherwise: 'off',
      },
      energy: { all_year: { periods_usd_per_kwh: { on: 0.2, off: 0.1 } } },
    }
    const usageKwh = quartersAt(12, [0.4, 0.1, 0, 0])
    const { values, findings } = computeBill(
      readTariff(tariff('instant', late)),
      { kind: 'hourly', usageKwh },
      calendar,
    )
    const january = Object.fromEntries(values.bills[0]!.lines.map(({ id, quantity }) => [id, quantity]))
    expect(january['energy.all_year.off']).toBeCloseTo(31 * 0.4, 9)
    expect(january['energy.all_year.on']).toBeCloseTo(31 * 0.1, 9)
    expect(findings.map(({ id }) => id)).not.toContain('bill.split-hours')
  })

  test('are those of hours where each hour is even', () => {
    const hour = (f: (h: number) => number) =>
      Float64Array.from({ length: 8760 }, (_, h) => Math.round(4e6 * f(h)) / 4e6)
    const usageKwh = hour((h) => 0.4 + 0.3 * Math.sin(h / 3.7) ** 2)
    const productionKwh = hour((h) => (h % 24 > 6 && h % 24 < 18 ? 1.1 + 0.7 * Math.sin(h / 11) : 0))
    for (const netting of ['instant', 'hour'] as const) {
      const sheet = readTariff(tariff(netting, { demand: { peak: { usd_per_kw: 8 } } }))
      const hourly = computeSavings(sheet, { kind: 'hourly', usageKwh, productionKwh }, calendar)
      const fine = computeSavings(
        sheet,
        { kind: 'hourly', usageKwh: spread(usageKwh), productionKwh: spread(productionKwh) },
        calendar,
      )
      // Rounding to millionths of a kWh in 35,040 steps moves no cent here.
      expect(fine.values.annual_savings_usd).toBeCloseTo(hourly.values.annual_savings_usd, 2)
      expect(fine.values.with.import_kwh).toBeCloseTo(hourly.values.with.import_kwh, 2)
    }
  })
})

const system: StorageSystem = {
  battery: {
    mostKwh: 6,
    leastKwh: 1,
    chargeSunKw: 2,
    chargeGridKw: 2,
    dischargeKw: 3,
    storedOfSun: 0.95,
    storedOfGrid: 0.95,
    givenOfStored: 0.95,
    standbyKw: 0.02,
  },
  control: { chargeFrom: 'surplus', batteryExport: false },
  startShare: 0.5,
}

describe('a battery by quarters of an hour', () => {
  /** Seeded noise, the same each time. */
  const noise = (seed: number): (() => number) => {
    let state = seed
    return () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647
  }

  test('keeps the energy of each step', () => {
    const draw = noise(7)
    const usageKwh = Float64Array.from({ length: 35_040 }, () => (draw() < 0.1 ? 1.5 * draw() : 0.1 * draw()))
    const productionKwh = Float64Array.from({ length: 35_040 }, (_, i) =>
      Math.floor(i / 4) % 24 > 7 && Math.floor(i / 4) % 24 < 17 ? draw() : -0.0005,
    )
    const control = {
      chargeFrom: 'any',
      batteryExport: false,
      exportCapKw: 1.5,
      charge: Uint8Array.from({ length: 8760 }, (_, h) => (h % 24 < 3 ? 1 : 0)),
      discharge: Uint8Array.from({ length: 8760 }, (_, h) => (h % 24 > 15 ? 1 : 0)),
    } as const
    const { flows, battery } = runStorage({ ...system, control }, usageKwh, productionKwh)
    let stored = flows.startKwh
    // The worst of all steps: as many expectations would take longer than the steps.
    const worst = { balance: 0, stored: 0, charge: 0, out: 0, exported: 0 }
    const hoursOut = new Set<number>()
    for (let i = 0; i < 35_040; i++) {
      const [charge, out] = [flows.chargeKwh[i]!, flows.dischargeKwh[i]!]
      const into = usageKwh[i]! + 0.02 / 4 + charge + flows.exportKwh[i]! + flows.curtailedKwh[i]!
      worst.balance = Math.max(worst.balance, Math.abs(into - productionKwh[i]! - out - flows.importKwh[i]!))
      stored += charge * 0.95 - out / 0.95
      worst.stored = Math.max(worst.stored, Math.abs(stored - flows.storedKwh[i]!))
      stored = flows.storedKwh[i]!
      worst.charge = Math.max(worst.charge, charge)
      worst.out = Math.max(worst.out, out)
      worst.exported = Math.max(worst.exported, flows.exportKwh[i]!)
      if (out > 0) hoursOut.add(Math.floor(i / 4) % 24)
    }
    expect(worst.balance).toBeLessThan(1e-9)
    expect(worst.stored).toBeLessThan(1e-9)
    expect(worst.charge).toBeLessThanOrEqual(2 / 4 + 1e-12)
    expect(worst.out).toBeLessThanOrEqual(3 / 4 + 1e-12)
    expect(worst.exported).toBeLessThanOrEqual(1.5 / 4 + 1e-12)
    // Windows are those of the hours.
    expect(Math.min(...hoursOut)).toBeGreaterThan(15)
    expect(hoursOut.size).toBeGreaterThan(0)
    expect(Math.max(...flows.storedKwh)).toBeCloseTo(battery.mostKwh, 9)
  })

  test('stores and gives back what an hour hides', () => {
    const { outputKwh, generationKwh } = behindMeter({ ...system, battery: { ...system.battery, standbyKw: 0 } })(
      spiky.usageKwh,
      spiky.productionKwh,
    )
    // From the second day on: .3 kWh taken in three quarters, .285 stored, .271 given in the first of the next noon.
    const noon = (24 * 40 + 12) * 4
    expect(outputKwh[noon]).toBeCloseTo(0.1 + 0.3, 9)
    expect(outputKwh[noon + 1]).toBeCloseTo(0, 9)
    expect(total(generationKwh)).toBeCloseTo(365 * 0.4, 9)
    // 20 W of standby are 5 Wh a quarter; an empty battery does nothing else.
    const idle = behindMeter({ ...system, startShare: 1 / 6 })(spiky.usageKwh, new Float64Array(35_040))
    expect(idle.outputKwh[7]).toBeCloseTo(-0.005, 12)
    expect(total(idle.outputKwh)).toBeCloseTo(-0.02 * 8760, 6)
    const byHour = runStorage(
      { ...system, battery: { ...system.battery, standbyKw: 0 } },
      new Float64Array(8760).fill(0.1),
      new Float64Array(8760).fill(0.1),
    )
    expect(total(byHour.flows.chargeKwh)).toBe(0)
  })
})

describe('use by quarters of an hour through the years', () => {
  test('grows, and takes new loads evenly', () => {
    const usage: Usage = {
      annual_kwh: 1,
      growth_pct_per_year: 10,
      new_loads: { pump: { kwh_per_year: 8760, shape: 'even', from_year: 2 } },
    }
    const usageOf = useOfYears(
      usage,
      spiky.usageKwh,
      { calendar, outdoorC: () => new Float64Array(8760) },
      2025,
      new Worksheet(),
    )
    expect(total(usageOf!(1))).toBeCloseTo(146, 6)
    expect(total(usageOf!(2))).toBeCloseTo(146 * 1.1 + 8760, 3)
    expect(usageOf!(2)[48]).toBeCloseTo(0.4 * 1.1 + 0.25, 6)
  })

  test('is moved within its day', () => {
    const moved = shiftUse(quartersAt(20, [1, 0, 0, 0]), spiky.productionKwh, 0.1)
    expect(moved.slice(48, 52).every((kwh) => Math.abs(kwh - 0.025) < 1e-12)).toBe(true)
    expect(moved[80]).toBeCloseTo(0.9, 12)
    expect(total(moved)).toBeCloseTo(365, 9)
  })
})

/**
 * A house with a battery, on a roof of few sizes: each runs all years by quarters, and past the end of the warranty no year tells of
 * quarters what the one before did not.
 */
function batteryHouse(): Project {
  const { project } = loadProject({
    path: new URL('../../examples/fleet/fresno-battery.yaml', import.meta.url).pathname,
  })
  const [south, main] = [project.roof_planes['south']!, project.arrays['main']!]
  return {
    ...project,
    roof_planes: { south: { ...south, outline: { shape: 'rectangle', width_ft: 20, depth_ft: 12 } } },
    arrays: { main: { ...main, modules: 4 } },
    finance: { ...project.finance, years: 12 },
  }
}

describe('a table of readings', () => {
  const mapping: IntervalCsv = {
    file: 'meter.csv',
    header_line: 1,
    stamp_columns: ['time'],
    stamp_format: 'YYYY-MM-DD HH:mm',
    stamps_mark: 'beginning',
    clock: 'standard',
    unit: 'kwh',
    interval_min: 15,
    use_column: 'kWh',
  }
  const stamp = (i: number, minutes: number): string =>
    new Date(Date.UTC(2025, 0, 1) + i * minutes * 60_000).toISOString().slice(0, 16).replace('T', ' ')
  const rows = (count: number, minutes = 15): string[] =>
    Array.from({ length: count }, (_, i) => `${stamp(i, minutes)},${i % 4 === 0 ? '0.4' : '0.1'}`)
  const read = (lines: readonly string[], rest: Partial<IntervalCsv> = {}) =>
    readUsage(
      { interval_csv: { ...mapping, ...rest }, daylight_saving: false },
      { fileText: ['time,kWh', ...lines].join('\n'), utcOffsetH: -5 },
    )

  test('by quarters keeps them, and four add up to their hour', () => {
    const { values } = read(rows(35_040))
    expect(values.quarterKwh!.slice(0, 5)).toEqual(Float64Array.of(0.4, 0.1, 0.1, 0.1, 0.4))
    const apart: number[] = []
    for (let h = 0; h < 8760; h++) {
      const sum = [0, 1, 2, 3].reduce((all, q) => all + Math.round(values.quarterKwh![4 * h + q]! * 1e6), 0)
      if (sum !== Math.round(values.usageKwh[h]! * 1e6)) apart.push(h)
    }
    expect(apart).toEqual([])
  })

  test('of five minutes is added up to quarters, one of ten and of sixty minutes has hours', () => {
    const five = read(rows(105_120, 5), { interval_min: 5 })
    expect(total(five.values.quarterKwh!.slice(0, 4))).toBeCloseTo(3 * (0.4 + 0.3), 9)
    // Minutes 0, 20 and 40 have .4: so have the first, second and third quarter.
    expect(five.values.quarterKwh![3]).toBeCloseTo(0.3, 9)
    expect(read(rows(52_560, 10), { interval_min: 10 }).values.quarterKwh).toBeUndefined()
    expect(read(rows(8760, 60), { interval_min: 60 }).values.quarterKwh).toBeUndefined()
  })

  test('reaches bills, battery and payback of a project, and sizes with storage', { timeout: 180_000 }, () => {
    const project = batteryHouse()
    const of = (minutes: 15 | 60) => {
      // The same use: by hours .7 kWh, by quarters .4 in the first and .1 in the others.
      const lines = minutes === 15 ? rows(35_040) : Array.from({ length: 8760 }, (_, h) => `${stamp(h, 60)},0.7`)
      const usage: Usage = { interval_csv: { ...mapping, interval_min: minutes }, daylight_saving: false }
      const tariff: Tariff = {
        ...project.tariff!,
        solar: { net_billing: { ...project.tariff!.solar!.net_billing!, netting: 'instant' } },
      }
      const files = new Map([['meter.csv', ['time,kWh', ...lines].join('\n')]])
      return [{ ...project, usage, tariff }, files] as const
    }
    const fine = paybackOfProject(...of(15), { brief: true })
    const hourly = paybackOfProject(...of(60), { brief: true })
    const bills = (result: typeof fine) => result.values.bills
    expect(bills(fine).with.usage_kwh).toBeCloseTo(0.7 * 8760, 3)
    expect(bills(fine).without.total_usd).toBe(bills(hourly).without.total_usd)
    // What is seen within the hour is drawn and given more, with a battery and without.
    const [own, plain] = [fine.values.storage!, hourly.values.storage!]
    expect(own.without.export_kwh).toBeGreaterThan(plain.without.export_kwh + 1)
    expect(own.annual.charged_kwh).toBeGreaterThan(plain.annual.charged_kwh)
    expect(own.annual.standby_kwh).toBe(plain.annual.standby_kwh)
    expect(own.outage?.[0]?.p50_h).toBeGreaterThan(0)
    const said = (result: typeof fine): string | undefined =>
      result.findings.find(({ id }) => id === 'storage.hourly')?.message
    expect(said(fine)).toContain('quarters of an hour')
    expect(said(hourly)).toContain('within each hour')
    expect(fine.assumptions.map(({ path }) => path)).toContain('usage.interval_csv')
    expect(hourly.assumptions.map(({ path }) => path)).not.toContain('usage.interval_csv')
    const sizes = sizesOfProject(...of(15), { storageUnits: 1 })
    const row = sizes.values.with_storage!.rows.find(({ modules, units }) => modules === 4 && units === 1)
    expect(row?.first_year_savings_usd).toBe(fine.values.first_year_savings_usd)
    expect(sizes.values.with_storage!.rows.length).toBeGreaterThan(5)
  })

  test('has an optimum where prices change within the hour, which hours have not', () => {
    const project = batteryHouse()
    const of = (lines: readonly string[], minutes: 15 | 60) => {
      const usage: Usage = { interval_csv: { ...mapping, interval_min: minutes }, daylight_saving: false }
      const time_of_use = {
        ...project.tariff!.time_of_use!,
        rules: [{ period: 'on_peak', days: ['weekdays' as const], from_hour: 16.25, to_hour: 21 }],
      }
      const files = new Map([['meter.csv', ['time,kWh', ...lines].join('\n')]])
      const priced = { ...project, usage, tariff: { ...project.tariff!, time_of_use } }
      return paybackOfProject(priced, files, { brief: true, optimum: true })
    }
    const { optimum, optimum_share_pct: share } = of(rows(35_040), 15).values.storage!
    expect(optimum!.least_usd).toBeLessThan(optimum!.control_usd)
    expect(optimum!.control_usd).toBeLessThan(optimum!.without_usd)
    expect(share).toBeCloseTo(
      (100 * (optimum!.without_usd - optimum!.control_usd)) / (optimum!.without_usd - optimum!.least_usd),
      1,
    )
    const hourly = of(
      Array.from({ length: 8760 }, (_, h) => `${stamp(h, 60)},0.7`),
      60,
    )
    expect(hourly.values.storage!.optimum).toBeNull()
    expect(hourly.findings.find(({ id }) => id === 'storage.no-optimum')?.message).toContain(
      'a price period begins within an hour, and use is known by hours',
    )
  })

  test('with an hour missing is filled evenly, and it is told where', () => {
    const { values, findings } = read(rows(35_040).toSpliced(4 * 100, 4))
    expect(values.quarterKwh!.slice(400, 404)).toEqual(new Float64Array(4).fill(0.175))
    expect(findings.find(({ id }) => id === 'usage.gaps-filled')?.message).toContain(
      'from 2025-01-05 04:00 standard time',
    )
  })

  test('of 8,761 hours is told to reach beyond a year, one of a leap year is not', () => {
    const told = (count: number): string | undefined =>
      read(rows(count, 60), { interval_min: 60 }).findings.find(({ id }) => id === 'usage.beyond-a-year')?.message
    expect(told(8760)).toBeUndefined()
    expect(told(8761)).toContain('reaches 1 hours beyond a year')
  })

  test('that is wrong is refused with its place', () => {
    const refused = (lines: readonly string[]): string => {
      try {
        read(lines)
      } catch (error) {
        return (error as Error).message
      }
      return 'accepted'
    }
    expect(refused(rows(35_040).with(7, `${stamp(7, 15)},-0.1`))).toBe('meter.csv:9:18: the reading -0.1 is below zero')
    expect(refused(rows(35_040).with(7, `${stamp(7, 15)},much`))).toContain("meter.csv:9:18: 'much' is not a number")
    expect(refused([...rows(35_040), `${stamp(9, 15)},0.7`])).toContain(
      'two different readings overlap at 2025-01-01 07:15 UTC',
    )
    expect(refused(rows(35_040).toSpliced(4 * 100, 4 * 30))).toContain('30 hours are missing from 2025-01-05 04:00')
    expect(refused(rows(30_000))).toContain('the data cover 312.5 days; a whole year is needed')
  })
})
