import { describe, expect, test } from 'vitest'
import { productionLimits, readProduction } from '../../src/fieldwork/index.js'
import { parseNumber } from '../../src/fieldwork/production/parse-number.js'
import { kindTransitions, overDays } from '../../src/fieldwork/review/kind-transitions.js'
import type { Production } from '../../src/project/index.js'
import { project, run } from './synthetic.js'

const limits = productionLimits(project, run)
function seriesOf(text: string, mapping: Production = {}) {
  const { series, problems } = readProduction('p.csv', text, mapping, limits)
  if (series === undefined) throw new Error(problems.map(({ message }) => message).join('\n'))
  return series
}
const complaintsOf = (text: string, mapping: Production = {}): string[] =>
  (readProduction('p.csv', text, mapping, limits).problems ?? []).map(
    ({ line, column, message }) => `${line ?? 0}:${column ?? 0} ${message}`,
  )
const iso = (ms: number): string => new Date(ms).toISOString().slice(0, 16)
const takenOf = (text: string, mapping: Production = {}): string[] =>
  seriesOf(text, mapping).taken.map(({ path, value }) => `${path.replace('production.', '')}=${value}`)
const hours = (stamps: readonly string[]): string => `time,kWh\n${stamps.map((stamp) => `${stamp},0.01`).join('\n')}\n`

describe('numbers', () => {
  test.each([
    ['20.5', ',', 20.5],
    ['20,500', ',', 20_500],
    ['1,020,500.25', ',', 1_020_500.25],
    ['20,5', ';', 20.5],
    ['20,500', ';', 20.5],
    ['-0.4', ',', -0.4],
    ['.5', ',', 0.5],
    ['5.', ',', 5],
    ['1.5e3', ',', 1500],
    ['+3', '\t', 3],
  ] as const)("'%s' between '%s'", (text, delimiter, value) => expect(parseNumber(text, delimiter)).toBe(value))

  test.each(['', '-', '--', 'NA', 'n/a', 'NaN', 'null', 'None', 'missing', '#N/A'])("'%s' is no reading", (text) =>
    expect(parseNumber(text, ',')).toBeUndefined(),
  )
  test.each(['x', '20,5', '2,00', '1 000', '1.2.3', '0x10', 'Infinity'])("'%s' is no number", (text) =>
    expect(parseNumber(text, ',')).toBeNaN(),
  )
})

describe('how far apart rows are', () => {
  test('hours, quarters, days; the shorter of two that are equally common', () => {
    expect(seriesOf(hours(['2026-05-01 10:00', '2026-05-01 11:00', '2026-05-01 12:00'])).stepMin).toBe(60)
    expect(seriesOf(hours(['2026-05-01 10:00', '2026-05-01 10:15', '2026-05-01 10:45'])).stepMin).toBe(15)
    expect(seriesOf(hours(['2026-05-01 10:00', '2026-05-01 10:30', '2026-05-01 10:45'])).stepMin).toBe(15)
    expect(seriesOf(hours(['2026-05-01 10:00', '2026-05-01 10:01'])).stepMin).toBe(1)
    const days = seriesOf('time,kWh\n2026-05-01 00:00,20\n2026-05-02 00:00,21\n')
    expect([days.resolution, days.stepMin]).toEqual(['day', undefined])
    expect(
      seriesOf('date,kWh\n2026-05-01,20\n2026-05-08,21\n').spans.map(
        ({ startMs, endMs }) => (endMs - startMs) / 86_400_000,
      ),
    ).toEqual([1, 1])
  })

  test('what fits in no hour is refused, as is a file of months and days', () => {
    expect(complaintsOf(hours(['2026-05-01 10:00', '2026-05-01 10:07', '2026-05-01 10:14']))[0]).toBe(
      '3:1 rows are mostly 7 minutes apart; intervals of 1 to 60 minutes that fit into an hour, days and months are read',
    )
    expect(complaintsOf(hours(['2026-05-01 10:00:00', '2026-05-01 10:00:30']))[0]).toMatch(
      /rows are mostly 0\.5 minutes/u,
    )
    expect(complaintsOf(hours(['2026-05-01 10:00', '2026-05-01 12:00']))[0]).toMatch(/rows are mostly 120 minutes/u)
    expect(complaintsOf('date,kWh\n2026-05,700\n2026-06-01,20\n')[0]).toMatch(
      /some rows name a month and others a day/u,
    )
  })

  test('first or last days of months, not any day of them', () => {
    const kind = (dates: readonly string[]) =>
      seriesOf(`date,kWh\n${dates.map((date) => `${date},20`).join('\n')}\n`).resolution
    expect(kind(['2026-01-01', '2026-02-01', '2026-03-01'])).toBe('month')
    expect(kind(['2026-01-31', '2026-02-28', '2026-03-31'])).toBe('month')
    expect(kind(['2026-01-15', '2026-02-15', '2026-03-15'])).toBe('day')
    expect(kind(['2026-01-01', '2026-02-01', '2026-03-02'])).toBe('day')
    const months = seriesOf('date,kWh\n2026-02,700\n2026-12,300\n').spans
    expect(months.map(({ startMs, endMs }) => [iso(startMs), iso(endMs)])).toEqual([
      ['2026-02-01T00:00', '2026-03-01T00:00'],
      ['2026-12-01T00:00', '2027-01-01T00:00'],
    ])
  })
})

