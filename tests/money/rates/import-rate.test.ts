import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { billFromPeriods, importRate, readTariff, type RateAnswers } from '../../../src/money/index.js'
import { billValues, noBanks, priceBill, statedLedger, type StatedEnergy } from '../../../src/money/bill/index.js'
import type { Tariff } from '../../../src/project/index.js'

// Samples are invented; the results beside them were computed by hand in the reference that they came with (computed).
// The real record of a Florida utility is the one in public test data of a client of the database (read; bill computed).

type Json = Record<string, unknown>
const sample = (name: string): string => readFileSync(new URL(`samples/${name}.json`, import.meta.url), 'utf8')
const recordOf = (name: string): Json => (JSON.parse(sample(name)) as { items: Json[] }).items[0]!

const take = (record: Json | string, answers: RateAnswers = {}) =>
  importRate({ file: 'r.json', text: typeof record === 'string' ? record : JSON.stringify(record), answers })
function tariffOf(record: Json | string, answers: RateAnswers = {}): Tariff {
  const { tariff } = take(record, answers).values
  if (tariff === null) throw new Error('refused')
  return tariff
}
/** Messages of the findings of one severity, without the place. */
const told = (record: Json | string, severity: string, answers: RateAnswers = {}): string[] =>
  take(record, answers)
    .findings.filter((finding) => finding.severity === severity)
    .map(({ message }) => message)
const refusals = (record: Json): string[] =>
  told(record, 'error').map((message) => message.replace(/^r\.json:\d+:\d+ {2}/u, ''))

const all = (kwh: number, days: number, tariff: Tariff, month = 1): number =>
  billFromPeriods(readTariff(tariff), month, days, { all: kwh }).total_usd
/** A bill of a solar customer. */
function solarBill(tariff: Tariff, energy: StatedEnergy): number {
  const sheet = readTariff(tariff)
  return billValues(priceBill(sheet, statedLedger(sheet, energy), true, noBanks(sheet))).total_usd
}

const twelve = <Value>(value: Value): Value[] => Array.from({ length: 12 }, () => value)
const row = (period: number): number[] => Array.from<number>({ length: 24 }).fill(period)
/** A flat rate of 0.12 USD/kWh and 10 USD a month. */
const flat = (rest: Json = {}): Json => ({
  label: 'b1',
  utility: 'Invented Utility',
  name: 'R',
  approved: true,
  sector: 'Residential',
  startdate: 1735689600,
  energyratestructure: [[{ rate: 0.12, unit: 'kWh' }]],
  energyweekdayschedule: twelve(row(0)),
  energyweekendschedule: twelve(row(0)),
  fixedchargefirstmeter: 10,
  fixedchargeunits: '$/month',
  dgrules: 'Net Metering',
  ...rest,
})
const peakRow = [...row(0).slice(0, 16), 1, 1, 1, 1, 0, 0, 0, 0]
/** Periods 0 and 1, 1 on weekdays from 16 to 20. */
const twoPeriods = (zero: Json[], one: Json[], rest: Json = {}): Json =>
  flat({ energyratestructure: [zero, one], energyweekdayschedule: twelve(peakRow), ...rest })

