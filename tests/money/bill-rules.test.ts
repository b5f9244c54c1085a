import { describe, expect, it } from 'vitest'
import {
  billAcrossRates,
  computeBill,
  computeSavings,
  makeCalendar,
  readTariff,
  readTariffs,
} from '../../src/money/index.js'
import type { SolarRule, Tariff } from '../../src/project/index.js'
import { bell, calendar2025, even, everyDayAt } from './hours.js'

const flat = (rest: Partial<Tariff> = {}): Tariff => ({
  name: 'R-1 (invented)',
  energy: { all_year: { usd_per_kwh: 0.1 } },
  rounding: 'line',
  ...rest,
})
const months = (kwh: number): number[] => Array.from<number>({ length: 12 }).fill(kwh)

/** Bills from monthly totals. */
function monthly(tariff: Tariff, usage: number[], production?: number[]) {
  const energy = { kind: 'monthly' as const, usageKwh: usage, ...(production && { productionKwh: production }) }
  return computeBill(readTariff(tariff), energy, calendar2025).values
}
function hourly(tariff: Tariff, usageKwh: Float64Array, productionKwh?: Float64Array) {
  const energy = { kind: 'hourly' as const, usageKwh, ...(productionKwh && { productionKwh }) }
  return computeBill(readTariff(tariff), energy, calendar2025).values
}
const amounts = (bill: { lines: readonly { id: string; amount_usd: number }[] }): Record<string, number> =>
  Object.fromEntries(bill.lines.map((line) => [line.id, line.amount_usd]))

describe('charges', () => {
  it('a charge per day, and a charge per month by days (days / (365/12))', () => {
    const bill = monthly(
      flat({ fixed: { meter: { usd_per_day: 0.1155 }, base: { usd_per_month: 12, prorate_by_days: true } } }),
      months(100),
    ).bills[1]!
    // 28 x 0.1155 = 3.234; 12 x 28 x 12 / 365 = 11.0466
    expect(amounts(bill)).toEqual({ 'energy.all_year': 10, 'fixed.meter': 3.23, 'fixed.base': 11.05 })
    expect(bill.total_usd).toBe(24.28)
  })

  it('a minimum of the energy part per day, taxes after it', () => {
    const tariff = flat({
      minimum: { usd_per_day: 0.15, of: 'energy' },
      fixed: { base: { usd_per_month: 5 } },
      taxes: { state: { percent: 10 } },
    })
    const bill = monthly(tariff, months(20)).bills[0]!
    // 31 x 0.15 = 4.65 against 2.00 of energy
    expect(amounts(bill)).toEqual({ 'energy.all_year': 2, 'fixed.base': 5, minimum: 2.65, 'tax.state': 0.97 })
  })

  it('a tier adder above a monthly amount, and a tax per kWh', () => {
    const tariff = flat({
      tier_adders: { high_use: { above_kwh_per_month: 700, usd_per_kwh: 0.0194 } },
      taxes: { county: { usd_per_kwh: 0.001 } },
    })
    expect(amounts(monthly(tariff, months(900)).bills[0]!)).toEqual({
      'energy.all_year': 90,
      'tier_adder.high_use': 3.88,
      'tax.county': 0.9,
    })
  })

  it('rounds by line or by total', () => {
    const three = { a: { usd_per_kwh: 0.0005 }, b: { usd_per_kwh: 0.0005 }, c: { usd_per_kwh: 0.0005 } }
    const of = (rounding: 'line' | 'total') =>
      monthly(flat({ rounding, riders: three }), months(10)).bills[0]!.total_usd
    // Each rider is half a cent.
    expect(of('line')).toBe(1.03)
    expect(of('total')).toBe(1.02)
  })

  it('prices a season that changes within a bill by days', () => {
    const tariff = flat({
      read_day: 15,
      seasons: { summer: { from: '06-01', to: '09-30' }, winter: { from: '10-01', to: '05-31' } },
      energy: { summer: { usd_per_kwh: 0.2 }, winter: { usd_per_kwh: 0.1 } },
    })
    const june = monthly(tariff, months(310)).bills[5]!
    // 16 May to 15 June: 16 winter and 15 summer days, 10 kWh a day
    expect(june.days).toBe(31)
    expect(amounts(june)).toEqual({ 'energy.winter': 16, 'energy.summer': 30 })
  })

  it('charges demand on the highest hour of its periods', () => {
    const usage = even(1)
    usage[12] = 3
    usage[2000] = 7
    const tariff = flat({
      time_of_use: {
        periods: ['on', 'off'],
        rules: [{ period: 'on', days: ['weekdays'], from_hour: 12, to_hour: 20 }],
        otherwise: 'off',
      },
      energy: { all_year: { periods_usd_per_kwh: { on: 0.2, off: 0.1 } } },
      demand: { peak: { usd_per_kw: 9.5, periods: ['on'] } },
    })
    const values = hourly(tariff, usage)
    expect(amounts(values.bills[0]!)['demand.peak']).toBe(28.5)
    // Hour 2000 is 08:00 standard time of 25 March, 09:00 on the clock: off peak.
    expect(amounts(values.bills[2]!)['demand.peak']).toBe(9.5)
  })
})