describe('what the file does not say is taken, and told', () => {
  test('the end that a stamp marks, and the clock, of intervals only', () => {
    const text = hours(['2026-05-01 10:00', '2026-05-01 11:00'])
    expect(takenOf(text)).toEqual(['stamps_mark=beginning', 'clock=standard', 'meter=interval'])
    expect(takenOf(text, { stamps_mark: 'ending', clock: 'utc', meter: 'interval' })).toEqual([])
    expect(takenOf('date,kWh\n2026-05-01,20\n2026-05-02,31\n')).toEqual(['meter=interval'])
    expect(takenOf('date,kWh\n2026-05-01,20\n2026-05-02,31\n', { meter: 'interval' })).toEqual([])
    expect(seriesOf(text).taken.find(({ path }) => path === 'production.meter')?.why).toBe(
      'the readings do not only rise',
    )
    const counter = seriesOf('date,meter reading kWh\n2026-05-01,100\n2026-05-02,120\n')
    expect(counter.taken.map(({ value, why }) => `${value}: ${why}`)).toEqual([
      'cumulative: the readings only rise, or the column name says so',
    ])
  })

  test('a counter: ten readings that rise, at most one fall in twenty', () => {
    const meter = (values: readonly number[]) =>
      seriesOf(
        `date,kWh\n${values.map((value, at) => `${new Date(Date.UTC(2026, 4, 1 + at)).toISOString().slice(0, 10)},${value}`).join('\n')}\n`,
      ).meter
    const rising = (count: number) => Array.from({ length: count }, (_, at) => 10 + at)
    expect(meter(rising(9))).toBe('interval')
    expect(meter(rising(10))).toBe('cumulative')
    expect(meter([...rising(21), 10])).toBe('cumulative')
    expect(meter([...rising(20), 10])).toBe('interval')
    expect(meter(Array.from({ length: 12 }, (_, at) => (at < 4 ? 10 + at : 13)))).toBe('interval')
    expect(meter(Array.from({ length: 12 }, (_, at) => (at < 5 ? 10 + at : 15)))).toBe('cumulative')
  })

  test('the clock by the hours that changes of it leave out or repeat', () => {
    const clock = (stamps: readonly string[]) => seriesOf(hours(stamps)).clock
    expect(clock(['2026-03-08 01:00', '2026-03-08 03:00', '2026-03-08 04:00', '2026-03-08 05:00'])).toBe('local')
    expect(clock(['2026-03-08 01:00', '2026-03-08 02:00', '2026-03-08 03:00'])).toBe('standard')
    expect(clock(['2026-11-01 00:00', '2026-11-01 01:00', '2026-11-01 01:00', '2026-11-01 02:00'])).toBe('local')
    expect(clock(['2026-11-01 00:00', '2026-11-01 01:00', '2026-11-01 02:00'])).toBe('standard')
    // Another gap is only a gap.
    expect(clock(['2026-03-09 01:00', '2026-03-09 03:00', '2026-03-09 04:00', '2026-03-09 05:00'])).toBe('standard')
  })
})

