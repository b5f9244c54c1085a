import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import {
  productionLimits,
  readProduction,
  reviewProduction,
  weatherOfDays,
  type ReviewValues,
} from '../../src/fieldwork/index.js'
import type { StationTable } from '../../src/project/index.js'
import type { Result } from '../../src/worksheet/index.js'
import { runYield } from '../../src/yield/index.js'
import { files, project } from './synthetic.js'

/** The public typical year of Seattle as if its hours were of one year, and as the table of a station of a part of it. */
const epw = readFileSync('examples/weather/USA_WA_Seattle-Tacoma.Intl.AP.727930_TMY3.epw', 'utf8')
const rows = epw
  .split('\n')
  .slice(8)
  .filter((line) => line.trim() !== '')
  .map((line) => line.split(','))
const table: StationTable = {
  stamp_columns: ['time'],
  stamp_format: 'YYYY-MM-DD HH:mm',
  stamps_mark: 'beginning',
  clock: 'standard',
  header_line: 1,
  columns: {
    global: { column: 'ghi', unit: 'w_m2' },
    direct: { column: 'dni', unit: 'w_m2' },
    diffuse: { column: 'dhi', unit: 'w_m2' },
    air_temperature: { column: 'temp', unit: 'c' },
    wind: { column: 'wind', unit: 'm_s' },
  },
}
const two = (text: string | number): string => String(text).padStart(2, '0')
function stationOf(months: readonly number[], isWarm: (month: number) => boolean = () => true): string {
  const lines = rows
    .filter((cells) => months.includes(Number(cells[1])))
    .map((cells) => {
      const [, month = '', day = '', hour = ''] = cells
      const stamp = `2025-${two(month)}-${two(day)} ${two(Number(hour) - 1)}:00`
      return [stamp, cells[13], cells[14], cells[15], isWarm(Number(month)) ? cells[6] : '', cells[21]].join(',')
    })
  return `time,ghi,dni,dhi,temp,wind\n${lines.join('\n')}\n`
}

const seattle = { ...project, site: { latitude_deg: 47.45, longitude_deg: -122.3, utc_offset_h: -8, elevation_m: 122 } }
const long = runYield(seattle, files)
/** What the plant gives in this weather, day by day, from the whole year. */
const actual = weatherOfDays(
  seattle,
  'w',
  stationOf([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]),
  seriesOf(() => 1, 365),
  table,
)
function seriesOf(kwhOf: (day: number) => number, count: number) {
  const first = Date.UTC(2025, 0, 1) / 86_400_000
  const lines = Array.from({ length: count }, (_, at) => {
    const day = new Date((first + at) * 86_400_000).toISOString().slice(0, 10)
    return `${day},${kwhOf(first + at).toFixed(4)}`
  })
  const read = readProduction('p.csv', `date,kWh\n${lines.join('\n')}\n`, {}, productionLimits(seattle, long))
  if (read.series === undefined) throw new Error(read.problems[0]?.message)
  return read.series
}
function review(months: readonly number[], left: (day: number) => number = () => 1): Result<ReviewValues> {
  const series = seriesOf((day) => left(day) * (actual.kwhByDay.get(day) ?? 0), 365)
  const weather = weatherOfDays(seattle, 'w', stationOf(months), series, table)
  return reviewProduction({ project: seattle, run: long, series, weather, calibrate: true })
}

describe('weather of a part of the measured days', () => {
  it('of April to June models exactly what the whole year models of these days', () => {
    const series = seriesOf(() => 1, 365)
    const part = weatherOfDays(seattle, 'w', stationOf([4, 5, 6]), series, table)
    expect(part.kwhByDay.size).toBe(30 + 31 + 30)
    for (const [day, kwh] of part.kwhByDay) expect(kwh).toBeCloseTo(actual.kwhByDay.get(day) as number, 1)
  })
  it('judges the covered days by it and the others by day types, and says how many of each', () => {
    const { values, findings } = review([4, 5, 6, 7, 8, 9])
    expect(values.basis).toBe('weather_of_some_days')
    expect(values.period).toMatchObject({ days_counted: 365, days_by_weather: 183 })
    expect(findings.find(({ id }) => id === 'output.weather-of-some-days')?.message).toMatch(
      /183 of 365 days .* other 182 by the long-term/,
    )
    expect(values.signs).toEqual([])
    // Modelled months have no luck of the weather, the others have.
    const [january, may] = [values.months[0]!, values.months[4]!]
    expect(may.weather_p90_kwh - may.weather_p10_kwh).toBeLessThan(0.001 * may.mean_kwh)
    expect(january.weather_p90_kwh - january.weather_p10_kwh).toBeGreaterThan(0.1 * january.mean_kwh)
    expect(may.mean_kwh).toBeCloseTo(may.measured_kwh, 0)
    expect(values.expected.mean_kwh).toBeCloseTo(
      values.months.reduce((sum, { mean_kwh: kwh }) => sum + kwh, 0),
      3,
    )
  })
  it('leaves the less to the luck of the weather, the more days it covers', () => {
    const width = (months: readonly number[]): number => {
      const { expected } = review(months).values
      return (expected.weather_p90_kwh - expected.weather_p10_kwh) / expected.mean_kwh
    }
    const [none, some, all] = [width([1]), width([4, 5, 6, 7, 8, 9]), width([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])]
    expect(some).toBeLessThan(none)
    expect(all).toBeLessThan(some)
  })
  it('finds a small fall in covered days that day types would not tell from a dull season', () => {
    const june = Date.UTC(2025, 5, 1) / 86_400_000
    const left = (day: number): number => (day >= june && day < june + 60 ? 0.8 : 1)
    const found = (months: readonly number[]) => review(months, left).values.signs.map(({ kind }) => kind)
    expect(found([4, 5, 6, 7, 8, 9])).toContain('level_drop')
    expect(found([1])).not.toContain('level_drop')
  })
  it('is refused where light was measured and no air temperature in that month', () => {
    const series = seriesOf(() => 1, 365)
    const text = stationOf([4, 5, 6], (month) => month !== 5)
    expect(() => weatherOfDays(seattle, 'w', text, series, table)).toThrow(
      /air temperature is missing in 744 intervals/,
    )
  })
  it('of a few months may be dull, but not as dull as a slip of the unit makes it', () => {
    const series = seriesOf(() => 1, 365)
    const dulled = (months: readonly number[], share: number): string =>
      stationOf(months)
        .split('\n')
        .map((line, at) => {
          const [stamp = '', ...cells] = line.split(',')
          const light = cells.slice(0, 3).map((cell) => (Number(cell) * share).toFixed(1))
          return at === 0 || line === '' ? line : [stamp, ...light, ...cells.slice(3)].join(',')
        })
        .join('\n')
    const sizeOf = (months: readonly number[], share: number): number =>
      weatherOfDays(seattle, 'w', dulled(months, share), series, table).kwhByDay.size
    expect(sizeOf([6], 0.55)).toBe(30)
    expect(() => sizeOf([6], 0.4)).toThrow(/what it has of the year \(1 months\)/)
    expect(() => sizeOf([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12], 0.55)).toThrow(/a year of its global radiation/)
  })
})