describe('bills of the samples', () => {
  it('tiers per day grow with the days of the bill', () => {
    const tariff = tariffOf(sample('daily-tiers'))
    expect([all(600, 30, tariff), all(300, 31, tariff), all(1000, 28, tariff)]).toEqual([93, 47.42, 157.2])
  })

  it('time of use with net billing: credit by period, and the minimum after credits', () => {
    const tariff = tariffOf(sample('time-of-use-net-billing'))
    const [off, on, winter] = ['summer_off_peak', 'summer_on_peak', 'winter']
    const summer = (imported: [number, number], exported: [number, number]): number =>
      solarBill(tariff, {
        previousReading: '2026-06-30',
        reading: '2026-07-31',
        importKwh: { [off]: imported[0], [on]: imported[1], [winter]: 0 },
        exportKwh: { [off]: exported[0], [on]: exported[1], [winter]: 0 },
      })
    expect(summer([310, 95], [140, 60])).toBe(62.27)
    expect(summer([40, 4], [420, 90])).toBe(25)
    const cold = { previousReading: '2025-12-31', reading: '2026-01-31' }
    const none = { [off]: 0, [on]: 0 }
    const energy = { ...cold, importKwh: { ...none, [winter]: 1000 }, exportKwh: { ...none, [winter]: 50 } }
    expect(solarBill(tariff, energy)).toBe(129.6)
    expect(told(sample('time-of-use-net-billing'), 'warning').join('\n')).toContain(
      'tariff.minimum.of: the record does not say what the minimum is compared with; here it is the whole bill before taxes, and no export credit goes below it',
    )
  })

  it('refuses the third with every reason at once, and prices it when the person agrees', () => {
    const record = recordOf('demand-to-refuse')
    expect(take(record).values).toMatchObject({ tariff: null, yaml: null, label: 'aaaaaaaaaaaaaaaaaaaaaaa3' })
    expect(refusals(record)).toEqual([
      'demandratchetpercentage: a ratchet in months 10, 11, 12: the billed demand is not below a share of an earlier peak',
      'coincidentratestructure: up to 3 USD/kW on the demand at the peak of the whole system, whose hour nobody knows before',
      "dgrules: 'Buy All Sell All' without a price for the generation that is sold (sell) in period 0; absent is not 0",
      'approved: no expert of the database has checked this record',
    ])
    const warnings = told(record, 'warning').join('\n')
    expect(warnings).toContain('demandreactivepowercharge: 0.3 USD/kVAR is left out')
    expect(warnings).toContain('A 2 % discount for payment by bank draft applies.')
    expect(warnings).toContain('demandwindow: demand is averaged over 15 minutes')
    expect(warnings).toContain('peakkwcapacitymax 20')
    const tariff = tariffOf(record, { anyway: true })
    const bill = billFromPeriods(
      readTariff(tariff),
      7,
      31,
      { demand_0: 500, demand_1: 200 },
      { demand_1: 6.1, highest_demand_0: 7.2, highest_demand_1: 7.2 },
    )
    expect(bill.lines.map(({ id, amount_usd }) => [id, amount_usd])).toEqual([
      ['energy.all_year', 43.4],
      ['rider.fuel_adjustment', 4.2],
      ['demand.demand_1.tier_1', 20],
      ['demand.demand_1.tier_2', 9.9],
      ['demand.highest_demand_1', 16.2],
      ['fixed.customer', 17.5],
    ])
    expect(bill.total_usd).toBe(111.2)
    const leftOut = take(record, { anyway: true }).findings.filter(({ id }) => id === 'rates.left-out')
    expect(leftOut).toHaveLength(3)
  })

  it('a real record: 1,200 kWh in two tiers with a rider on each', () => {
    const record = flat({
      energyratestructure: [
        [
          { max: 1000, rate: 0.07531, adj: 0.0119 },
          { rate: 0.09613, adj: 0.0119 },
        ],
      ],
      fixedchargefirstmeter: undefined,
      fixedchargeunits: undefined,
      fixedmonthlycharge: 7.57,
      startdate: 1433116800,
      enddate: 1440975600,
    })
    // Without the rider it would be 102.11.
    expect(all(1200, 30, tariffOf(record))).toBe(116.39)
    const on = (day: string): string[] =>
      told(record, 'warning', { on: day }).filter((one) => /^(?:start|end)/u.test(one))
    expect(on('2015-08-31')).toEqual([])
    expect(on('2015-09-02')).toEqual(['enddate: the rate ended on 2015-08-30, before 2015-09-02'])
    expect(on('2015-05-31')).toEqual([])
    expect(on('2015-05-29')).toEqual(['startdate: the rate holds from 2015-06-01, after 2015-05-29'])
  })
})