describe('columns', () => {
  const days = (header: string, cells: string): string => `${header}\n2026-05-01,${cells}\n2026-05-02,${cells}\n`

  test('the one with energy among those that may be meant', () => {
    const series = seriesOf(days('date,solar power (kW),solar energy (kWh)', '3,20'))
    expect([series.unit, series.spans.at(0)?.kwh]).toEqual(['kwh', 20])
    expect(complaintsOf(days('date,PV energy (kWh),total (Wh)', '3,20'))[0]).toMatch(
      /^1:22 several columns may hold the production \('PV energy \(kWh\)', 'total \(Wh\)'\); declare value_column$/u,
    )
  })

  test('power over a step, in its unit', () => {
    const text = 'time,ac power (kW)\n2026-05-01 12:00,4\n2026-05-01 12:30,2\n2026-05-01 13:00,1\n'
    expect(seriesOf(text).spans.map(({ kwh }) => kwh)).toEqual([2, 1, 0.5])
    expect(complaintsOf(text, { meter: 'cumulative' })[0]).toMatch(
      /a cumulative meter cannot read kw; declare unit as kwh or wh, or meter as interval$/u,
    )
  })

  test('what is missing is told with the names that are there', () => {
    expect(complaintsOf(days('date,weather', '1'))[0]).toBe(
      "1:6 no column is named as production (kWh, energy, production ...); declare value_column among 'date', 'weather'",
    )
    expect(complaintsOf(days('a,kWh', '1'))[0]).toMatch(/declare time_columns among 'a', 'kWh'$/u)
    expect(complaintsOf(days('date,kWh', '1'), { time_columns: ['when'] })[0]).toBe(
      "1:1 no column 'when' (time_columns); the columns are 'date', 'kWh'",
    )
  })

  test('modules by their ids with or without a unit, a total beside them', () => {
    const [one, two] = limits.moduleIds
    const series = seriesOf(days(`date,kWh,${one} (kWh),${two} kWh`, '20,1.5,1.25'))
    expect(series.moduleIds).toEqual([one, two])
    expect(series.spans.at(0)).toMatchObject({ kwh: 20, moduleKwh: [1.5, 1.25] })
    const holed = seriesOf(`date,${one} kWh,${two} kWh\n2026-05-01,1,\n2026-05-02,1,2\n`)
    expect(holed.spans.map(({ kwh }) => kwh)).toEqual([3])
  })
})