describe('time of use', () => {
  const tariff = flat({
    holidays: { days: ['independence'], observed: 'none' },
    time_of_use: {
      periods: ['on', 'off'],
      rules: [{ period: 'on', days: ['weekdays'], from_hour: 17, to_hour: 21 }],
      otherwise: 'off',
    },
    energy: { all_year: { periods_usd_per_kwh: { on: 0.4, off: 0.1 } } },
  })
  const on = (values: ReturnType<typeof hourly>, m: number): number =>
    values.bills[m]!.lines.find((line) => line.id.endsWith('.on'))?.quantity ?? 0

  it('counts weekdays, holidays and clock time', () => {
    const values = hourly(tariff, even(1))
    // January 2025 has 23 weekdays; July 23 less the fourth, a Friday.
    expect(on(values, 0)).toBe(23 * 4)
    expect(on(values, 6)).toBe(22 * 4)
  })

  it('agrees with the clock of New York in every hour of a year, by the run-time library', () => {
    const clock = new Intl.DateTimeFormat('en-US', {
      timeZone: 'America/New_York',
      weekday: 'short',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      hourCycle: 'h23',
    })
    const usage = Float64Array.from({ length: 8760 }, (_, h) => 1 + (h % 11))
    const expected = Array.from<number>({ length: 12 }).fill(0)
    for (const [h, kwh] of usage.entries()) {
      const parts = clock.formatToParts(Date.UTC(2025, 0, 1, 5 + h))
      const part = (type: string): string => parts.find((one) => one.type === type)?.value ?? ''
      const [month, hour] = [Number(part('month')), Number(part('hour'))]
      const holiday = month === 7 && part('day') === '4'
      const working = !holiday && part('weekday') !== 'Sat' && part('weekday') !== 'Sun'
      if (working && hour >= 17 && hour < 21) expected[month - 1]! += kwh
    }
    const values = hourly(tariff, usage)
    expect(values.bills.map((_, m) => on(values, m))).toEqual(expected)
  })

  it('moves with daylight saving: 16:00 standard time is 17:00 on the clock in summer only', () => {
    const values = hourly(tariff, everyDayAt(16, 1))
    expect(on(values, 0)).toBe(0)
    expect(on(values, 6)).toBe(22)
    const standard = makeCalendar('2025-01-01', false)
    const energy = { kind: 'hourly' as const, usageKwh: everyDayAt(16, 1) }
    expect(on(computeBill(readTariff(tariff), energy, standard).values, 6)).toBe(0)
  })
})

