import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { productionLimits, readProduction, reviewProduction, weatherOfDays } from '../../src/fieldwork/index.js'
import type { Production } from '../../src/project/index.js'
import type { ReviewValues } from '../../src/fieldwork/index.js'
import type { Result } from '../../src/worksheet/index.js'
import { kindsOfDay, methodSpread, shareBelow, sumDistribution } from '../../src/fieldwork/review/index.js'
import { soilingTrend } from '../../src/fieldwork/review/signs/soiling.js'
import { runYield } from '../../src/yield/index.js'
import { dailyCsv, dayOf, drawKinds, files, intervalCsv, model, project, run } from './synthetic.js'

function review(text: string, mapping: Production = { clock: 'standard' }): Result<ReviewValues> {
  const read = readProduction('p.csv', text, mapping, productionLimits(project, run))
  if (read.series === undefined) throw new Error(read.problems.map((problem) => problem.message).join('\n'))
  return reviewProduction({ project, run, series: read.series })
}
const ids = (text: string, mapping?: Production): string[] =>
  review(text, mapping).findings.map((finding) => finding.id)
/** Luck of the drawn days may put a clean table at either end of the range. */
const signs = (text: string): string[] =>
  ids(text).filter((id) => !['output.below-range', 'output.above-range', 'output.low-for-the-weather'].includes(id))