describe('readings that cannot be', () => {
  const text = (values: readonly number[]): string =>
    `date,kWh\n${values.map((value, at) => `2026-05-${String(at + 1).padStart(2, '0')},${value}`).join('\n')}\n`

  test('above the limit of the system, or more than 2 % of it below none', () => {
    const may = Date.UTC(2026, 4, 3)
    const most = limits.mostKwh(may, may + 86_400_000)
    const kept = (value: number) => seriesOf(text([20, 10, value, 20, 10, 20])).spans.length
    expect([kept(most * 0.999), kept(most * 1.001)]).toEqual([6, 5])
    expect([kept(-0.0199 * most), kept(-0.0201 * most)]).toEqual([6, 5])
  })

  test('names at most five, with their places', () => {
    const values = Array.from({ length: 28 }, (_, at) => (at % 5 === 1 ? 9000 + at : 20 + (at % 3)))
    const [finding] = seriesOf(text(values)).findings
    expect(finding?.message).toBe(
      '6 readings cannot be and are left out: p.csv:3:12 (9001 kWh), p.csv:8:12 (9006 kWh), p.csv:13:12 (9011 kWh), p.csv:18:12 (9016 kWh), p.csv:23:12 (9021 kWh) ...',
    )
  })

  test('rows out of order, repeated and contradicting are counted with their lines', () => {
    const messages = (rows: readonly string[]) =>
      seriesOf(`date,kWh\n${rows.join('\n')}\n`).findings.map(({ message }) => message)
    expect(messages(['2026-05-02,20', '2026-05-01,21', '2026-05-03,20'])).toEqual([
      '1 row stand before an earlier time, the first on line 3; they were sorted',
    ])
    expect(messages(['2026-05-01,20', '2026-05-01,20', '2026-05-01,20', '2026-05-02,19'])).toEqual([
      '2 rows repeat a time with the same value, the first at p.csv:3:12; each time counts once',
    ])
    expect(messages(['2026-05-01,20', '2026-05-01,21', '2026-05-02,19'])).toContain(
      '1 row repeat a time with another value, the first at p.csv:3:12; these times are left out',
    )
    expect(messages(['2026-05-01,20', '2026-05-02,', '2026-05-03,19', '2026-05-04,'])).toEqual([
      '2 rows hold no reading, the first on line 3',
    ])
  })

  test('a counter that goes back, read at the beginning or end of its days', () => {
    const counter = 'date,meter reading kWh\n2026-05-01,100\n2026-05-02,120\n2026-05-03,5\n2026-05-04,30\n'
    const of = (mapping: Production) =>
      seriesOf(counter, mapping).spans.map(({ startMs, kwh }) => `${iso(startMs).slice(0, 10)} ${kwh}`)
    expect(of({})).toEqual(['2026-05-02 20', '2026-05-04 25'])
    expect(of({ stamps_mark: 'beginning' })).toEqual(['2026-05-01 20', '2026-05-03 25'])
    expect(seriesOf(counter).findings[0]?.message).toBe(
      'the counter went back 1 time, first on line 4; what was made between the readings before and after is unknown and left out',
    )
    const months = 'month,meter reading kWh\n2026-01,100\n2026-02,500\n2026-03,1100\n'
    expect(seriesOf(months).spans.map(({ startMs, endMs }) => [iso(startMs), iso(endMs)])).toEqual([
      ['2026-02-01T00:00', '2026-03-01T00:00'],
      ['2026-03-01T00:00', '2026-04-01T00:00'],
    ])
    expect(seriesOf(months, { stamps_mark: 'beginning' }).spans.map(({ startMs }) => iso(startMs))).toEqual([
      '2026-01-01T00:00',
      '2026-02-01T00:00',
    ])
    const hourly = 'time,meter reading kWh\n2026-05-01 10:00,1\n2026-05-01 11:00,2\n2026-05-01 12:00,4\n'
    const spans = seriesOf(hourly, { stamps_mark: 'ending' }).spans
    expect(spans.map(({ startMs, kwh }) => `${iso(startMs)} ${kwh}`)).toEqual([
      '2026-05-01T10:00 1',
      '2026-05-01T11:00 2',
    ])
  })
})

describe('kinds of day that follow each other', () => {
  test('without correlation all are equally likely, exactly', () => {
    for (const row of kindTransitions(0)) expect(row).toEqual(Array.from({ length: 10 }, () => 0.1))
  })
  test('with it each row and column adds up to one, and like follows like', () => {
    const table = kindTransitions(0.29)
    for (const [at, row] of table.entries()) {
      expect(row.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 9)
      expect(table.reduce((sum, each) => sum + (each[at] ?? 0), 0)).toBeCloseTo(1, 9)
    }
    expect(table[0]?.[0] ?? 0).toBeGreaterThan(0.15)
    expect(table[0]?.[9] ?? 1).toBeLessThan(0.06)
    // By symmetry of the normal distribution.
    expect(table[0]?.[0]).toBeCloseTo(table[9]?.[9] ?? 0, 9)
    expect(table[2]?.[7]).toBeCloseTo(table[7]?.[2] ?? 0, 6)
  })
  test('over days they are forgotten', () => {
    const table = kindTransitions(0.29)
    const two = overDays(table, 2)
    const [first] = table
    const wanted = first?.reduce((sum, share, by) => sum + share * (table[by]?.[0] ?? 0), 0) ?? 0
    expect(two[0]?.[0]).toBeCloseTo(wanted, 12)
    expect(overDays(table, 1)).toEqual(table)
    for (const share of overDays(table, 12).flat()) expect(share).toBeCloseTo(0.1, 3)
  })
})
