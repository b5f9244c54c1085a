import { describe, expect, it } from 'vitest'
import { readUsage } from '../../src/money/index.js'
import type { IntervalCsv, Usage } from '../../src/project/index.js'
import { StageError } from '../../src/worksheet/index.js'

const shaped = { load_shape: 'even', year: 2025, daylight_saving: false } as const
const annual = (kwh: number) => readUsage({ annual_kwh: kwh, ...shaped }, {})
const monthly = (kwh: readonly number[]) => readUsage({ monthly_kwh: [...kwh], ...shaped }, {})
const mapping: IntervalCsv = {
  file: 'hours.csv',
  header_line: 1,
  stamp_columns: ['s'],
  stamp_format: 'unix_s',
  stamps_mark: 'beginning',
  clock: 'utc',
  unit: 'kwh',
  interval_min: 60,
  use_column: 'kWh',
}
const START = Date.parse('2025-01-01T00:00:00-05:00') / 1000
const table = (kwh: (hour: number) => number): string =>
  ['s,kWh', ...Array.from({ length: 8760 }, (_, h) => `${String(START + h * 3600)},${String(kwh(h))}`)].join('\n')
const metered = (kwh: (hour: number) => number, usage: Usage = {}) =>
  readUsage({ interval_csv: mapping, daylight_saving: true, ...usage }, { fileText: table(kwh), utcOffsetH: -5 })
const refusal = (run: () => unknown): StageError => {
  try {
    run()
  } catch (error) {
    if (error instanceof StageError) return error
  }
  throw new Error('accepted')
}
const warned = (result: ReturnType<typeof readUsage>) => result.findings.find(({ id }) => id === 'usage.implausible')

describe('use of a year that no house has', () => {
  it.each([7, 299, 150_001, 7_000_000])('%d kWh a year is refused in words with the limits', (kwh) => {
    const error = refusal(() => annual(kwh))
    expect(error.where).toBe('usage.annual_kwh')
    expect(error.message).toBe(`the house uses ${String(kwh)} kWh a year; a house uses 300 to 150000 kWh`)
    expect(error.fix).toContain('kWh, not Wh or MWh')
  })

  it('is refused from monthly totals and from a meter as well', () => {
    expect(refusal(() => monthly(Array.from({ length: 12 }, () => 0.7))).where).toBe('usage.monthly_kwh')
    expect(refusal(() => monthly(Array.from({ length: 12 }, () => 0))).where).toBe('usage.monthly_kwh')
    expect(refusal(() => monthly(Array.from({ length: 12 }, () => 60_000))).where).toBe('usage.monthly_kwh')
    // Watt-hours read as kWh.
    const error = refusal(() => metered((h) => 1000 + (h % 7)))
    expect(error.where).toBe('usage.interval_csv')
    expect(error.message).toMatch(/^the house uses 8786\d{3} kWh a year/u)
  })

  it.each([1000, 60_000])('%d kWh a year is taken with a warning that names its limits and their standing', (kwh) => {
    const told = warned(annual(kwh))
    expect(told).toMatchObject({ severity: 'warning', where: 'usage.annual_kwh' })
    expect(told?.message).toContain('1500 to 50000 kWh')
    expect(told?.source?.standing).toBe('common practice, no source')
  })

  it.each([1500, 9600, 50_000])('%d kWh a year is taken without a word', (kwh) => {
    expect(warned(annual(kwh))).toBeUndefined()
  })

  it('holds at both ends of what is refused', () => {
    expect(annual(300).values.values.annual_kwh).toBe(300)
    expect(annual(150_000).values.values.annual_kwh).toBe(150_000)
  })
})

describe('a month unlike the others', () => {
  const usual = [910, 760, 720, 640, 610, 780, 1050, 980, 720, 600, 690, 860]
  const odd = (month: number, kwh: number) =>
    monthly(usual.map((each, i) => (i === month - 1 ? kwh : each))).findings.find(
      ({ id }) => id === 'usage.month-unlike',
    )

  it('is told: a digit too many, a digit too few', () => {
    expect(odd(4, 6400)?.message).toContain('month 4 is 6400 kWh')
    expect(odd(7, 10)?.message).toContain('month 7 is 10 kWh')
    expect(odd(7, 10)).toMatchObject({ severity: 'warning', where: 'usage.monthly_kwh' })
  })

  it('is nothing in a house that is heated with electricity', () => {
    expect(
      monthly([1913, 1197, 1178, 819, 411, 363, 427, 425, 374, 566, 1010, 1315]).findings.map(({ id }) => id),
    ).toEqual(['usage.hours-estimated'])
  })
})

describe('an hour that no house has', () => {
  it('is told with its hour: more than 200 A at 240 V carry', () => {
    const told = metered((h) => (h === 4000 ? 900 : 1 + (h % 3) / 10)).findings.find(
      ({ id }) => id === 'usage.hour-implausible',
    )
    expect(told).toMatchObject({ severity: 'warning', where: 'usage.interval_csv' })
    expect(told?.message).toContain('900 kWh in one hour')
    expect(metered((h) => 1 + (h % 3) / 10).findings.map(({ id }) => id)).not.toContain('usage.hour-implausible')
  })
})

describe('a table of register readings', () => {
  it('is refused, as readings that never fall are no use of intervals', () => {
    const error = refusal(() => metered((h) => 41_200 + h))
    expect(error.message).toBe(
      'the readings never fall, from 41200 to 49959 kWh: they are those of a counting register, not the use of each interval',
    )
    expect(error.fix).toContain('difference')
  })

  it('is not seen where every reading is the same', () => {
    expect(metered(() => 1).values.values.annual_kwh).toBe(8760)
  })
})