describe('solar rules', () => {
  const solar = (rule: SolarRule, rest: Partial<Tariff> = {}): Tariff => flat({ ...rest, solar: rule })

  it('without a rule, exports earn nothing and only own use saves', () => {
    const values = hourly(flat(), even(0.5), everyDayAt(11, 2))
    // 24 x 0.5 - 0.5 a day
    expect(values.bills[0]!.lines[0]!.quantity).toBe(31 * 11.5)
    expect(values.bills[0]!.export_kwh).toBe(31 * 1.5)
  })

  it('net metering, monthly: the surplus is paid the same month and the base charge stays', () => {
    const rule: SolarRule = { net_metering: { settle: 'monthly', surplus_usd_per_kwh: 0.03 } }
    const bill = monthly(solar(rule, { fixed: { base: { usd_per_month: 20 } } }), months(300), months(400)).bills[0]!
    expect(amounts(bill)).toEqual({ 'fixed.base': 20, 'surplus.kwh': -3 })
    expect(bill.total_usd).toBe(17)
    expect(bill.bank_kwh).toBe(0)
  })

  it('net metering, annual: the bank serves later months and the rest is granted to the utility', () => {
    const rule: SolarRule = { net_metering: { settle: 'annual', true_up_month: 4 } }
    const production = [100, 100, 100, 100, 500, 500, 500, 500, 100, 100, 100, 100]
    const values = monthly(solar(rule), months(200), production)
    // May to August bank 300 each: 1200; September to March draw 7 x 100, April 100 more; 400 are lost.
    expect(values.bills.map((bill) => bill.bank_kwh)).toEqual([
      700, 600, 500, 0, 300, 600, 900, 1200, 1100, 1000, 900, 800,
    ])
    expect(values.total_usd).toBe(0)
    expect(values.lost_kwh).toBe(400)
  })

  it('net metering by period keeps kWh in their period unless the tariff lets them serve others', () => {
    const tariff = (bank: 'by_period' | 'any_period'): Tariff =>
      flat({
        time_of_use: {
          periods: ['day', 'night'],
          rules: [{ period: 'day', days: ['every_day'], from_hour: 8, to_hour: 20 }],
          otherwise: 'night',
        },
        energy: { all_year: { periods_usd_per_kwh: { day: 0.3, night: 0.1 } } },
        solar: { net_metering: { settle: 'monthly', bank } },
      })
    // A day uses 12 and 12 kWh; 20 are produced in the day period.
    const own = hourly(tariff('by_period'), even(1), everyDayAt(11, 20)).bills[0]!
    expect(amounts(own)).toEqual({ 'energy.all_year.night': 37.2 })
    const across = hourly(tariff('any_period'), even(1), everyDayAt(11, 20)).bills[0]!
    expect(amounts(across)).toEqual({ 'energy.all_year.night': 12.4 })
  })

  it('a bank of money values the surplus of a period at its retail price', () => {
    const tariff = flat({
      fixed: { base: { usd_per_month: 10 } },
      time_of_use: {
        periods: ['day', 'night'],
        rules: [{ period: 'day', days: ['every_day'], from_hour: 8, to_hour: 20 }],
        otherwise: 'night',
      },
      energy: { all_year: { periods_usd_per_kwh: { day: 0.3, night: 0.1 } } },
      solar: {
        net_metering: {
          settle: 'annual',
          true_up_month: 12,
          bank: 'money',
          credit: { offsets: 'all', settle: 'annual', true_up_month: 12 },
        },
      },
    })
    const january = hourly(tariff, even(1), everyDayAt(11, 20)).bills[0]!
    // Day: (12 - 20) x 31 x 0.3 = -74.40; night: 12 x 31 x 0.1 = 37.20; 37.20 of credit, 10 of it pay the base charge.
    expect(amounts(january)).toEqual({
      'energy.all_year.day': -74.4,
      'energy.all_year.night': 37.2,
      'energy.to_credit': 37.2,
      'fixed.base': 10,
      'credit.used': -10,
    })
    expect(january.total_usd).toBe(0)
    expect(january.bank_usd).toBe(27.2)
  })

  it('non-bypassable riders are due on every imported kWh though exports are netted', () => {
    const tariff = flat({
      riders: { public_purpose: { usd_per_kwh: 0.02, non_bypassable: true } },
      solar: { net_metering: { settle: 'monthly' } },
    })
    const january = hourly(tariff, even(1), everyDayAt(11, 24)).bills[0]!
    // All is netted; 23 kWh a day are still imported.
    expect(amounts(january)).toEqual({ 'rider.public_purpose': 14.26 })
  })

  it('net billing by the hour: retail for imports, another price for exports, credit rolls over', () => {
    const tariff = solar(
      {
        net_billing: {
          netting: 'hour',
          export_usd_per_kwh: 0.04,
          credit: { offsets: 'energy', settle: 'annual', true_up_month: 12 },
        },
      },
      { fixed: { base: { usd_per_month: 10 } } },
    )
    const [january, february] = hourly(tariff, even(0.1), everyDayAt(11, 10.1)).bills
    // Imports 2.3 kWh a day = 7.13; exports 10 kWh a day earn 12.40; 7.13 of it is used.
    expect(amounts(january!)).toEqual({ 'energy.all_year': 7.13, 'fixed.base': 10, 'credit.used': -7.13 })
    expect(january!.earned[0]!.amount_usd).toBe(12.4)
    expect(january!.bank_usd).toBe(5.27)
    // February: 6.44 of energy, 11.20 earned and 5.27 banked.
    expect(february!.bank_usd).toBe(10.03)
  })

  it('net billing over the bill exports only what the whole bill does not use', () => {
    const rule: SolarRule = {
      net_billing: { netting: 'bill', export_usd_per_kwh: 0.04, credit: { offsets: 'all', settle: 'never' } },
    }
    const values = hourly(solar(rule), even(1), everyDayAt(11, 20))
    expect(values.bills[0]!.lines).toMatchObject([{ quantity: 124, amount_usd: 12.4 }])
  })

  it('net billing with prices by month and hour, weekends apart', () => {
    const row = (value: (hour: number) => number): number[] => Array.from({ length: 24 }, (_, hour) => value(hour))
    const table = (scale: number): number[][] =>
      Array.from({ length: 12 }, (_, m) => row((hour) => ((m + 1) * 100 + hour) * scale))
    const rule: SolarRule = {
      net_billing: {
        netting: 'hour',
        export_month_by_hour_usd_per_kwh: table(1e-4),
        export_weekend_month_by_hour_usd_per_kwh: table(2e-4),
        credit: { offsets: 'all', settle: 'monthly', paid_out_pct: 100 },
      },
    }
    const values = hourly(solar(rule, { rounding: 'total' }), even(0), everyDayAt(11, 1))
    // January: 23 weekdays and 8 weekend days at 11:00; July: 23 and 8 at 12:00 on the clock.
    // 39 x 0.0111 = 0.4329
    expect(values.bills[0]!.total_usd).toBe(-0.43)
    expect(values.bills[6]!.earned[0]!.amount_usd).toBeCloseTo((23 + 2 * 8) * 0.0712, 10)
  })

  it('buy all, sell all: the whole use on the tiers, all generation at one price', () => {
    const tariff: Tariff = flat({
      energy: { all_year: { tiers: [{ up_to_kwh_per_month: 500, usd_per_kwh: 0.05 }, { usd_per_kwh: 0.1 }] } },
      solar: {
        buy_all_sell_all: { usd_per_kwh: 0.128, credit: { offsets: 'all', settle: 'annual', true_up_month: 12 } },
      },
    })
    const january = monthly(tariff, months(800), months(400)).bills[0]!
    expect(amounts(january)).toEqual({
      'energy.all_year.tier_1': 25,
      'energy.all_year.tier_2': 30,
      'credit.used': -51.2,
    })
    expect(january.total_usd).toBe(3.8)
  })

  it('no credit goes below the minimum', () => {
    const tariff = solar(
      { buy_all_sell_all: { usd_per_kwh: 0.2, credit: { offsets: 'all', settle: 'never' } } },
      { minimum: { usd_per_month: 12, of: 'bill' } },
    )
    const january = monthly(tariff, months(300), months(300)).bills[0]!
    expect(january.total_usd).toBe(12)
    expect(january.bank_usd).toBe(42)
  })

  it('a minimum for energy does not shield the fixed charge from a credit that may pay all', () => {
    const tariff = solar(
      { buy_all_sell_all: { usd_per_kwh: 0.2, credit: { offsets: 'all', settle: 'never' } } },
      { minimum: { usd_per_month: 12, of: 'energy' }, fixed: { base: { usd_per_month: 7 } } },
    )
    // 30 of energy and 7 fixed; 60 earned: 7 and 18 are paid by it.
    expect(monthly(tariff, months(300), months(300)).bills[0]!.total_usd).toBe(12)
    expect(monthly(tariff, months(300), months(100)).bills[0]!.total_usd).toBe(17)
  })

  it('a solar customer can be moved to another tariff', () => {
    const { without, withSystem } = readTariffs(
      flat({
        solar: {
          tariff: flat({ energy: { all_year: { usd_per_kwh: 0.15 } }, solar: { net_metering: { settle: 'monthly' } } }),
        },
      }),
    )
    const energy = { kind: 'monthly' as const, usageKwh: months(300), productionKwh: months(100) }
    expect(computeSavings(without, energy, calendar2025, withSystem).values.monthly_savings_usd[0]).toBe(30 - 30)
    expect(() => readTariffs(undefined)).toThrow('there is no tariff')
    expect(() => readTariffs(flat({ solar: { tariff: flat({ fixed: { base: {} } }) } }))).toThrow(
      expect.objectContaining({ where: 'tariff.solar.tariff.fixed.base' }) as Error,
    )
  })

  it('a tax before or after the credit', () => {
    const tariff = (before: boolean): Tariff =>
      solar(
        { buy_all_sell_all: { usd_per_kwh: 0.05, credit: { offsets: 'all', settle: 'never' } } },
        { taxes: { city: { percent: 10, before_credits: before } } },
      )
    expect(monthly(tariff(true), months(100), months(100)).bills[0]!.total_usd).toBe(6)
    expect(monthly(tariff(false), months(100), months(100)).bills[0]!.total_usd).toBe(5.5)
  })
})

