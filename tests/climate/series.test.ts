import { describe, expect, it } from 'vitest'
import { StageError } from '../../src/worksheet/index.js'
import {
  climateOf,
  GLOBAL_ONLY,
  HOUSE,
  rowsOf,
  SEATTLE,
  stationText,
  TABLE,
  yearSum,
  type Row,
} from './series-fixture.js'

const hours = rowsOf(2025)
const text = stationText(hours, 0.5)
const dni = yearSum(SEATTLE.dniWM2, 1)

/** The error of a file that is refused. */
const refused = (...args: Parameters<typeof climateOf>): StageError => {
  try {
    climateOf(...args)
  } catch (error) {
    if (error instanceof StageError) return error
    throw error
  }
  throw new Error('the file was taken')
}

describe('a station of hours', () => {
  const { climate, findings } = climateOf(text)

  it('is the year that it was made from, without a word', () => {
    expect(findings).toEqual([])
    expect([climate.length, climate.stepH, climate.middleH[0], climate.middleH[23]]).toEqual([8760, 1, 0.5, 23.5])
    // Direct light of a few hours in which the sun only just rises falls into the dark.
    expect(yearSum(climate.dniWM2, 1) / dni).toBeCloseTo(1, 3)
    expect(climate.decompositionRel).toBeUndefined()
    const noon = 180 * 24 + 12
    expect([climate.month[noon], climate.day[noon], climate.hour[noon]]).toEqual([6, 30, 13])
    expect(climate.dhiWM2[noon]).toBe(SEATTLE.dhiWM2[noon])
    expect(climate.windMs[noon]).toBe(SEATTLE.windMs[noon])
  })

  it.each([
    ['at the beginning of the hour', -0.5, { stamps_mark: 'beginning' }],
    ['as readings of the instant', 0, { stamps_mark: 'instant' }],
    ['in UTC', 8.5, { clock: 'utc' }],
  ] as const)('is the same when stamped %s', (_, moveH, more) => {
    const other = climateOf(stationText(hours, moveH), { ...TABLE, ...more })
    expect(other.findings).toEqual([])
    for (const key of ['dniWM2', 'dhiWM2', 'dryBulbC', 'middleH'] as const)
      expect(Array.from(other.climate[key])).toEqual(Array.from(climate[key]))
  })

  it('is the same by a clock with daylight saving, in beginning and ending stamps', () => {
    for (const mark of ['beginning', 'ending'] as const) {
      const moveH = mark === 'ending' ? 0.5 : -0.5
      // 9 March and 2 November 2025: the second Sunday and the first.
      const lines = hours.map((row) => {
        const isSummer =
          row.ms + moveH * 3_600_000 >= Date.UTC(2025, 2, 9, 2) && row.ms + moveH * 3_600_000 < Date.UTC(2025, 10, 2, 1)
        return stationText([{ ...row, ms: row.ms + (isSummer ? 3_600_000 : 0) }], moveH).split('\n')[1]
      })
      const table = { ...TABLE, clock: 'local', stamps_mark: mark } as const
      const other = climateOf(`time,ghi,dni,dhi,temp,wind\n${lines.join('\n')}\n`, table)
      expect(Array.from(other.climate.ghiWM2)).toEqual(Array.from(climate.ghiWM2))
      expect(other.findings).toEqual([])
    }
  })

  it.each([
    ['Wh/m2 of the hour', 1, 'wh_m2'],
    ['kWh/m2', 0.001, 'kwh_m2'],
    ['kJ/m2', 3.6, 'kj_m2'],
    ['MJ/m2', 0.0036, 'mj_m2'],
  ] as const)('reads %s', (_, factor, unit) => {
    const rows = hours.map((row) => ({
      ...row,
      ghi: Number(row.ghi) * factor,
      temp: Number(row.temp) * 1.8 + 32,
      wind: Number(row.wind) * 3.6,
    }))
    const columns = {
      global: { column: 'ghi', unit },
      direct: TABLE.columns.direct!,
      diffuse: TABLE.columns.diffuse!,
      air_temperature: { column: 'temp', unit: 'f' },
      wind: { column: 'wind', unit: 'km_h' },
    } as const
    const other = climateOf(stationText(rows, 0.5), { ...TABLE, columns })
    expect(yearSum(other.climate.ghiWM2, 1) / yearSum(climate.ghiWM2, 1)).toBeCloseTo(1, 9)
    expect(other.climate.dryBulbC[5000]).toBeCloseTo(climate.dryBulbC[5000]!, 9)
    expect(other.climate.windMs[5000]).toBeCloseTo(climate.windMs[5000]!, 9)
  })

  it('closes a year that begins in July to a ring', () => {
    const half = [...hours.slice(4344), ...rowsOf(2026).slice(0, 4344)]
    const other = climateOf(stationText(half, 0.5)).climate
    expect(Array.from(other.ghiWM2)).toEqual(Array.from(climate.ghiWM2))
  })

  it('names the 29 February of a leap year, or does without', () => {
    const leap = climateOf(stationText(rowsOf(2024), 0.5)).climate
    expect([leap.length, leap.dayOfYear[8783], leap.day[59 * 24], leap.month[59 * 24]]).toEqual([8784, 366, 29, 2])
    const without = rowsOf(2024).filter(({ ms }) => new Date(ms).toISOString().slice(5, 10) !== '02-29')
    expect(climateOf(stationText(without, 0.5)).climate.length).toBe(8760)
  })

  it('takes one year of several, and refuses several', () => {
    const two = stationText([...hours, ...rowsOf(2026)], 0.5)
    expect(refused(two).message).toContain(
      'line 8762: 1 Jan 00:30 2026 is the same moment of the year as 1 Jan 00:30 2025',
    )
    expect(Array.from(climateOf(two, TABLE, { year: 2026 }).climate.ghiWM2)).toEqual(Array.from(climate.ghiWM2))
    expect(refused(two, TABLE, { year: 2030 }).where).toBe('site.climate.year')
  })
})