describe('the written block', () => {
  it('reads as the tariff it stands for, with its source and what is open', () => {
    for (const name of ['daily-tiers', 'time-of-use-net-billing', 'demand-to-refuse']) {
      const { tariff, yaml } = take(sample(name), { anyway: true, version: '8', downloaded: '2026-03-01' }).values
      expect(parse(yaml!)).toEqual({ tariff })
      expect(tariff!.source).toMatch(
        /record a{23}\d; version 8 of the service; downloaded 2026-03-01; effective 202\d-01-01/u,
      )
      expect(yaml!.split('\n').filter((line) => line.startsWith('#') && line.length > 102)).toEqual([])
    }
  })

  it('names no holiday, leaves no text of the record outside quotes or comments', () => {
    const { yaml } = take(flat({ name: 'R: {x}\n# y', utility: '\u001B[31mU', energycomments: 'one\ntwo: 3' })).values
    expect(parse(yaml!).tariff.name).toBe('U, R: {x} # y')
    expect(yaml).toContain('one two: 3')
  })
})

describe('forms of a file', () => {
  it('one record, a list, an answer of the service', () => {
    for (const text of [flat(), [flat()], { items: [flat()] }])
      expect(take(JSON.stringify(text)).values.label).toBe('b1')
  })

  it('several records are listed until one is named', () => {
    const text = JSON.stringify([flat(), flat({ label: 'b2', name: 'S' })])
    const { values, findings } = importRate({ file: 'r.json', text })
    expect(values).toMatchObject({ label: null, tariff: null, records: [{ label: 'b1' }, { label: 'b2' }] })
    expect(findings[0]).toMatchObject({ severity: 'error', id: 'rates.label-needed' })
    expect(importRate({ file: 'r.json', text, label: 'b2' }).values.tariff!.name).toBe('Invented Utility, S')
    expect(importRate({ file: 'r.json', text, label: 'S' }).values.label).toBe('b2')
    expect(() => importRate({ file: 'r.json', text, label: 'b3' })).toThrow(
      "r.json has no record 'b3'; it holds b1 (R), b2 (S)",
    )
  })

  it.each([
    ['{"items": [', 'r.json:1:12  this is no JSON'],
    ['[{"label": "a",\n "rate": }]', 'r.json:2:10  this is no JSON'],
    ['{"items": []}', 'r.json:1:11  items  the list of records is empty'],
    ['"x"', 'r.json:1:1  found "x"; the file is a record, a list of records'],
    ['[3]', 'r.json:1:2  0  found 3; each item is one record'],
  ])('damaged: %s', (text, message) => {
    expect(() => take(text)).toThrow(message)
  })

  it('tells every field that is not what it has to be, with its place', () => {
    const text = JSON.stringify(
      flat({
        startdate: '2025',
        energyratestructure: [[{ rate: '0.11' }]],
        energyweekdayschedule: [...twelve(row(0)).slice(1), [0]],
        energyweekendschedule: twelve(row(0)).slice(1),
        fueladjustmentsmonthly: [1],
      }),
      null,
      1,
    )
    let message = ''
    try {
      take(text)
    } catch (error) {
      message = (error as Error).message
    }
    expect(message.split('\n').map((line) => line.replace(/^r\.json:\d+:\d+ {2}/u, ''))).toEqual([
      'startdate  found "2025"; this is a number',
      'energyratestructure.0.0.rate  found "0.11"; this is a number',
      'energyweekdayschedule.11  found 1 entries; this is 24 periods, the hour from midnight first',
      'energyweekendschedule  found 11 entries; this is 12 rows of 24 periods, January first',
      'fueladjustmentsmonthly  found 1 entries; this is twelve numbers, January first',
    ])
    expect(message).toMatch(/^r\.json:7:15 {2}startdate/u)
  })

  it('an hour that names a period that there is not', () => {
    expect(() => take(flat({ energyweekdayschedule: twelve(peakRow) }))).toThrow(
      'energyweekdayschedule.0.16  month 1, hour 16 names period 1, and energyratestructure has 1, counted from 0',
    )
  })
})

