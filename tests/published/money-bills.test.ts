import { describe, expect, it } from 'vitest'
import {
  billAcrossRates,
  billFromPeriods,
  computeBill,
  computeSavings,
  makeCalendar,
  readTariff,
} from '../../src/money/index.js'
import type { Tariff } from '../../src/project/index.js'

const calendar = makeCalendar('2025-01-01', true)
const monthly = (kwh: number): number[] => Array.from<number>({ length: 12 }).fill(kwh)

/** January bill of a tariff without solar, from monthly use. */
function january(tariff: Tariff, kwh: number) {
  const result = computeBill(readTariff(tariff), { kind: 'monthly', usageKwh: monthly(kwh) }, calendar)
  return result.values.bills[0]!
}

// Seattle City Light, Questions about residential billing procedures, 1 January 2012.
const seattle = (base: number, first: number, second: number): Tariff => ({
  name: 'Residential',
  seasons: { summer: { from: '04-01', to: '09-30' }, winter: { from: '10-01', to: '03-31' } },
  fixed: { base: { usd_per_day: base } },
  energy: {
    summer: { tiers: [{ up_to_kwh_per_day: 10, usd_per_kwh: first }, { usd_per_kwh: second }] },
    winter: { tiers: [{ up_to_kwh_per_day: 16, usd_per_kwh: first }, { usd_per_kwh: second }] },
  },
  rounding: 'total',
})

// River Falls WI, rates as of 29 September 2020. The customer charge of 14.00 is derived from the published totals.
const riverFalls: Tariff = {
  name: 'Residential time of day',
  holidays: {
    days: ['new_year', 'memorial', 'independence', 'labor', 'thanksgiving', 'christmas'],
    observed: 'nearest_weekday',
  },
  time_of_use: {
    periods: ['on_peak', 'off_peak'],
    rules: [{ period: 'on_peak', days: ['weekdays'], from_hour: 8, to_hour: 20 }],
    otherwise: 'off_peak',
  },
  fixed: { customer: { usd_per_month: 14 } },
  energy: { all_year: { periods_usd_per_kwh: { on_peak: 0.191, off_peak: 0.066 } } },
  rounding: 'line',
}

// Park Electric Cooperative MT: base 23.00, 32.00 when net-metered; 0.086 derived from both published totals.
const parkElectric: Tariff = {
  name: 'Residential',
  fixed: { base: { usd_per_month: 23 } },
  energy: { all_year: { usd_per_kwh: 0.086 } },
  rounding: 'line',
  solar: { fixed: { base: { usd_per_month: 32 } }, net_metering: { settle: 'annual', true_up_month: 4 } },
}

describe('published bills, to the cent', () => {
  it('E1 Seattle: 11,800 kWh over 60 days and a change of rates, rounded by total', () => {
    const result = billAcrossRates(
      [
        { from: '2011-01-01', sheet: readTariff(seattle(0.1155, 0.0461, 0.0956)) },
        { from: '2012-01-01', sheet: readTariff(seattle(0.1192, 0.0476, 0.0987)) },
      ],
      '2011-12-01',
      '2012-01-30',
      11_800,
    )
    expect(result.values.parts.map((part) => [part.days, part.kwh, part.total_usd])).toEqual([
      [30, 5900, 543.75],
      [30, 5900, 561.38],
    ])
    expect(result.values.total_usd).toBe(1105.12)
  })

  it('E2 River Falls WI: 675.54 kWh standard', () => {
    const { name, fixed, rounding } = riverFalls
    const standard: Tariff = { name, ...(fixed && { fixed }), rounding, energy: { all_year: { usd_per_kwh: 0.111 } } }
    expect(january(standard, 675.54).total_usd).toBe(88.98)
  })

  it.each([
    ['E3', 0.45, 96.58],
    ['E4', 0.35, 88.14],
  ])('%s River Falls WI: time of day, on-peak share %f', (_, share, total) => {
    const onPeak = Math.round(675.54 * share * 1e6) / 1e6
    const usage = { on_peak: onPeak, off_peak: Math.round((675.54 - onPeak) * 1e6) / 1e6 }
    expect(billFromPeriods(readTariff(riverFalls), 1, 31, usage).total_usd).toBe(total)
  })

  it('E5 Seymour WI: declining tiers, half cents and a tax of 1 %', () => {
    const bill = january(
      {
        name: 'Residential winter',
        fixed: { base: { usd_per_month: 7.5 } },
        energy: {
          all_year: {
            tiers: [
              { up_to_kwh_per_month: 250, usd_per_kwh: 0.064 },
              { up_to_kwh_per_month: 700, usd_per_kwh: 0.049 },
              { usd_per_kwh: 0.0446 },
            ],
          },
        },
        riders: { power_cost: { usd_per_kwh: 0.085 } },
        taxes: { tax: { percent: 1 } },
        rounding: 'line',
      },
      1200,
    )
    expect(bill.lines.map((line) => line.amount_usd)).toEqual([16, 22.05, 22.3, 102, 7.5, 1.7])
    expect(bill.total_usd).toBe(171.55)
  })

  it('E6 Goodland KS: 1,000 kWh before tax', () => {
    const tariff: Tariff = {
      name: 'Residential',
      fixed: { meter: { usd_per_month: 15 } },
      energy: { all_year: { usd_per_kwh: 0.127 } },
      rounding: 'line',
    }
    expect(january(tariff, 1000).total_usd).toBe(142)
  })

  it('E7 and E8 Park Electric: 1,000 kWh, and 420 of them generated under a higher base charge', () => {
    const energy = { kind: 'monthly' as const, usageKwh: monthly(1000), productionKwh: monthly(420) }
    const { values } = computeSavings(readTariff(parkElectric), energy, calendar)
    expect(values.without.bills[0]!.total_usd).toBe(109)
    expect(values.with.bills[0]!.total_usd).toBe(81.88)
    expect(values.monthly_savings_usd[0]).toBe(27.12)
  })

  it('rounds half a cent up: 0.0475 x 550 = 26.125', () => {
    const tariff: Tariff = { name: 'x', energy: { all_year: { usd_per_kwh: 0.0475 } }, rounding: 'line' }
    expect(january(tariff, 550).total_usd).toBe(26.13)
  })

  it('Healdsburg: left-over kWh paid at 0.0820 with a true-up fee of 30.63 (resolution 147-2010)', () => {
    const tariff: Tariff = {
      name: 'Net surplus compensation',
      energy: { all_year: { usd_per_kwh: 0.2 } },
      rounding: 'line',
      solar: {
        net_metering: { settle: 'annual', true_up_month: 12, surplus_usd_per_kwh: 0.082, true_up_fee_usd: 30.63 },
      },
    }
    const energy = { kind: 'monthly' as const, usageKwh: monthly(400), productionKwh: monthly(500) }
    const december = computeBill(readTariff(tariff), energy, calendar).values.bills[11]!
    expect(december.lines.map((line) => line.amount_usd)).toEqual([-98.4, 30.63])
    expect(december.total_usd).toBe(-67.77)
  })
})