describe('two of three radiations', () => {
  const three = climateOf(text).climate
  it.each(['global', 'direct', 'diffuse'] as const)('give the third: without %s', (key) => {
    const { [key]: _, ...columns } = TABLE.columns
    const { climate, ids } = climateOf(text, { ...TABLE, columns })
    expect(ids).toEqual(['climate.series-third-derived'])
    expect(yearSum(climate.ghiWM2, 1) / yearSum(three.ghiWM2, 1)).toBeCloseTo(1, 3)
    expect(yearSum(climate.dhiWM2, 1) / yearSum(three.dhiWM2, 1)).toBeCloseTo(1, 3)
    expect(yearSum(climate.dniWM2, 1) / yearSum(three.dniWM2, 1)).toBeCloseTo(1, 2)
    expect(climate.decompositionRel).toBeUndefined()
  })

  it('from global alone a correlation makes two, and it says what that is worth', () => {
    const { climate, ids, assumptions, findings } = climateOf(text, GLOBAL_ONLY)
    expect(ids).toEqual(['climate.series-split'])
    expect(findings[0]!.message).toMatch(/in 4\d{3} of 4\d{3} intervals of daylight .* 2 % .* 4 %/u)
    expect(climate.decompositionRel).toEqual({ southRel: 0.02, otherRel: 0.04 })
    expect(assumptions.map(({ path }) => path)).toEqual(['site.climate.decomposition', 'site.climate.wind'])
    expect(Array.from(climate.windMs).every((wind) => wind === 1)).toBe(true)
    expect(yearSum(climate.ghiWM2, 1) / yearSum(three.ghiWM2, 1)).toBeCloseTo(1, 9)
    expect(Math.abs(yearSum(climate.dhiWM2, 1) / yearSum(three.dhiWM2, 1) - 1)).toBeLessThan(0.1)
  })
})

