import { describe, expect, it } from 'vitest'
import { billFromPeriods, computeBill, readTariff } from '../../src/money/index.js'
import type { Tariff } from '../../src/project/index.js'
import { StageError } from '../../src/worksheet/index.js'
import { calendar2025, everyDayAt } from './hours.js'

// Tiers by period, demand in tiers and by months, periods within an hour. Figures are worked out by hand beside each check.

const flat = (rest: Partial<Tariff> = {}): Tariff => ({
  name: 'R-1 (invented)',
  energy: { all_year: { usd_per_kwh: 0.1 } },
  rounding: 'line',
  ...rest,
})
const amounts = (bill: { lines: readonly { id: string; amount_usd: number }[] }): Record<string, number> =>
  Object.fromEntries(bill.lines.map((line) => [line.id, line.amount_usd]))

function refusal(tariff: Tariff): string {
  try {
    readTariff(tariff)
  } catch (error) {
    if (error instanceof StageError) return `${error.where}: ${error.message}`
    throw error
  }
  return 'accepted'
}

const onOff = {
  periods: ['on', 'off'],
  rules: [{ period: 'on', days: ['every_day' as const], from_hour: 17, to_hour: 21 }],
  otherwise: 'off',
}
const ladders = {
  on: [{ up_to_kwh_per_month: 500, usd_per_kwh: 0.2 }, { usd_per_kwh: 0.3 }],
  off: [{ up_to_kwh_per_month: 500, usd_per_kwh: 0.1 }, { usd_per_kwh: 0.15 }],
}

/** kWh in some hours of every day of local standard time. */
const hoursAt = (kwh: Readonly<Record<number, number>>): Float64Array =>
  Float64Array.from({ length: 8760 }, (_, h) => kwh[h % 24] ?? 0)

describe('tiers by period', () => {
  it('count the whole bill and are shared in proportion, unless each period counts by itself', () => {
    const of = (tiers_count?: 'each_period') =>
      billFromPeriods(
        readTariff(
          flat({
            time_of_use: onOff,
            energy: { all_year: { periods_tiers: ladders, ...(tiers_count && { tiers_count }) } },
          }),
        ),
        1,
        31,
        { on: 200, off: 600 },
      )
    // 500 of 800 kWh are tier 1: 125 of on, 375 of off; 75 and 225 are tier 2.
    expect(amounts(of())).toEqual({
      'energy.all_year.on.tier_1': 25,
      'energy.all_year.on.tier_2': 22.5,
      'energy.all_year.off.tier_1': 37.5,
      'energy.all_year.off.tier_2': 33.75,
    })
    expect(of().total_usd).toBe(118.75)
    // 200 x .2 + 500 x .1 + 100 x .15
    expect(of('each_period').total_usd).toBe(105)
  })

  it('need the same ends to be shared, and a ladder for each period that has hours', () => {
    const energy = (tiers: Partial<typeof ladders>, rest = {}): Tariff =>
      flat({ time_of_use: onOff, energy: { all_year: { periods_tiers: tiers, ...rest } } })
    const other = { ...ladders, off: [{ up_to_kwh_per_month: 400, usd_per_kwh: 0.1 }, { usd_per_kwh: 0.15 }] }
    expect(refusal(energy(other))).toBe(
      'tariff.energy.all_year.periods_tiers: the tiers of the periods end at different amounts (500 kWh per month; 400 kWh per month), so they cannot count the whole bill',
    )
    expect(refusal(energy(other, { tiers_count: 'each_period' }))).toBe('accepted')
    expect(refusal(energy({ on: ladders.on }))).toContain('there are no tiers for period off')
    expect(refusal(flat({ energy: { all_year: { usd_per_kwh: 0.1, tiers_count: 'whole_bill' } } }))).toContain(
      'tiers_count belongs to periods_tiers',
    )
  })
})

