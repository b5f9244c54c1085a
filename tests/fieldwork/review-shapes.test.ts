// Shapes in which readings come: the same invented days in each, so that each has to give the same energy of the same days.
import { describe, expect, it } from 'vitest'
import { productionLimits, readProduction, reviewProduction, type ReviewValues } from '../../src/fieldwork/index.js'
import type { Production } from '../../src/project/index.js'
import { sumDistribution } from '../../src/fieldwork/review/index.js'
import { normalSums } from '../../src/fieldwork/review/normal-sums.js'
import { intervalCsv, kindsOf, project, run } from './synthetic.js'

function review(text: string, mapping: Production = {}): { values: ReviewValues; ids: string[] } {
  const read = readProduction('p.csv', text, mapping, productionLimits(project, run))
  if (read.series === undefined) throw new Error(read.problems.map((problem) => problem.message).join('\n'))
  const { values, findings } = reviewProduction({ project, run, series: read.series })
  return { values, ids: findings.map(({ id }) => id) }
}
const rowsOf = (csv: string): [string, number][] =>
  csv
    .trim()
    .split('\n')
    .slice(1)
    .map((row) => row.split(',') as [string, string])
    .map(([stamp, kwh]) => [stamp, Number(kwh)])
const tableOf = (rows: readonly (readonly [string, number])[], heading = 'energy_kwh'): string =>
  `time,${heading}\n${rows.map(([stamp, value]) => `${stamp},${value}`).join('\n')}\n`
const kwhOf = (csv: string): number => rowsOf(csv).reduce((sum, [, kwh]) => sum + kwh, 0)

describe('shapes of input', () => {
  const quarter = intervalCsv('2026-03-01', 20, 15, 3)
  const whole = review(quarter, { clock: 'standard' }).values

  it('five minutes, a quarter of an hour and hours of the same days agree', () => {
    const five = review(intervalCsv('2026-03-01', 20, 5, 3), { clock: 'standard' }).values
    const hour = review(intervalCsv('2026-03-01', 20, 60, 3), { clock: 'standard' }).values
    for (const values of [five, hour]) {
      expect(values.period).toMatchObject({ days_counted: 20, days_missing: 0 })
      expect(values.measured_kwh / whole.measured_kwh).toBeCloseTo(1, 2)
    }
  })
  it('a counter over the same days, and one that is exchanged in between', () => {
    let reading = 5000
    const counter = rowsOf(quarter).map(([stamp, kwh]) => [stamp, (reading += kwh)] as [string, number])
    const risen = review(tableOf(counter, 'lifetime kWh'), { clock: 'standard', stamps_mark: 'ending' }).values
    expect(risen.measured_kwh / whole.measured_kwh).toBeCloseTo(1, 1)
    const exchanged = counter.map(([stamp, value], at) => [stamp, at < 960 ? value : value - reading + 100] as const)
    const low = Math.min(...exchanged.map(([, value]) => value))
    const { values, ids } = review(
      tableOf(
        exchanged.map(([stamp, value], at) => [stamp, at < 960 ? value : value - low]),
        'lifetime kWh',
      ),
      { clock: 'standard' },
    )
    expect(ids).toContain('output.meter-reset')
    expect(values.signs.find(({ kind }) => kind === 'meter_reset')).toMatchObject({ from: '2026-03-11', lost_kwh: 0 })
  })
  it('a local clock over the change in March and in November counts no hour twice and none too few', () => {
    for (const [from, day, hour] of [
      ['2026-03-01', '2026-03-08', 2],
      ['2026-10-25', '2026-11-01', 1],
    ] as const) {
      const standard = intervalCsv(from, 20, 60, 4)
      const changeMs = Date.parse(`${day}T0${hour === 2 ? 2 : 1}:00:00Z`)
      const isSummer = (ms: number): boolean => (hour === 2 ? ms >= changeMs : ms < changeMs)
      const local = rowsOf(standard).map(([stamp, kwh]) => {
        const ms = Date.parse(`${stamp.replace(' ', 'T')}:00Z`)
        const shown = new Date(ms + (isSummer(ms) ? 3_600_000 : 0)).toISOString()
        return [`${shown.slice(0, 10)} ${shown.slice(11, 16)}`, kwh] as const
      })
      const read = review(tableOf(local), { clock: 'local' })
      expect(read.values.measured_kwh).toBeCloseTo(kwhOf(standard), 2)
      expect(read.values.period.days_missing).toBe(0)
      expect(read.ids.filter((id) => id.includes('clock') || id.includes('repeated'))).toEqual([])
    }
  })
  it('a leap day is a day', () => {
    const { values } = review(intervalCsv('2028-02-20', 20, 60, 5), { clock: 'standard' })
    expect(values.period).toMatchObject({ from: '2028-02-20', to: '2028-03-10', days_counted: 20 })
    expect(values.months.map(({ days_counted: days }) => days)).toEqual([10, 10])
  })
  it('gaps, repeats and negative nights', () => {
    const rows = rowsOf(quarter)
    const night = rows.map(([stamp, kwh]) => [stamp, / 0[0-3]:/u.test(stamp) ? -0.001 : kwh] as const)
    expect(review(tableOf(night), { clock: 'standard' }).values.period.days_counted).toBe(20)
    const twice = [...rows.slice(0, 50), rows[49]!, ...rows.slice(50)]
    expect(review(tableOf(twice), { clock: 'standard' }).values.measured_kwh).toBeCloseTo(whole.measured_kwh, 6)
    const gap = rows.filter(([stamp]) => !stamp.startsWith('2026-03-07 1'))
    expect(review(tableOf(gap), { clock: 'standard' }).values.period).toMatchObject({
      days_counted: 19,
      days_missing: 1,
    })
  })
  it('a counter that stands still over twelve days is an outage, also when it was read only at their end', () => {
    const daily = Array.from({ length: 90 }, (_, at) => {
      const date = new Date(Date.UTC(2026, 4, 1 + at)).toISOString().slice(0, 10)
      return [date, at >= 40 && at < 52 ? 0 : kindsOf(date)[(at * 7) % 10]!] as const
    })
    let reading = 100
    const counter = daily.map(([date, kwh]) => [date, (reading += kwh)] as const)
    for (const rows of [counter, counter.filter((_, at) => at < 40 || at >= 51)]) {
      const { values } = review(tableOf(rows, 'lifetime kWh'))
      const found = values.signs.find(({ kind }) => kind === 'outage')
      expect(found).toMatchObject({ from: '2026-06-10', to: '2026-06-21', lasts: false })
      expect(found!.lost_usd).toBeNull()
    }
  })
})

it('over 700 days the normal law and the chain of kinds of day agree', () => {
  const days = Array.from({ length: 700 }, (_, at) => ({ day: 20_000 + at, kindsKwh: kindsOf('2026-04-10') }))
  const [chain, normal] = [sumDistribution(days, 0.29).total, normalSums(days, 0.29, new Set()).total]
  const deviation = ({ probability, lowestKwh, stepKwh, meanKwh }: typeof chain): number =>
    Math.sqrt(probability.reduce((sum, share, cell) => sum + share * (lowestKwh + cell * stepKwh - meanKwh) ** 2, 0))
  expect(normal.meanKwh).toBeCloseTo(chain.meanKwh, 6)
  // Rounding each of 700 days to a grid of a sixtieth widens the chain's by up to 2.4 %; kinds are less correlated than their normals.
  expect(deviation(normal) / deviation(chain)).toBeGreaterThan(0.94)
  expect(deviation(normal) / deviation(chain)).toBeLessThan(1.06)
})