describe('gaps', () => {
  const at = (month: number, day: number, hour: number): number =>
    (Date.UTC(2025, month - 1, day, hour) - Date.UTC(2025, 0, 1)) / 3_600_000
  const without = (from: number, count: number, keys: readonly (keyof Row)[] = ['ghi', 'dni', 'dhi']): string =>
    stationText(
      hours.map((row, index) =>
        index < from || index >= from + count ? row : { ...row, ...Object.fromEntries(keys.map((key) => [key, ''])) },
      ),
      0.5,
    )

  it('of two hours keep the clearness between their sides', () => {
    const from = at(7, 3, 11)
    const { climate, findings } = climateOf(without(from, 2))
    expect(findings.map(({ severity, id }) => [severity, id])).toEqual([['note', 'climate.series-gaps-filled']])
    expect(findings[0]!.message).toContain('1 gaps of up to 2 h by straight lines')
    expect(findings[0]!.message).toContain('2 h in all, first at 3 Jul 11:30, line 4405')
    const full = climateOf(text).climate
    const { ghiWM2: ghi } = climate
    expect(ghi[from]! + ghi[from + 1]!).toBeGreaterThan(ghi[from - 1]! + 0.5 * (ghi[from + 2]! - ghi[from - 1]!))
    expect(ghi[from - 1]).toBe(full.ghiWM2[from - 1])
    expect(climate.dniWM2[from]).toBeGreaterThan(0)
  })

  it('of days take the days beside them', () => {
    const from = at(7, 3, 0)
    const { climate, findings } = climateOf(without(from, 48))
    expect(findings.map(({ severity, id }) => [severity, id])).toEqual([['warning', 'climate.series-gaps-filled']])
    const day = (first: number): number => yearSum(climate.ghiWM2.subarray(first, first + 24), 1)
    expect(day(from) / ((day(from - 24) + day(from + 48)) / 2)).toBeCloseTo(1, 1)
    expect(climate.dhiWM2[from + 12]).toBeGreaterThan(0)
    expect(climate.dhiWM2[from + 12]).toBeLessThanOrEqual(climate.ghiWM2[from + 12]!)
  })

  it('of rows that are not there count as well', () => {
    const rows = hours.filter((_, index) => index < 4403 || index >= 4405)
    expect(climateOf(stationText(rows, 0.5)).findings[0]!.message).toContain('first at 3 Jul 11:30, no row')
  })

  it('of more than three days are refused with their place', () => {
    const error = refused(without(at(7, 3, 0), 96))
    expect(error.where).toBe('site.climate.file')
    expect(error.message).toMatch(/radiation is missing for 89 h from 3 Jul 04:30, line 4398 on, to 6 Jul 20:30/u)
  })

  it('at night are none', () => {
    expect(climateOf(without(at(1, 5, 20), 6)).findings).toEqual([])
  })

  it('of temperature and wind are filled and told', () => {
    const from = at(2, 10, 3)
    const short = climateOf(without(from, 4, ['temp']))
    expect(short.findings[0]!.message).toContain('4 filled by straight lines, 0 by the mean day')
    expect(short.climate.dryBulbC[from]).toBeCloseTo(
      SEATTLE.dryBulbC[from - 1]! + (SEATTLE.dryBulbC[from + 4]! - SEATTLE.dryBulbC[from - 1]!) / 5,
      9,
    )
    const long = climateOf(without(from, 12, ['temp', 'wind']))
    expect(long.findings[0]).toMatchObject({ severity: 'warning', id: 'climate.series-temperature-filled' })
    expect(Math.abs(long.climate.dryBulbC[from]! - 5)).toBeLessThan(3)
    expect(long.climate.windMs[from]).toBe(1)
    expect(long.assumptions[0]!.why).toContain('wind is missing in 12 of 8760 intervals (10 Feb 03:30, line 965')
    expect(refused(without(0, 8760, ['temp'])).message).toContain('air temperature is missing in 8760 intervals')
  })
})