describe('tiers', () => {
  it('an end above 1e9, or of 0 in a single tier, is none', () => {
    for (const max of [1e38, 1e10, 0])
      expect(tariffOf(flat({ energyratestructure: [[{ max, rate: 0.1 }]] })).energy).toEqual({
        all_year: { usd_per_kwh: 0.1 },
      })
  })

  it.each([
    [[[{ max: 500, rate: 0.1 }]], 'energyratestructure[0][0]: the last tier ends at 500 kWh'],
    [[[{ rate: 0.1 }, { rate: 0.2 }]], 'energyratestructure[0][0]: a tier that is not the last has no upper end'],
    [
      [[{ max: 500, rate: 0.1 }, { max: 400, rate: 0.2 }, { rate: 1 }]],
      'energyratestructure[0][1]: the tier ends at 400 kWh',
    ],
    [[[{ max: 500, rate: 0.1 }, { max: 700 }, { rate: 1 }]], 'energyratestructure[0][1]: the tier has no rate'],
    [[[{ rate: 0.1, unit: 'kWh/kW' }]], "energyratestructure[0][0].unit: tiers in 'kWh/kW' grow"],
    [
      [
        [
          { max: 5, rate: 0.1, unit: 'kWh daily' },
          { rate: 0.1, unit: 'kWh' },
        ],
      ],
      "energyratestructure[0][1].unit: tiers are partly in 'kWh daily' and partly in 'kWh'",
    ],
    [undefined, 'energyratestructure: the record has no energy prices'],
  ])('refuses %j', (structure, message) => {
    const record = flat({
      energyratestructure: structure,
      ...(structure ? {} : { energyweekdayschedule: undefined, energyweekendschedule: undefined }),
    })
    expect(refusals(record)[0]).toContain(message)
    // No price could be right, so that no consent helps.
    expect(take(record, { anyway: true }).values.tariff).toBeNull()
  })

  it('by period with the same ends count the whole bill, and the difference is told', () => {
    const record = twoPeriods([{ max: 500, rate: 0.1 }, { rate: 0.15 }], [{ max: 500, rate: 0.2 }, { rate: 0.3 }])
    const tariff = tariffOf(record)
    expect(tariff.energy['all_year']).toMatchObject({ tiers_count: 'whole_bill' })
    // 375 kWh in each period: 250 of each are tier 1, 125 tier 2: 25 + 18.75 + 50 + 37.5; each by itself 37.5 + 75.
    expect(told(record, 'warning').join('\n')).toContain(
      'energy of 375 kWh in each of 2 periods in 30 days is then 131.25 USD, and 112.50 USD the other way',
    )
    const each = take(record, { tiersCount: 'each_period' })
    expect(each.values.tariff!.energy['all_year']).toMatchObject({ tiers_count: 'each_period' })
    expect(each.findings.map(({ id }) => id)).not.toContain('rates.tier-count')
  })

  it('by period with other ends are refused unless the person picks', () => {
    const record = twoPeriods([{ max: 500, rate: 0.1 }, { rate: 0.15 }], [{ max: 400, rate: 0.2 }, { rate: 0.3 }])
    expect(refusals(record)).toEqual([
      'energyratestructure: the periods of all_year have tiers with different ends, so they cannot count the whole bill',
    ])
    expect(tariffOf(record, { tiersCount: 'each_period' }).energy['all_year']!.tiers_count).toBe('each_period')
  })
})