describe('demand', () => {
  it('in tiers on kW, cumulative like those of energy', () => {
    const sheet = readTariff(
      flat({
        demand: {
          peak: {
            tiers: [{ up_to_kw: 5, usd_per_kw: 4 }, { up_to_kw: 6, usd_per_kw: 9 }, { usd_per_kw: 20 }],
          },
        },
      }),
    )
    const of = (peak: number) => amounts(billFromPeriods(sheet, 7, 31, { all: 700 }, { peak }))
    expect(of(6.1)).toMatchObject({ 'demand.peak.tier_1': 20, 'demand.peak.tier_2': 9, 'demand.peak.tier_3': 2 })
    expect(of(5)).toEqual({ 'energy.all_year': 70, 'demand.peak.tier_1': 20 })
  })

  it('is charged only in its months, by the month of the bill', () => {
    const sheet = readTariff(flat({ demand: { summer: { usd_per_kw: 2.25, months: [6, 7, 8, 9] } } }))
    const of = (month: number) => billFromPeriods(sheet, month, 30, { all: 0 }, { summer: 7.2 }).total_usd
    expect([5, 6, 9, 10].map(of)).toEqual([0, 16.2, 16.2, 0])
  })

  it('refuses tiers that go down, a last tier with an end, and two prices', () => {
    const peak = (charge: NonNullable<Tariff['demand']>[string]) => refusal(flat({ demand: { peak: charge } }))
    const down = [{ up_to_kw: 5, usd_per_kw: 4 }, { up_to_kw: 5, usd_per_kw: 4 }, { usd_per_kw: 9 }]
    expect(peak({ tiers: down })).toContain('the tier ends at 5 kW, not above the tier before it (5 kW)')
    expect(peak({ tiers: down.slice(0, 2) })).toContain('the last tier has an upper end')
    expect(peak({ usd_per_kw: 1, tiers: down })).toContain('states usd_per_kw and tiers')
    expect(peak({})).toContain('exactly one of usd_per_kw, tiers is needed')
  })

  it('tells that hourly use understates a demand over 15 minutes', () => {
    const told = (demand_interval_min?: 15 | 60) =>
      computeBill(
        readTariff(flat({ demand: { peak: { usd_per_kw: 1 } }, ...(demand_interval_min && { demand_interval_min }) })),
        { kind: 'hourly', usageKwh: everyDayAt(12, 1) },
        calendar2025,
      ).findings.map((finding) => finding.id)
    expect(told(15)).toContain('bill.demand-interval')
    expect(told(60)).not.toContain('bill.demand-interval')
    expect(told()).not.toContain('bill.demand-interval')
  })
})

describe('periods within an hour', () => {
  const use = (from_hour: number, to_hour: number): Tariff =>
    flat({
      time_of_use: {
        periods: ['on', 'off'],
        rules: [{ period: 'on', days: ['every_day'], from_hour, to_hour }],
        otherwise: 'off',
      },
      energy: { all_year: { periods_usd_per_kwh: { on: 0.4, off: 0.1 } } },
      demand: { on: { usd_per_kw: 1, periods: ['on'] } },
    })
  const january = (tariff: Tariff, at: Record<number, number>) =>
    computeBill(readTariff(tariff), { kind: 'hourly', usageKwh: hoursAt(at) }, calendar2025)

  it('take their quarters of an hour, and the demand stays the mean of the hour', () => {
    // 2 kWh at 16:00 every day of January: 3/4 after 16:15. 31 x 1.5 x .4 + 31 x .5 x .1; 2 kW.
    const bill = january(use(16.25, 21), { 16: 2 })
    expect(amounts(bill.values.bills[0]!)).toEqual({
      'energy.all_year.on': 18.6,
      'energy.all_year.off': 1.55,
      'demand.on': 2,
    })
    expect(bill.findings.map((finding) => finding.id)).toContain('bill.split-hours')
  })

  it('give the bills of whole hours when all they have are whole hours in quarters', () => {
    const whole = january(use(16, 21), { 15: 1, 16: 2, 20: 3, 21: 4 }).values.bills
    const quarters = use(16, 21)
    quarters.time_of_use!.rules.push({ period: 'off', days: ['every_day'], from_hour: 2.25, to_hour: 2.5 })
    expect(january(quarters, { 15: 1, 16: 2, 20: 3, 21: 4 }).values.bills).toEqual(whole)
  })

  it('name the quarter that no rule holds', () => {
    expect(
      refusal(
        flat({
          time_of_use: {
            periods: ['on', 'off'],
            rules: [
              { period: 'on', days: ['every_day'], from_hour: 16.25, to_hour: 21 },
              { period: 'off', days: ['every_day'], from_hour: 21, to_hour: 16 },
            ],
          },
          energy: { all_year: { periods_usd_per_kwh: { on: 0.4, off: 0.1 } } },
        }),
      ),
    ).toBe('tariff.time_of_use: hours are not covered: no rule holds all_year, weekday, 16:00')
  })
})

describe('a period without hours in a season', () => {
  it('needs no price there', () => {
    const tariff = flat({
      seasons: { summer: { from: '06-01', to: '09-30' }, winter: { from: '10-01', to: '05-31' } },
      time_of_use: {
        periods: ['on', 'off', 'winter'],
        rules: [
          { period: 'on', seasons: ['summer'], days: ['weekdays'], from_hour: 15, to_hour: 19 },
          { period: 'winter', seasons: ['winter'], days: ['every_day'], from_hour: 0, to_hour: 24 },
          { period: 'off', seasons: ['summer'], days: ['weekdays'], from_hour: 19, to_hour: 15 },
          { period: 'off', seasons: ['summer'], days: ['weekends'], from_hour: 0, to_hour: 24 },
        ],
      },
      energy: {
        summer: { periods_usd_per_kwh: { on: 0.27, off: 0.09 } },
        winter: { usd_per_kwh: 0.1 },
      },
    })
    expect(billFromPeriods(readTariff(tariff), 7, 31, { on: 10, off: 100, winter: 0 }).total_usd).toBe(11.7)
    const { off: _, ...on } = tariff.energy['summer']!.periods_usd_per_kwh!
    expect(refusal({ ...tariff, energy: { ...tariff.energy, summer: { periods_usd_per_kwh: on } } })).toContain(
      'there is no price for period off',
    )
  })
})