describe('savings', () => {
  it('on inclining tiers the kWh saved are the dearest ones', () => {
    const tariff = flat({
      energy: { all_year: { tiers: [{ up_to_kwh_per_month: 500, usd_per_kwh: 0.1 }, { usd_per_kwh: 0.3 }] } },
      solar: { net_metering: { settle: 'monthly' } },
    })
    const energy = { kind: 'monthly' as const, usageKwh: months(700), productionKwh: months(200) }
    expect(computeSavings(readTariff(tariff), energy, calendar2025).values.monthly_savings_usd[0]).toBe(60)
  })

  it('are proven line by line on the worksheet', () => {
    const result = computeSavings(
      readTariff(flat()),
      { kind: 'hourly', usageKwh: even(1), productionKwh: bell(2) },
      calendar2025,
    )
    const step = result.worksheet.find((one) => one.id === 'bill.with.07.energy.all_year')!
    const [quantity, price] = step.inputs
    expect(step.result.value).toBeCloseTo(Number(quantity!.value) * Number(price!.value), 2)
    expect(result.findings.map((finding) => finding.id)).toContain('bill.exports-unpaid')
  })
})

describe('what a tariff leaves open', () => {
  it('is settled on the cautious side and said', () => {
    const tariff = flat({
      solar: { net_metering: { settle: 'annual', true_up_month: 4 } },
      taxes: { city: { percent: 1 } },
    })
    const { assumptions } = computeBill(
      readTariff(tariff),
      { kind: 'hourly', usageKwh: even(1), productionKwh: bell(2) },
      calendar2025,
    )
    expect(assumptions.map((one) => [one.path, one.value])).toEqual([
      ['tariff.solar.net_metering.surplus_usd_per_kwh', 0],
      ['tariff.taxes.city.before_credits', 'true'],
    ])
  })
})