describe('radiation that cannot be', () => {
  const changed = (change: (row: Row, index: number) => Partial<Row>): string =>
    stationText(
      hours.map((row, index) => ({ ...row, ...change(row, index) })),
      0.5,
    )
  const noon = (index: number): boolean => index % 24 === 12

  it('is taken as missing, and told with its first place', () => {
    const { climate, findings } = climateOf(changed((_, index) => (index === 4404 ? { ghi: 1900 } : {})))
    expect(findings.map(({ id }) => id)).toEqual(['climate.series-doubtful', 'climate.series-gaps-filled'])
    expect(findings[0]!.message).toMatch(/1 of 4\d{3} .*: 1 beyond what is physically possible .* first 3 Jul 12:30/u)
    expect(climate.ghiWM2[4404]).toBeLessThan(1000)
  })

  it('is a warning from 5 % on, and refused from 20 % on', () => {
    const some = climateOf(changed((row, index) => (noon(index) ? { dhi: Number(row.dhi) + 60 } : {})))
    const told = some.findings.find(({ id }) => id === 'climate.series-doubtful')!
    expect(told.severity).toBe('warning')
    expect(told.message).toMatch(/by month Dec 1\d %/u)
    const many = changed((row, index) => (index % 24 > 9 && index % 24 < 15 ? { dhi: Number(row.dhi) + 90 } : {}))
    expect(refused(many).message).toMatch(/fail a test: .*; at most 20\.0 % may fail/u)
  })

  it('as a number too large for any computer is refused in words', () => {
    const digits = '11.7976931348623157e30801'
    const { message } = refused(text.replace(/(?<=^.*\n.*?,)[^,]*/u, digits))
    expect(message).toContain(
      "line 2, column 18: '11.7976931348623157e' is too large a number, outside -500 to 10000 W/m2",
    )
    expect(message).not.toContain('Infinity')
  })

  it('at night is left out, negative light is 0', () => {
    const lamp = climateOf(changed((_, index) => (index === 2 ? { ghi: 25 } : {})))
    expect(lamp.ids).toEqual(['climate.series-night-light'])
    expect(lamp.climate.ghiWM2[2]).toBe(0)
    const offset = climateOf(changed((row) => (Number(row.ghi) === 0 ? { ghi: -4, dhi: -2 } : {})))
    expect(offset.ids).toEqual(['climate.series-negative'])
    expect(Math.min(...offset.climate.ghiWM2, ...offset.climate.dhiWM2)).toBe(0)
  })

  it('that stands still is told', () => {
    const still = climateOf(
      changed((_, index) => (index >= 4402 && index < 4406 ? { ghi: 333 } : {})),
      GLOBAL_ONLY,
    )
    expect(still.findings.find(({ id }) => id === 'climate.series-doubtful')!.message).toContain(
      '4 the same value for 3 h and more (kept), first 3 Jul 10:30',
    )
  })

  it('in a wrong unit is named by its year, and refused', () => {
    expect(refused(changed((row) => ({ ghi: Number(row.ghi) * 3.6 }))).message).toContain(
      '3.6 times that of SEATTLE SEATTLE-TACOMA INTL A, WA',
    )
    expect(refused(changed((row) => ({ ghi: Number(row.ghi) * 0.5 }))).message).toContain('energy of half an hour')
    const dim = climateOf(
      changed((row) => ({ ghi: Number(row.ghi) * 0.7 })),
      GLOBAL_ONLY,
    )
    expect(dim.ids).toContain('climate.year-sum')
    expect(dim.findings.find(({ id }) => id === 'climate.month-sums')!.message).toContain('Jul 0.69, Aug 0.70')
    const far = { ...HOUSE, latitudeDeg: 44.5, longitudeDeg: -150 }
    expect(climateOf(text, GLOBAL_ONLY, { clock_shift_h: 0 }, { ...far, utcOffsetH: -10 }).ids).toContain(
      'climate.sums-unchecked',
    )
  })
})
