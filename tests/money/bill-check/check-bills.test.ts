import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { checkBills } from '../../../src/money/index.js'
import { loadProject, type Tariff } from '../../../src/project/index.js'

// Printed bills are those of the right tariff; the tariff that was typed in has one slip. That the right bills are right is
// checked by hand below and against published bills.

const RIGHT: Tariff = {
  name: 'R-1 (invented)',
  seasons: { summer: { from: '06-01', to: '09-30' }, winter: { from: '10-01', to: '05-31' } },
  energy: {
    summer: { tiers: [{ up_to_kwh_per_month: 500, usd_per_kwh: 0.1123 }, { usd_per_kwh: 0.1562 }] },
    winter: { tiers: [{ up_to_kwh_per_month: 700, usd_per_kwh: 0.1041 }, { usd_per_kwh: 0.0897 }] },
  },
  fixed: { customer: { usd_per_month: 14.5 } },
  riders: { power_cost: { usd_per_kwh: 0.0215 } },
  taxes: { city: { percent: 6, of: ['energy', 'riders'] } },
  minimum: { usd_per_month: 20, of: 'bill' },
  rounding: 'line',
}

/** Readings in the middle of months, so that some bills cross seasons. */
const READINGS = [
  '2025-01-14',
  '2025-02-13',
  '2025-03-14',
  '2025-04-14',
  '2025-05-14',
  '2025-06-13',
  '2025-07-14',
  '2025-08-13',
  '2025-09-12',
  '2025-10-14',
  '2025-11-13',
  '2025-12-12',
  '2026-01-14',
]
const KWH = [910, 760, 722, 641, 613, 787, 1053, 981, 724, 602, 695, 867]

function csvOf(amounts: readonly number[], lines: readonly string[] = [], more: readonly string[] = []): string {
  const rows = KWH.map((kwh, i) =>
    [READINGS[i], READINGS[i + 1], kwh, amounts[i], more[i]].filter((one) => one !== undefined),
  )
  return [['from', 'to', 'kwh', 'amount', ...lines].join(','), ...rows.map((row) => row.join(','))].join('\n')
}
const check = (tariff: Tariff, text: string) => checkBills({ tariff, file: 'bills.csv', text })
/** What a tariff gives for the year. */
const amountsOf = (tariff: Tariff): number[] =>
  check(tariff, csvOf(KWH.map(() => 1))).values.bills.map((bill) => bill.computed_usd)
const printed = csvOf(amountsOf(RIGHT))

describe('the right tariff', () => {
  it('gives every bill to the cent', () => {
    const { values, findings } = check(RIGHT, printed)
    expect(values.bills.map(({ difference_usd, suspect }) => [difference_usd, suspect])).toEqual(
      KWH.map(() => [0, null]),
    )
    expect(values).toMatchObject({ differing: 0, difference_usd: 0, explanations: [], days_counted: 'last' })
    expect(findings).toEqual([])
  })

  it('worked out by hand: a bill within winter, and one that crosses into summer', () => {
    const [january, , , , june] = check(RIGHT, printed).values.bills
    // 910 kWh: 700 x .1041 = 72.87, 210 x .0897 = 18.84; rider 19.57; 14.50; tax 6 % of 111.28 = 6.68.
    expect(january).toMatchObject({ days: 30, computed_usd: 132.46 })
    // 613 kWh over 30 days, 17 of winter and 13 of summer: 347.366667 kWh below the end of 700 x 17/30 at .1041 = 36.16;
    // 216.666667 = 500 x 13/30 at .1123 = 24.33, 48.966667 at .1562 = 7.65; rider 13.18; 14.50; tax 6 % of 81.32 = 4.88.
    expect(june).toMatchObject({ from: '2025-05-14', days: 30, computed_usd: 100.7 })
  })

  it('published: Seymour WI winter 1,200 kWh, 171.55 USD; Goodland KS 1,000 kWh, 142.00 USD', () => {
    // Rate pages of the two cities, read; see tests/published/money-bills.test.ts.
    const seymour: Tariff = {
      name: 'Seymour',
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
      fixed: { base: { usd_per_month: 7.5 } },
      taxes: { city: { percent: 1 } },
      rounding: 'line',
    }
    const one = (tariff: Tariff, kwh: number, amount: number, rest = ''): number =>
      check(
        tariff,
        `from,to,kwh,amount${rest === '' ? '' : ',energy,riders,fixed,taxes'}\n2025-01-01,2025-01-31,${kwh},${amount}${rest}`,
      ).values.differing
    expect(one(seymour, 1200, 171.55, ',60.35,102.00,7.50,1.70')).toBe(0)
    expect(one(seymour, 1200, 171.56)).toBe(1)
    const goodland: Tariff = {
      name: 'Goodland',
      energy: { all_year: { usd_per_kwh: 0.127 } },
      fixed: { meter: { usd_per_month: 15 } },
      rounding: 'line',
    }
    expect(one(goodland, 1000, 142)).toBe(0)
  })
})

