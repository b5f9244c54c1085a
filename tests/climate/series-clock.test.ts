import { describe, expect, it } from 'vitest'
import { hourlyClimate, type HourlyClimate } from '../../src/climate/index.js'
import { StageError, Worksheet } from '../../src/worksheet/index.js'
import { SEATTLE_EPW } from './epw-fixture.js'
import { climateOf, GLOBAL_ONLY, HOUSE, rowsOf, stationText, TABLE } from './series-fixture.js'

const hours = rowsOf(2025)
const quarters = rowsOf(2025, 15)

const refused = (...args: Parameters<typeof climateOf>): StageError => {
  try {
    climateOf(...args)
  } catch (error) {
    if (error instanceof StageError) return error
    throw error
  }
  throw new Error('the file was taken')
}

/** Middle of the quarter of an hour with the most light of a day, h. */
function brightestH({ ghiWM2, middleH }: HourlyClimate, day: number): number {
  const light = ghiWM2.subarray(96 * day, 96 * day + 96)
  return middleH[96 * day + light.indexOf(Math.max(...light))]!
}

describe('the clock of a series', () => {
  it('is told from a tenth of an hour on, and used as it stands', () => {
    const { findings, climate } = climateOf(stationText(hours, 0.5 - 0.2), { ...TABLE, stamps_mark: 'ending' })
    expect(findings[0]).toMatchObject({ severity: 'warning', id: 'climate.clock-shift' })
    expect(findings[0]!.message).toContain('0.20 h too early: with +0.20 h added')
    expect(climate.middleH[0]).toBeCloseTo(0.3, 9)
  })

  it('half an hour off is not used without a word of the person', () => {
    const wrong = { ...TABLE, stamps_mark: 'instant' } as const
    const error = refused(stationText(hours, 0.5), wrong)
    expect(error.where).toBe('site.climate.file')
    expect(error.message).toMatch(/0\.50 h too late: with -0\.50 h added .*not used without your word/u)
    expect(climateOf(stationText(hours, 0.5), wrong, { clock_shift_h: 0 }).ids).toContain('climate.clock-moved')
    for (const asked of ['auto', -0.5] as const) {
      const { climate, findings } = climateOf(stationText(hours, 0.5), wrong, { clock_shift_h: asked })
      expect(climate.middleH[12]).toBeCloseTo(11.5, 9)
      expect(findings.find(({ id }) => id === 'climate.clock-moved')!.message).toContain('moved by -0.50 h')
    }
  })

  it('shows by the symmetry of clear days where there is global radiation only', () => {
    const right = climateOf(stationText(quarters, 0.125), GLOBAL_ONLY)
    expect(Math.abs(Number(right.steps.find(({ id }) => id === 'climate.clock')!.result.value))).toBeLessThan(0.1)
    const error = refused(stationText(quarters, 1.125), GLOBAL_ONLY)
    expect(error.message).toMatch(/(?:0\.9|1\.0)\d h too late/u)
    const mended = climateOf(stationText(quarters, 1.125), GLOBAL_ONLY, { clock_shift_h: 'auto' })
    // The stamps are an hour late: what they call 12:37 is 11:37, and the brightest quarter of a day is where it was.
    expect(Math.abs(mended.climate.middleH[50]! - 11.625)).toBeLessThan(0.1)
    expect(Math.abs(brightestH(mended.climate, 100) - brightestH(right.climate, 100))).toBeLessThan(0.1)
    const { message } = mended.findings.find(({ id }) => id === 'climate.clock-moved')!
    expect(message).toMatch(/moved by -(?:0\.9|1\.0)\d h/u)
  })

  it('with daylight saving is named, not mended by one shift', () => {
    const rows = hours.map((row) => {
      const month = new Date(row.ms).getUTCMonth() + 1
      return month >= 4 && month <= 10 ? { ...row, ms: row.ms + 3_600_000 } : row
    })
    // What the clock shows twice on 1 November is left out, as a logger without memory does.
    const seen = new Set<number>()
    const once = rows.filter(({ ms }) => !seen.has(ms) && seen.add(ms))
    for (const more of [{}, { clock_shift_h: 'auto' }] as const)
      expect(refused(stationText(once, 0.5), TABLE, more).message).toContain('keeps daylight saving time')
  })

  it('of an EPW is moved on request', () => {
    const run = (asked?: number | 'auto') => {
      const worksheet = new Worksheet()
      const climate = hourlyClimate(SEATTLE_EPW, HOUSE, worksheet, asked, 'site.climate.file')
      return { climate, findings: worksheet.result({}).findings }
    }
    expect(run().findings).toEqual([])
    expect(run('auto').climate.middleH[0]).toBe(0.5)
    const moved = run(0.5)
    expect(moved.climate.middleH[0]).toBe(1)
    expect(moved.findings.map(({ id }) => id).toSorted()).toEqual(['climate.clock-moved', 'climate.clock-shift'])
    expect(moved.findings.find(({ id }) => id === 'climate.clock-shift')).toMatchObject({ where: 'site.climate.file' })
  })
})

