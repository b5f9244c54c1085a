import { describe, expect, it } from 'vitest'
import { readTariff } from '../../src/money/index.js'
import type { Tariff } from '../../src/project/index.js'
import { StageError } from '../../src/worksheet/index.js'

const plain: Tariff = { name: 'R-1 (invented)', energy: { all_year: { usd_per_kwh: 0.1 } }, rounding: 'line' }
const twoSeasons = (summerTo: string): Tariff => ({
  ...plain,
  seasons: { summer: { from: '06-01', to: summerTo }, winter: { from: '10-01', to: '05-31' } },
  energy: { summer: { usd_per_kwh: 0.2 }, winter: { usd_per_kwh: 0.1 } },
})
const timeOfUse = (rules: NonNullable<Tariff['time_of_use']>['rules'], otherwise?: string): Tariff => ({
  ...plain,
  time_of_use: { periods: ['on', 'off'], rules, ...(otherwise === undefined ? {} : { otherwise }) },
  energy: { all_year: { periods_usd_per_kwh: { on: 0.3, off: 0.1 } } },
})
const all = { days: ['every_day' as const] }

/** The one clear message of a tariff that cannot be priced. */
function refusal(tariff: Tariff): string {
  try {
    readTariff(tariff)
  } catch (error) {
    if (error instanceof StageError) return `${error.where}: ${error.message}`
    throw error
  }
  return 'accepted'
}

describe('a tariff that cannot be priced', () => {
  const tiers = (first: number, second: number): Tariff => ({
    ...plain,
    energy: {
      all_year: {
        tiers: [
          { up_to_kwh_per_month: first, usd_per_kwh: 0.1 },
          { up_to_kwh_per_month: second, usd_per_kwh: 0.2 },
          { usd_per_kwh: 0.3 },
        ],
      },
    },
  })
  const solar = (rule: NonNullable<Tariff['solar']>): Tariff => ({ ...plain, solar: rule })
  const credit = { offsets: 'all' as const, settle: 'never' as const }

  it.each<[string, Tariff, string]>([
    [
      'overlapping seasons',
      twoSeasons('10-15'),
      'tariff.seasons.winter: seasons summer and winter overlap: both hold 10-01',
    ],
    ['a day without season', twoSeasons('09-15'), 'tariff.seasons: no season holds 09-16'],
    ['a day that is none', twoSeasons('06-31'), 'tariff.seasons.summer.to: 06-31 is not a day of the year'],
    [
      'a tier that goes down',
      tiers(700, 250),
      'tariff.energy.all_year.tiers.1: the tier ends at 250 kWh, not above the tier before it (700 kWh)',
    ],
    [
      'hours not covered',
      timeOfUse([{ period: 'on', ...all, from_hour: 17, to_hour: 21 }]),
      'tariff.time_of_use: hours are not covered: no rule holds all_year, weekday, 0:00',
    ],
    [
      'hours of two periods',
      timeOfUse([
        { period: 'on', ...all, from_hour: 17, to_hour: 21 },
        { period: 'off', ...all, from_hour: 20, to_hour: 17 },
      ]),
      'tariff.time_of_use.rules.1: all_year, weekday, 20:00 belongs to on and to off',
    ],
    [
      'a period that does not exist',
      timeOfUse([{ period: 'peak', ...all, from_hour: 0, to_hour: 24 }]),
      "tariff.time_of_use.rules.0.period: there is no period 'peak'; known: on, off",
    ],
    [
      'a negative price',
      { ...plain, riders: { fuel: { usd_per_kwh: -0.01 } } },
      'tariff.riders.fuel.usd_per_kwh: the price -0.01 is below zero',
    ],
    [
      'a season without price',
      { ...twoSeasons('09-30'), energy: { summer: { usd_per_kwh: 0.2 } } },
      'tariff.energy: there is no energy price for season winter',
    ],
    [
      'two prices at once',
      { ...plain, energy: { all_year: { usd_per_kwh: 0.1, periods_usd_per_kwh: { all: 0.1 } } } },
      'tariff.energy.all_year: states usd_per_kwh and periods_usd_per_kwh; exactly one of usd_per_kwh, tiers, periods_usd_per_kwh, periods_tiers is needed',
    ],
    [
      'a fixed charge of nothing',
      { ...plain, fixed: { customer: {} } },
      'tariff.fixed.customer: states none; exactly one of usd_per_month, usd_per_day is needed',
    ],
    [
      'annual settlement without month',
      solar({ net_metering: { settle: 'annual' } }),
      'tariff.solar.net_metering: annual settlement needs the month of the true-up bill',
    ],
    [
      'eleven riders',
      { ...plain, riders: { fuel: { usd_per_kwh: Array.from<number>({ length: 11 }).fill(0.01) } } },
      'tariff.riders.fuel.usd_per_kwh: there are 11 monthly prices',
    ],
    [
      'two solar rules',
      solar({ net_metering: { settle: 'monthly' }, buy_all_sell_all: { usd_per_kwh: 0.1, credit } }),
      'tariff.solar: states net_metering and buy_all_sell_all; exactly one of net_metering, net_billing, buy_all_sell_all is needed',
    ],
    [
      'an export table of the wrong size',
      solar({ net_billing: { netting: 'hour', export_month_by_hour_usd_per_kwh: [[0.05]], credit } }),
      'tariff.solar.net_billing.export_month_by_hour_usd_per_kwh: the export table is not 12 rows of 24 prices',
    ],
    [
      'a tax on nothing known',
      { ...plain, taxes: { city: { percent: 1, of: ['water'] } } },
      "tariff.taxes.city.of: there is no charge 'water'; known: fixed, minimum, energy, riders, demand",
    ],
  ])('%s', (_, tariff, message) => {
    expect(refusal(tariff)).toBe(message)
  })

  it('takes a negative price that is said to be meant', () => {
    expect(refusal({ ...plain, negative_prices: true, riders: { fuel: { usd_per_kwh: -0.01 } } })).toBe('accepted')
  })

  it('takes whole seasons, and periods with the rest named', () => {
    expect(refusal(twoSeasons('09-30'))).toBe('accepted')
    expect(refusal(timeOfUse([{ period: 'on', ...all, from_hour: 17, to_hour: 21 }], 'off'))).toBe('accepted')
  })
})