describe('energy that cannot be billed', () => {
  const refusal = (run: () => unknown): string => {
    try {
      run()
    } catch (error) {
      return error instanceof Error ? error.message : ''
    }
    return 'accepted'
  }

  it('says so', () => {
    expect(refusal(() => monthly(flat(), Array.from<number>({ length: 13 }).fill(1)))).toBe(
      'there are 13 months, not 12',
    )
    expect(refusal(() => hourly(flat(), new Float64Array(8759)))).toBe('there are 8759 hours, not 8760')
    expect(refusal(() => hourly(flat(), even(-1)))).toBe('hour 1 is -1 kWh')
    expect(refusal(() => hourly(flat(), even(Number.NaN)))).toBe('hour 1 is no number')
    expect(refusal(() => hourly(flat(), even(Infinity)))).toBe('hour 1 is beyond all numbers')
    expect(refusal(() => monthly(flat({ demand: { peak: { usd_per_kw: 1 } } }), months(1)))).toBe(
      'the tariff has demand charges, which monthly totals do not tell',
    )
    const perMonth = readTariff(flat({ fixed: { base: { usd_per_month: 5 } } }))
    const changed = [
      { from: '2025-01-01', sheet: perMonth },
      { from: '2025-02-10', sheet: readTariff(flat()) },
    ]
    expect(refusal(() => billAcrossRates(changed, '2025-01-31', '2025-02-28', 100))).toBe(
      'rates change within the bill, and charges or tiers per month cannot be divided over its parts',
    )
    expect(refusal(() => billAcrossRates(changed, '2024-12-01', '2025-01-02', 100))).toBe(
      'no tariff holds on 2024-12-02',
    )
    expect(refusal(() => monthly(flat(), months(1), months(1)))).toBe(
      'the tariff has exports that are not netted over the whole bill, which monthly totals do not tell',
    )
  })
})