describe('a broken file', () => {
  const lines = stationText(hours, 0.5).trimEnd().split('\n')
  const withLine = (at: number, change: (line: string) => string | undefined): string =>
    lines.flatMap((line, index) => (index === at - 1 ? (change(line) ?? []) : [line])).join('\n')

  it.each([
    ['a stamp that repeats', withLine(102, () => lines[100]!), /line 102: the stamp of .* repeats that of line 101/u],
    [
      'a stamp that goes back',
      [...lines.slice(0, 100), lines[110]!, lines[105]!, ...lines.slice(120)].join('\n'),
      /line 102: .* time goes back/u,
    ],
    ['a row more than a year', `${lines.join('\n')}\n2026-01-01 01:00,0,0,0,5,1`, /line 8762: .* more than one year/u],
    ['two lengths of interval', withLine(300, (line) => line.replace(':00,', ':20,')), /line 300: .* even 60 min/u],
    [
      'a text for a number',
      withLine(300, (line) => line.replace(/,[^,]*$/u, ',calm')),
      /line 300, column \d+: 'calm' is no/u,
    ],
    ['a number that cannot be', withLine(300, (line) => line.replace(/,[^,]*$/u, ',-9999')), /'-9999' is -9999 m\/s/u],
    [
      'a row with too few cells',
      withLine(300, (line) => line.replace(/,[^,]*$/u, '')),
      /line 300, column \d+: the row has 5/u,
    ],
    [
      'a stamp of another pattern',
      withLine(300, (line) => `01/02/2025${line.slice(10)}`),
      /line 300, column 1: .*stamp_format/u,
    ],
    [
      'rows a minute apart',
      `${lines[0]!}\n${Array.from({ length: 50 }, (_, m) => `2025-01-01 00:${String(m).padStart(2, '0')},0,0,0,1,1`).join('\n')}`,
      /are 1 min apart/u,
    ],
    [
      'a row a day',
      `${lines[0]!}\n${Array.from({ length: 28 }, (_, d) => `2025-01-${String(d + 1).padStart(2, '0')} 00:00,0,0,0,1,1`).join('\n')}`,
      /are 1440 min apart/u,
    ],
    // The first two lines as the network's README and a file of it have them (read).
    [
      'a day of a network',
      ' Table Mountain\n   40.125 -105.237 1689 m version 1\n 2017   5  1  5 17  0 17.000  69.25   200.7 0',
      /line 1: this is a daily file of minutes of the US surface radiation network, which holds one day/u,
    ],
    [
      'a month of another network',
      '*C0001\n  1  1 2020  1\n',
      /line 1: this is a monthly file of minutes of the baseline surface radiation network, which holds one month/u,
    ],
  ])('with %s', (_, text, message) => {
    const error = refused(text)
    expect(error.where).toBe('site.climate.file')
    expect(error.message).toMatch(message)
    expect(error.fix).not.toBe('')
  })

  it('lacks a column, or is of another kind', () => {
    const table = { ...TABLE, columns: { ...TABLE.columns, wind: { column: 'gust', unit: 'kn' } } } as const
    const lost = refused(lines.join('\n'), table)
    expect(lost.where).toBe('site.climate.table.columns.wind.column')
    expect(lost.fix).toContain("'time', 'ghi', 'dni', 'dhi', 'temp', 'wind'")
    for (const kind of ['tmy3_csv', 'us_solar_database_csv'] as const) {
      expect(refused(SEATTLE_EPW, TABLE, { kind }).message).toContain('begins as epw does')
      expect(refused(lines.join('\n'), TABLE, { kind }).message).toMatch(/line [12]/u)
    }
    expect(refused('', TABLE).message).toContain('no column names')
  })
})

describe('a year of the solar radiation database', () => {
  const head = (zone: number): string =>
    `Source,Location ID,Latitude,Longitude,Time Zone,Elevation,Local Time Zone,GHI Units,Temperature Units\nMade up,77,47.47,-122.32,${zone},122,-8,w/m2,c\nYear,Month,Day,Hour,Minute,DHI,DNI,GHI,Temperature,Wind Speed\n`
  const body = (hoursLater: number): string =>
    rowsOf(2025, 30)
      .map(({ ms, ghi, dni, dhi, temp, wind }) => {
        const at = new Date(ms + hoursLater * 3_600_000)
        const time = [at.getUTCFullYear(), at.getUTCMonth() + 1, at.getUTCDate(), at.getUTCHours(), at.getUTCMinutes()]
        return [...time, dhi, dni, ghi, temp, wind].join(',')
      })
      .join('\n')

  it('integrates half hours as half hours, local or UTC', () => {
    const kind = 'us_solar_database_csv'
    const local = climateOf(head(-8) + body(0), TABLE, { kind })
    expect(local.findings).toEqual([])
    expect([local.climate.name, local.climate.stepH, local.climate.length]).toEqual(['Made up 77', 0.5, 17_520])
    const utc = climateOf(head(0) + body(8), TABLE, { kind })
    expect(Array.from(utc.climate.dniWM2)).toEqual(Array.from(local.climate.dniWM2))
    expect(refused(head(0).replace('w/m2', 'kj/m2') + body(8), TABLE, { kind }).message).toContain(
      "GHI Units is 'kj/m2'",
    )
    expect(refused(head(-8).replace('Minute', 'Min') + body(0), TABLE, { kind }).message).toContain('no column Minute')
  })
})