describe('signs of trouble', () => {
  it('clean tables show none: 6 draws in quarter hours and hours', () => {
    for (let seed = 1; seed <= 3; seed += 1) {
      expect(signs(intervalCsv('2026-04-10', 90, 60, seed))).toEqual([])
      expect(signs(intervalCsv('2026-09-01', 45, 15, 100 + seed))).toEqual([])
    }
  })
  it('of 300 clean draws of 120 days at most 1 % show soiling, and fewer than one in ten is called low', () => {
    const first = dayOf('2026-03-01')
    const odds = Array.from({ length: 120 }, (_, at) => ({ day: first + at, kindsKwh: kindsOfDay(model, first + at) }))
    const { total } = sumDistribution(odds, 0.29)
    let [soiled, low] = [0, 0]
    for (let seed = 1; seed <= 300; seed += 1) {
      const kinds = drawKinds(120, 0.29, 1000 + seed)
      const days = odds.map(({ day, kindsKwh }, at) => {
        const kwh = kindsKwh[kinds[at] as number] as number
        return { day, kwh, ratio: kwh / (kindsKwh[9] as number) }
      })
      if (soilingTrend(days) !== undefined) soiled += 1
      if (
        shareBelow(
          total,
          days.reduce((sum, day) => sum + day.kwh, 0),
          methodSpread(run),
        ) < 0.1
      )
        low += 1
    }
    expect(soiled).toBeLessThanOrEqual(3)
    expect(low).toBeLessThan(30)
  })
  it('soiling of 1.5 % a week over 16 weeks', () => {
    const found = review(dailyCsv('2026-04-01', 112, 3, { soiling: 0.015 })).findings.find(
      (finding) => finding.id === 'output.dirt',
    )
    expect(found?.message).toMatch(/falls by 1\.\d % a week/)
  })
  it('a system at 70 % for a quarter of a year is below the range', () => {
    expect(ids(dailyCsv('2026-04-01', 90, 5, { scale: 0.7 }))).toContain('output.below-range')
  })
  it('a system at 140 % is above the range', () => {
    expect(ids(dailyCsv('2026-04-01', 90, 5, { scale: 1.4 }))).toContain('output.above-range')
  })
  it('a limit below the inverters', () => {
    const found = review(intervalCsv('2026-06-01', 30, 15, 8, { limitKw: 3.5 })).findings.find(
      (finding) => finding.id === 'output.clipping',
    )
    expect(found).toMatchObject({ severity: 'warning' })
    expect(found?.message).toMatch(/stays at 3\.50 kW/)
  })
  it('a clock one hour late, one hour early, and stamps of the wrong end of hours', () => {
    const late = review(intervalCsv('2026-05-01', 30, 60, 4, { shiftH: 1 })).findings.find(
      (finding) => finding.id === 'output.clock-shift',
    )
    expect(late?.message).toMatch(/comes (?:0\.9|1\.0|1\.1) h later/)
    const early = review(intervalCsv('2026-05-01', 30, 15, 4, { shiftH: -1 })).findings.find(
      (finding) => finding.id === 'output.clock-shift',
    )
    expect(early?.message).toMatch(/comes (?:0\.9|1\.0|1\.1) h earlier/)
    // Declaring the clock that the table has puts it right.
    expect(ids(intervalCsv('2026-05-01', 30, 60, 4, { shiftH: 1 }), { clock: 'local' })).not.toContain(
      'output.clock-shift',
    )
  })
  it('gaps: missing days, and days with a hole in the daylight', () => {
    const rows = dailyCsv('2026-05-01', 20, 2).split('\n')
    rows.splice(8, 3)
    const { values, findings } = review(rows.join('\n'))
    expect(findings.find((finding) => finding.id === 'output.days-missing')?.message).toMatch(
      /3 days without complete readings: 2026-05-08 to 2026-05-10/,
    )
    expect(values.period).toMatchObject({ days_counted: 17, days_missing: 3 })
    const holed = intervalCsv('2026-05-01', 5, 60, 2)
      .split('\n')
      .filter((row) => !row.startsWith('2026-05-03 12:00'))
    const day = review(holed.join('\n')).values
    expect(day.period.days_counted).toBe(4)
    expect(day.period.left_out_kwh).toBeGreaterThan(0)
    const nights = intervalCsv('2026-05-01', 5, 60, 2)
      .split('\n')
      .filter((row) => !/ (?:2[1-3]|0[0-3]):00/.test(row))
    expect(review(nights.join('\n')).values.period.days_counted).toBe(5)
  })
  it('a module that dies, one that is weak, and none when all work', () => {
    const modules = Object.values(run.result.values.arrays).flatMap((array) => array.by_module)
    const table = (scale: (at: number, day: number) => number): string => {
      const rows = Array.from({ length: 20 }, (_, day) => {
        const sun = 0.4 + ((day * 7) % 10) / 15
        return [
          `2026-06-${String(day + 1).padStart(2, '0')}`,
          ...modules.map((module, at) => ((sun * module.ac_kwh * scale(at, day)) / 365).toFixed(4)),
        ].join(',')
      })
      return `date,${modules.map((module) => module.id).join(',')}\n${rows.join('\n')}\n`
    }
    const found = (scale: (at: number, day: number) => number): string[] =>
      review(table(scale), { unit: 'kwh' })
        .findings.filter((finding) => finding.id.startsWith('output.module'))
        .map((finding) => `${finding.id} ${finding.message}`)
    expect(found(() => 1)).toEqual([])
    const dead = found((at, day) => (at === 4 && day >= 12 ? 0 : 1))
    expect(dead).toHaveLength(1)
    expect(dead[0]).toContain(`output.module-dead module ${modules[4]?.id ?? ''} has given nothing since 2026-06-13`)
    expect(found((at) => (at === 2 ? 0.7 : 1))[0]).toContain(
      `output.module-weak module ${modules[2]?.id ?? ''} gives 70 %`,
    )
    // One day of silence is no death.
    expect(found((at, day) => (at === 4 && day === 19 ? 0 : 1))).toEqual([])
  })
})