const changed = (change: (tariff: Tariff) => void): Tariff => {
  const tariff = structuredClone(RIGHT)
  change(tariff)
  return tariff
}

describe('one slip is found', () => {
  it.each<[string, string | number, (tariff: Tariff) => void]>([
    [
      'energy.summer.tiers.0.up_to_kwh_per_month',
      500,
      (t) => (t.energy['summer']!.tiers![0]!.up_to_kwh_per_month = 550),
    ],
    [
      'energy.winter.tiers.0.up_to_kwh_per_month',
      700,
      (t) => (t.energy['winter']!.tiers![0]!.up_to_kwh_per_month = 600),
    ],
    ['energy.winter.tiers.1.usd_per_kwh', 0.0897, (t) => (t.energy['winter']!.tiers![1]!.usd_per_kwh = 0.0987)],
    ['energy.summer.tiers.1.usd_per_kwh', 0.1562, (t) => (t.energy['summer']!.tiers![1]!.usd_per_kwh = 0.1652)],
    ['fixed.customer.usd_per_month', 14.5, (t) => (t.fixed!['customer']!.usd_per_month = 15.4)],
    ['riders.power_cost.usd_per_kwh', 0.0215, (t) => (t.riders!['power_cost']!.usd_per_kwh = 0.0251)],
    ['taxes.city.percent', 6, (t) => (t.taxes!['city']!.percent = 6.5)],
    ['taxes.city.of', 'energy, riders', (t) => (t.taxes!['city']!.of = ['energy'])],
    ['taxes.city.of', 'energy, riders', (t) => delete t.taxes!['city']!.of],
    [
      'seasons.summer.from',
      '06-01',
      (t) => {
        t.seasons = { summer: { from: '05-01', to: '09-30' }, winter: { from: '10-01', to: '04-30' } }
      },
    ],
    [
      'seasons.winter.from',
      '10-01',
      (t) => {
        t.seasons = { summer: { from: '06-01', to: '09-15' }, winter: { from: '09-16', to: '05-31' } }
      },
    ],
    ['fixed.customer.prorate_by_days', 'false', (t) => (t.fixed!['customer']!.prorate_by_days = true)],
    ['taxes.missing.percent', 6, (t) => delete t.taxes],
  ])('%s, which fits at %s', (key, fits, slip) => {
    const { values, findings } = check(changed(slip), printed)
    const [first] = values.explanations
    // A tax that is missing altogether is found with its percentage only where its base is everything.
    if (key === 'taxes.missing.percent') {
      expect(values.explanations).toEqual([])
      expect(findings.map(({ id }) => id)).toContain('bills.unexplained')
      return
    }
    expect(first).toMatchObject({ key: `tariff.${key}`, fits })
    const suspects = new Set(values.bills.filter((bill) => bill.difference_usd !== 0).map((bill) => bill.suspect))
    expect([...suspects]).toEqual([`tariff.${key}`])
    expect(values.bills.filter((bill) => bill.difference_usd === 0).every((bill) => bill.suspect === null)).toBe(true)
    expect(findings.find(({ id }) => id === 'bills.differ')).toMatchObject({
      severity: 'error',
      where: `tariff.${key}`,
    })
  })

  it('a minimum, and what it is compared with', () => {
    const low: Tariff = { ...RIGHT, minimum: { usd_per_month: 140, of: 'bill' } }
    const bills = csvOf(amountsOf(low))
    const of = (minimum: NonNullable<Tariff['minimum']>) => check({ ...RIGHT, minimum }, bills).values.explanations[0]
    expect(of({ usd_per_month: 120, of: 'bill' })).toMatchObject({ key: 'tariff.minimum.usd_per_month', fits: 140 })
    expect(of({ usd_per_month: 140, of: 'energy' })).toMatchObject({ key: 'tariff.minimum.of', fits: 'bill' })
  })

  it('rounding of lines or of the total', () => {
    const total = csvOf(amountsOf({ ...RIGHT, rounding: 'total' }))
    expect(total).not.toBe(printed)
    expect(check(RIGHT, total).values.explanations[0]).toMatchObject({ key: 'tariff.rounding', fits: 'total' })
  })

  it('a charge that is missing', () => {
    const { fixed: _, ...bare } = RIGHT
    expect(check({ ...bare, minimum: { usd_per_month: 0, of: 'bill' } }, printed).values.explanations[0]).toMatchObject(
      {
        key: 'tariff.fixed.missing.usd_per_month',
        found: null,
        fits: 14.5,
      },
    )
  })

  it('two prices of periods exchanged, and tiers per day', () => {
    const use: Tariff = {
      name: 'T (invented)',
      time_of_use: {
        periods: ['on', 'off'],
        rules: [{ period: 'on', days: ['weekdays'], from_hour: 16, to_hour: 21 }],
        otherwise: 'off',
      },
      energy: { all_year: { periods_usd_per_kwh: { on: 0.31, off: 0.11 } } },
      rounding: 'line',
    }
    const rows =
      'from,to,kwh.on,kwh.off,amount\n2025-01-01,2025-01-31,100,500,86.00\n2025-01-31,2025-02-28,90,420,74.10'
    expect(check(use, rows).values.differing).toBe(0)
    const wrong: Tariff = { ...use, energy: { all_year: { periods_usd_per_kwh: { on: 0.11, off: 0.31 } } } }
    expect(check(wrong, rows).values.explanations[0]).toMatchObject({
      key: 'tariff.energy.all_year.periods_usd_per_kwh',
      fits: 'on and off exchanged',
    })
    const month: Tariff = {
      name: 'D (invented)',
      energy: { all_year: { tiers: [{ up_to_kwh_per_month: 360, usd_per_kwh: 0.125 }, { usd_per_kwh: 0.16 }] } },
      rounding: 'line',
    }
    const daily = structuredClone(month)
    daily.energy['all_year']!.tiers![0] = { up_to_kwh_per_day: 12, usd_per_kwh: 0.125 }
    expect(check(month, csvOf(amountsOf(daily))).values.explanations[0]).toMatchObject({ fits: 'per day: 12 kWh' })
  })
})