describe('hours', () => {
  it('seasons are stretches of months, over New Year too; weekends and holidays go together', () => {
    const months = twelve(row(0)).map((all_, m) => (m >= 5 && m <= 8 ? peakRow : all_))
    const tariff = tariffOf(
      flat({ energyratestructure: [[{ rate: 0.1 }], [{ rate: 0.3 }]], energyweekdayschedule: months }),
    )
    expect(tariff.seasons).toEqual({
      jun_sep: { from: '06-01', to: '09-30' },
      oct_may: { from: '10-01', to: '05-31' },
    })
    expect(tariff.time_of_use).toEqual({
      periods: ['energy_0', 'energy_1'],
      rules: [{ period: 'energy_1', seasons: ['jun_sep'], days: ['weekdays'], from_hour: 16, to_hour: 20 }],
      otherwise: 'energy_0',
    })
    expect(tariff.energy).toEqual({
      jun_sep: { periods_usd_per_kwh: { energy_0: 0.1, energy_1: 0.3 } },
      oct_may: { usd_per_kwh: 0.1 },
    })
  })

  it('a missing weekend is that of the weekday, and said', () => {
    const record = twoPeriods([{ rate: 0.1 }], [{ rate: 0.3 }], { energyweekendschedule: undefined })
    expect(tariffOf(record).time_of_use!.rules[0]).toMatchObject({ days: ['every_day'], from_hour: 16, to_hour: 20 })
    expect(told(record, 'warning')).toContain(
      'energyweekendschedule: is missing; the timetable of the weekday is taken for it',
    )
  })

  it('says that a record has no holidays when there are periods', () => {
    const about = (record: Json): string[] => told(record, 'warning').filter((one) => one.includes('has no holidays'))
    expect(about(twoPeriods([{ rate: 0.1 }], [{ rate: 0.3 }]))).toHaveLength(1)
    expect(about(flat())).toEqual([])
  })
})

describe('what would change a bill silently is refused', () => {
  it.each<[Json, string]>([
    [{ sector: 'Commercial' }, "sector: the rate is for 'Commercial'"],
    [{ country: 'CAN' }, "country: 'CAN'"],
    [{ flatdemandstructure: [[{ rate: 2 }]], flatdemandunit: 'hp' }, 'flatdemandunit: a demand charge per hp'],
    [{ demandratestructure: [[{ rate: 2 }]], demandrateunit: 'kVA' }, 'demandrateunit: a demand charge per kVA'],
    [{ coincidentratestructure: [[{ rate: 3 }]] }, 'coincidentratestructure: up to 3 USD/kW'],
    [{ demandratchetpercentage: [...twelve(0).slice(1), 0.5] }, 'demandratchetpercentage: a ratchet in months 12'],
    [{ lookbackpercent: 0.8 }, 'lookbackpercent: a ratchet'],
    [{ annualmincharge: 120 }, 'annualmincharge: a minimum of 120 USD a year'],
    [{ dgrules: 'Net Billing Hourly' }, "dgrules: 'Net Billing Hourly' without a price for exports (sell)"],
    [{ dgrules: 'Something' }, "dgrules: 'Something' is no known rule"],
    [{ fixedchargeunits: '$/week' }, "fixedchargefirstmeter: 10 in '$/week'"],
    [{ mincharge: 5, minchargeunits: '' }, 'mincharge: 5 in no unit'],
    [{ fixedmonthlycharge: 11 }, 'fixedmonthlycharge: 11 USD/month beside fixedchargefirstmeter 10 $/month'],
    [
      { dgrules: 'Buy All Sell All', ...twoPeriodsSold(0.04, 0.05) },
      'sell: all generation is sold at prices that differ by period',
    ],
    [
      {
        dgrules: 'Net Billing Hourly',
        energyratestructure: [
          [
            { max: 5, rate: 1, sell: 0.1 },
            { rate: 1, sell: 0.2 },
          ],
        ],
      },
      'energyratestructure[0]: the price for exports differs from tier to tier',
    ],
  ])('%j', (rest, message) => {
    expect(refusals(flat(rest))).toEqual([expect.stringContaining(message)])
  })

  it('nothing of it at zero', () => {
    const record = flat({
      coincidentratestructure: [[{ rate: 0 }]],
      demandratchetpercentage: twelve(0),
      lookbackpercent: 0,
      annualmincharge: 0,
      flatdemandstructure: [[{ rate: 0 }]],
      flatdemandunit: 'hp',
      demandreactivepowercharge: 0,
    })
    expect(refusals(record)).toEqual([])
    expect(told(record, 'warning').filter((one) => !one.startsWith('tariff.'))).toEqual([])
  })
})