describe('values', () => {
  const week = dailyCsv('2026-06-08', 7, 11)
  const sum = week
    .trim()
    .split('\n')
    .slice(1)
    .reduce((total, row) => total + Number(row.split(',')[1]), 0)

  it('the projection is what was measured and the expectation of the rest, never the good week carried on', () => {
    const clearest = model.kindsKwh[5]?.[9] ?? Number.NaN
    const rows = Array.from(
      { length: 7 },
      (_, at) => `2026-06-${String(8 + at).padStart(2, '0')},${clearest.toFixed(3)}`,
    )
    const { values } = review(`date,kWh\n${rows.join('\n')}\n`)
    const { month, year } = values.projection
    expect(values.percentile_of_weather).toBeGreaterThan(99)
    expect(month).toMatchObject({ from: '2026-06-01', to: '2026-06-30', days_measured: 7, days_remaining: 23 })
    expect(month.projected_kwh).toBeCloseTo(month.measured_kwh + month.expected_rest_kwh, 6)
    expect(month.expected_rest_kwh / 23).toBeCloseTo((run.result.values.monthly[5]?.ac_kwh as number) / 30, 0)
    expect(year).toMatchObject({ from: '2026-06-08', to: '2027-06-07', days_remaining: 358 })
    const annual = run.result.values.annual.ac_kwh
    expect(year.projected_kwh - annual).toBeCloseTo(values.measured_kwh - values.expected.mean_kwh, 6)
    expect(year.p10_kwh).toBeLessThan(year.projected_kwh)
    expect(year.p90_kwh).toBeGreaterThan(year.projected_kwh)
  })
  it('weather luck and method are kept apart, and the method does not shrink with more days', () => {
    const { expected: short } = review(week).values
    const { expected: long } = review(dailyCsv('2026-03-01', 300, 11)).values
    const widths = (range: typeof short): { weather: number; all: number } => ({
      weather: (range.weather_p90_kwh - range.weather_p10_kwh) / range.mean_kwh,
      all: (range.p90_kwh - range.p10_kwh) / range.mean_kwh,
    })
    expect(widths(long).weather).toBeLessThan(widths(short).weather / 3)
    expect(widths(long).all).toBeGreaterThan(2 * 1.28 * (long.method_uncertainty_pct / 100))
    expect(widths(short).all).toBeGreaterThan(widths(short).weather)
  })
  it('the days of a year and the slow weather together spread as years are known to', () => {
    const first = dayOf('2026-01-01')
    const odds = Array.from({ length: 365 }, (_, at) => ({ day: first + at, kindsKwh: kindsOfDay(model, first + at) }))
    const { probability, lowestKwh, stepKwh, meanKwh } = sumDistribution(odds, 0.29).total
    const variance = probability.reduce(
      (sum, share, cell) => sum + share * (lowestKwh + cell * stepKwh - meanKwh) ** 2,
      0,
    )
    const { expected } = review(week).values
    // The 4 % of the estimate's own term; ten kinds lose about 1 % of the days' own spread.
    expect(Math.hypot((100 * Math.sqrt(variance)) / meanKwh, expected.slow_weather_pct)).toBeCloseTo(4, 1)
    expect(expected.slow_weather_pct).toBeGreaterThan(0)
  })
  it('sums, months and the cumulative course agree', () => {
    const { values } = review(dailyCsv('2026-05-20', 60, 12))
    expect(values.months.map((month) => month.days_counted)).toEqual([12, 30, 18])
    expect(values.months.reduce((total, month) => total + month.measured_kwh, 0)).toBeCloseTo(values.measured_kwh, 6)
    expect(values.cumulative.at(-1)).toMatchObject({ date: '2026-07-18' })
    expect(values.cumulative.at(-1)?.expected_kwh).toBeCloseTo(values.expected.mean_kwh, 6)
    expect(review(week).values.measured_kwh).toBeCloseTo(sum, 6)
  })
  it('the same days as intervals, days, and a counter give the same', () => {
    const hours = intervalCsv('2026-06-01', 10, 60, 6)
    const byDay = new Map<string, number>()
    for (const row of hours.trim().split('\n').slice(1)) {
      const [stamp, kwh] = row.split(',') as [string, string]
      byDay.set(stamp.slice(0, 10), (byDay.get(stamp.slice(0, 10)) ?? 0) + Number(kwh))
    }
    let reading = 7000
    const counter = ['2026-05-31,7000', ...[...byDay].map(([day, kwh]) => `${day},${(reading += kwh).toFixed(6)}`)]
    const days = review(`date,kWh\n${[...byDay].map(([day, kwh]) => `${day},${kwh}`).join('\n')}\n`).values
    const ofHours = review(hours).values
    const ofCounter = review(`date,lifetime kWh\n${counter.join('\n')}\n`).values
    for (const values of [ofHours, ofCounter]) {
      expect(values.measured_kwh).toBeCloseTo(days.measured_kwh, 3)
      expect(values.percentile).toBeCloseTo(days.percentile, 2)
      expect(values.period).toMatchObject({ days_counted: 10, days_missing: 0 })
    }
  })
  it('the numbers are finite and every step has its id once', () => {
    const result = review(dailyCsv('2026-05-20', 60, 12))
    expect(JSON.stringify(result)).not.toMatch(/null,"x|NaN|Infinity/)
    const numbers = JSON.stringify(result, (_, value: unknown) =>
      typeof value === 'number' && !Number.isFinite(value) ? 'bad' : value,
    )
    expect(numbers).not.toContain('"bad"')
    expect(result.worksheet.map((step) => step.id)).toContain('output.percentile')
  })
  it('months of the estimate are in the middle, and half of them are below the range', () => {
    const monthly = run.result.values.monthly.slice(0, 6).map((month, at) => [`2026-0${at + 1}`, month.ac_kwh] as const)
    const table = (scale: number): string =>
      `Month,kWh\n${monthly.map(([month, kwh]) => `${month},${scale * kwh}`).join('\n')}\n`
    const { values } = review(table(1))
    expect(values.months).toHaveLength(6)
    expect(values.measured_over_expected).toBeCloseTo(1, 9)
    expect(Math.abs(values.percentile - 50)).toBeLessThan(3)
    const low = review(table(0.5)).findings.find((finding) => finding.id === 'output.below-range')
    expect(low?.fix).toContain('leave out a month in which the system was switched on')
  })
  it('a table with no whole day is refused', () => {
    expect(() => review('time,kWh\n2026-06-01 11:00,2\n2026-06-01 12:00,2\n')).toThrow(/no whole day/)
  })
})

describe('with the weather of these hours', () => {
  const text = readFileSync(
    new URL('../../examples/weather/USA_WA_Seattle-Tacoma.Intl.AP.727930_TMY3.epw', import.meta.url),
    'utf8',
  )
  /** The same hours as if they were all of one year, as a file of actual weather has them. */
  const actual = text.replaceAll(/^\d{4}(?=,\d{1,2},\d{1,2},\d{1,2},)/gmu, '2025')
  const seattle = { ...project, site: { latitude_deg: 47.45, longitude_deg: -122.3, utc_offset_h: -8 } }
  const estimate = runYield({ ...seattle, site: { ...seattle.site, climate: { epw: 'w' } } }, new Map([['w', actual]]))
  const daily = (): Map<string, number> => {
    const sums = new Map<string, number>()
    for (let step = 0; step < estimate.steps.length; step += 1) {
      const { month, day } = estimate.steps.label(step)
      const key = `2025-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`
      sums.set(key, (sums.get(key) ?? 0) + (estimate.system.acW[step] as number) / 1000)
    }
    return sums
  }
  const seriesOf = (scale: number) => {
    const rows = [...daily()]
      .filter(([day]) => day.startsWith('2025-07'))
      .map(([day, kwh]) => `${day},${(scale * kwh).toFixed(4)}`)
    const read = readProduction('p.csv', `date,kWh\n${rows.join('\n')}\n`, {}, productionLimits(seattle, estimate))
    if (read.series === undefined) throw new Error(read.problems[0]?.message)
    return read.series
  }
  it('a system that does what the model says is at the middle, and one at 80 % is far below', () => {
    const long = runYield(seattle, files)
    const at = (scale: number): ReviewValues => {
      const series = seriesOf(scale)
      return reviewProduction({
        project: seattle,
        run: long,
        series,
        weather: weatherOfDays(seattle, 'w', actual, series),
      }).values
    }
    // The inverters' own use at night is not in the drawn days: a few tenths of a percent.
    expect(at(1).percentile).toBeGreaterThan(49)
    expect(at(1).percentile).toBeLessThan(54)
    expect(at(1).basis).toBe('weather_of_these_hours')
    expect(at(0.8).percentile).toBeLessThan(1)
  })
  it('a typical year put together from many is refused', () => {
    expect(() => weatherOfDays(seattle, 'w', text, seriesOf(1))).toThrow(/holds (?:days of the years|the year)/)
  })
})