describe('the sample bills (invented)', () => {
  const folder = new URL('../../../examples', import.meta.url).pathname
  const text = readFileSync(`${folder}/lark-hollow-bills.csv`, 'utf8')
  const { tariff } = loadProject({ path: `${folder}/lark-hollow.yaml` }).project
  const withEnd = (kwh: number): Tariff => {
    const copy = structuredClone(tariff!)
    copy.energy['summer']!.tiers![0]!.up_to_kwh_per_month = kwh
    return copy
  }

  it('are those of the sample house', () => {
    expect(check(tariff!, text).values).toMatchObject({ differing: 0, difference_usd: 0 })
  })

  // Rounded lines make a total go up and down by a cent while the end of a tier moves: 750 has to be found all the same.
  it.each([700, 745, 760, 800, 1000])('the end of a tier at %d in place of 750', (kwh) => {
    expect(check(withEnd(kwh), text).values.explanations[0]).toEqual({
      key: 'tariff.energy.summer.tiers.0.up_to_kwh_per_month',
      found: kwh,
      fits: 750,
    })
  })
})

describe('lines of the bills', () => {
  it('tell which one is off, and rule explanations out', () => {
    const wrong = changed((t) => (t.fixed!['customer']!.usd_per_month = 15.4))
    const lines = check(
      RIGHT,
      csvOf(
        KWH.map(() => 1),
        ['fixed', 'taxes'],
        KWH.map(() => '14.50,0'),
      ),
    ).values.bills
    const taxes = lines.map((bill) => bill.lines.find(({ line }) => line === 'taxes')!.computed_usd)
    const { values } = check(
      wrong,
      csvOf(
        amountsOf(RIGHT),
        ['fixed', 'taxes'],
        taxes.map((tax) => `14.50,${tax}`),
      ),
    )
    expect(values.bills.map((bill) => bill.wrong_line)).toEqual(KWH.map(() => 'fixed'))
    expect(values.bills[0]!.lines[0]).toEqual({
      line: 'fixed',
      computed_usd: 15.4,
      stated_usd: 14.5,
      difference_usd: 0.9,
    })
    expect(values.explanations).toEqual([{ key: 'tariff.fixed.customer.usd_per_month', found: 15.4, fits: 14.5 }])
  })

  it('make a bill differ whose total is right', () => {
    const text = csvOf(
      amountsOf(RIGHT),
      ['fixed'],
      KWH.map(() => '14.40'),
    )
    expect(check(RIGHT, text).values).toMatchObject({ differing: 12, difference_usd: 0 })
  })
})