function twoPeriodsSold(zero: number, one: number): Json {
  return {
    energyratestructure: [[{ rate: 0.1, sell: zero }], [{ rate: 0.3, sell: one }]],
    energyweekdayschedule: twelve(peakRow),
  }
}

describe('solar', () => {
  it('an absent rule is no net metering: it is asked for', () => {
    const record = flat({ dgrules: undefined })
    expect(tariffOf(record).solar).toBeUndefined()
    expect(told(record, 'warning').join('\n')).toContain(
      'tariff.solar: the record does not say what becomes of solar energy',
    )
    expect(tariffOf(flat({ dgrules: undefined, usenetmetering: true })).solar).toMatchObject({ net_metering: {} })
    expect(
      tariffOf(record, { solar: 'net-metering', settle: 'annual', trueUpMonth: 4, surplusUsdPerKwh: 0.03 }).solar,
    ).toEqual({
      net_metering: { settle: 'annual', true_up_month: 4, surplus_usd_per_kwh: 0.03 },
    })
  })

  it('prices of exports by period, of one number, and of a list of its own', () => {
    const prices = (rest: Json, answers: RateAnswers = {}) => tariffOf(flat(rest), answers).solar
    expect(prices({ dgrules: 'Net Billing Instantaneous', ...twoPeriodsSold(0.04, 0.05) })).toMatchObject({
      net_billing: { netting: 'instant', export_periods_usd_per_kwh: { energy_0: 0.04, energy_1: 0.05 } },
    })
    expect(prices({ dgrules: 'Net Billing Hourly' }, { sellUsdPerKwh: 0.06 })).toMatchObject({
      net_billing: { netting: 'hour', export_usd_per_kwh: 0.06 },
    })
    expect(prices({ dgrules: 'Buy All Sell All', sell: [[0.09]] })).toMatchObject({
      buy_all_sell_all: { usd_per_kwh: 0.09 },
    })
  })
})

describe('warnings', () => {
  it.each<[Json, string]>([
    [{ servicetype: 'Delivery' }, "servicetype: 'Delivery' is only a part of the bill"],
    [{ approved: false }, 'approved: no expert of the database'],
    [{ energyratestructure: [[{ rate: 12 }]] }, 'energyratestructure[0][0]: 12 USD/kWh with its rider: perhaps cents'],
    [
      { energyratestructure: [[{ rate: 0.02, adj: -0.015 }]] },
      '0.005 USD/kWh with its rider: perhaps the price of delivery',
    ],
    [{ energyratestructure: [[{ rate: 0.01, adj: -0.02 }]] }, 'adj: a price below zero is taken as meant'],
    [{ fixedchargefirstmeter: 100, fixedchargeunits: '$/year' }, '100 USD/year is written as 8.333333 USD/month'],
    [{ newfield: [1] }, 'fields that are not known here are left out: newfield'],
    [{ phasewiring: '3-Phase' }, 'the rate is only for some customers: phasewiring 3-Phase'],
    [{ fixedchargeeaaddl: 4 }, 'fixedchargeeaaddl: 4 for each further meter is left out'],
    [{ startdate: undefined }, 'startdate: the record does not say from when it holds'],
  ])('%j', (rest, message) => {
    expect(told(flat(rest), 'warning').join('\n')).toContain(message)
    expect(take(flat(rest)).values.tariff).not.toBeNull()
  })

  it('riders by month, the same all year as one', () => {
    const months = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12].map((m) => m / 1000)
    const riders = (fueladjustmentsmonthly: number[]) => tariffOf(flat({ fueladjustmentsmonthly })).riders
    expect(riders(months)).toEqual({ fuel_adjustment: { usd_per_kwh: months } })
    expect(riders(twelve(0.004))).toEqual({ fuel_adjustment: { usd_per_kwh: 0.004 } })
    expect(riders(twelve(0))).toBeUndefined()
    expect(all(1000, 31, tariffOf(flat({ fueladjustmentsmonthly: months })), 3)).toBe(133)
  })
})