describe('days of a bill', () => {
  const daily: Tariff = {
    name: 'D (invented)',
    energy: { all_year: { usd_per_kwh: 0.1 } },
    fixed: { base: { usd_per_day: 0.5 } },
    rounding: 'line',
  }
  it('both printed days count when the next bill begins the day after', () => {
    const text = 'from,to,kwh,amount\n2025-01-01,2025-01-31,100,25.50\n2025-02-01,2025-02-28,100,24.00'
    expect(check(daily, text).values).toMatchObject({ days_counted: 'both', differing: 0 })
    const readings = 'from,to,kwh,amount\n2025-01-01,2025-01-31,100,25.00\n2025-01-31,2025-02-28,100,24.00'
    expect(check(daily, readings).values).toMatchObject({ days_counted: 'last', differing: 0 })
  })

  it('are a suspect of their own', () => {
    const one = 'from,to,kwh,amount\n2025-01-01,2025-01-31,100,25.50'
    expect(check(daily, one).values.explanations[0]).toMatchObject({ key: '--days', fits: 'both printed days count' })
  })

  it('a missing bill is told', () => {
    const gap =
      'from,to,kwh,amount\n2025-01-01,2025-01-31,100,25\n2025-01-31,2025-02-28,100,24\n2025-03-30,2025-04-30,0,15.5'
    expect(check(daily, gap).findings).toEqual([
      expect.objectContaining({
        id: 'bills.gap',
        message: 'bills.csv:4: 30 days lie between the bill that ends on 2025-02-28 and this one',
      }),
    ])
  })
})

describe('bills of a solar customer', () => {
  it('carry the bank from bill to bill, and find a wrong price for the surplus', () => {
    const tariff: Tariff = {
      name: 'N (invented)',
      energy: { all_year: { usd_per_kwh: 0.12 } },
      fixed: { base: { usd_per_month: 10 } },
      rounding: 'line',
      solar: { net_metering: { settle: 'annual', true_up_month: 3, surplus_usd_per_kwh: 0.03 } },
    }
    // January +200, February -50 of the bank, March +30 and the rest of 180 paid at 0.03: 10 - 5.40.
    const text =
      'from,to,kwh,export_kwh,amount\n2025-01-01,2025-01-31,300,500,10.00\n2025-02-01,2025-02-28,400,350,10.00\n2025-03-01,2025-03-31,370,400,4.60'
    const { values, findings } = check(tariff, text)
    expect(values).toMatchObject({ differing: 0, with_system: true })
    expect(findings.map(({ id }) => id)).toEqual(['bills.banks-empty'])
    tariff.solar!.net_metering!.surplus_usd_per_kwh = 0.04
    expect(check(tariff, text).values.explanations[0]).toMatchObject({
      key: 'tariff.solar.net_metering.surplus_usd_per_kwh',
      fits: 0.03,
    })
  })
})

describe('a demand charge', () => {
  it('needs the kW of the bill', () => {
    const tariff: Tariff = {
      name: 'P (invented)',
      energy: { all_year: { usd_per_kwh: 0.1 } },
      demand: { peak: { usd_per_kw: 5 } },
      rounding: 'line',
    }
    const text = (columns: string, cells: string) =>
      `from,to,kwh,amount${columns}\n2025-01-01,2025-01-31,100,40.50${cells}`
    expect(check(tariff, text(',demand_kw', ',6.1')).values.differing).toBe(0)
    expect(check(tariff, text(',demand_kw.peak', ',6.1')).values.differing).toBe(0)
    expect(() => check(tariff, text('', ''))).toThrow('bills.csv:2: the bill states no demand for the charge peak')
  })
})

describe('damaged tables', () => {
  it.each([
    ['', 'bills.csv:1:1  no line of the first 10000 has column names'],
    ['from,to,kwh\n2025-01-01,2025-01-31,5', 'bills.csv:1:1  there is no column amount'],
    ['from,to,kwh,amount,colour\n', 'bills.csv:1:20  colour  no such column; known are from, to, kwh'],
    ['from,to,kwh,amount,amount\n2025-01-01,2025-01-31,5,5,5', 'bills.csv:1:20  amount  this column stands twice'],
    ['from,to,kwh,amount\n', 'bills.csv:1:1  there is no bill below'],
    ['from,to,kwh,amount\n2025-01-01,2025-01-31,5', 'bills.csv:2:23  the row has 3 cells, the header 4'],
    [
      'from,to,kwh,amount\n01/02/2025,2025-01-31,5,5',
      "bills.csv:2:1  from  '01/02/2025' is no day; write year-month-day",
    ],
    ['from,to,kwh,amount\n2025-02-30,2025-03-31,5,5', "bills.csv:2:1  from  '2025-02-30' is no day"],
    ['from,to,kwh,amount\n2025-01-01,2025-01-31,five,5', "bills.csv:2:23  kwh  'five' is not a number"],
    ['from,to,kwh,amount\n2025-01-01,2025-01-31,-5,5', 'bills.csv:2:23  kwh  -5 is below zero'],
    ['from,to,kwh,amount\n2025-01-01,2025-01-31,,5', 'bills.csv:2:23  kwh  the cell is empty'],
    ['from,to,kwh,amount\n2025-01-01,2025-01-31,5,', 'bills.csv:2:25  amount  the cell is empty'],
    ['from,to,kwh,amount\n2025-01-01,2025-01-31,5,5.005', 'bills.csv:2:25  amount  5.005 USD has parts of a cent'],
    [
      'from,to,kwh,amount\n2025-01-31,2025-01-01,5,5',
      'bills.csv:2:1  to  the bill ends on 2025-01-01, not after 2025-01-31',
    ],
    [
      'from,to,kwh,amount\n2025-01-01,2025-01-31,5,5\n2025-01-15,2025-02-15,5,5',
      'bills.csv:3:1  from  the bill begins on 2025-01-15, before the one above ends (2025-01-31)',
    ],
  ])('%j', (text, message) => {
    expect(() => check(RIGHT, text)).toThrow(message)
  })

  it('takes thousands, a dollar sign, names in capitals and import_kwh', () => {
    const text = 'From;To;Import kWh;Amount USD\n2025-01-01;2025-01-31;1,000;$142.00'
    const tariff: Tariff = {
      name: 'G',
      energy: { all_year: { usd_per_kwh: 0.127 } },
      fixed: { meter: { usd_per_month: 15 } },
      rounding: 'line',
    }
    expect(check(tariff, text).values.differing).toBe(0)
  })
})
