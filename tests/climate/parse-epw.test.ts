import { describe, expect, it } from 'vitest'
import { hourlyClimate, monthlyFromHourly, parseEpw } from '../../src/climate/index.js'
import { StageError, Worksheet } from '../../src/worksheet/index.js'
import { SEATTLE_EPW, seattleLines, setField, withColumn, withFields } from './epw-fixture.js'

/** The error for a file that must be refused; it blames the file and says what to do. */
function refusal(text: string): StageError {
  try {
    parseEpw(text)
  } catch (error) {
    if (error instanceof StageError && error.where === 'site.climate.epw' && error.fix !== '') return error
    throw error
  }
  throw new Error('was not refused')
}
const [GHI, DNI, DHI, TEMPERATURE, WIND, SNOW] = [13, 14, 15, 6, 21, 30] as const

describe('parseEpw reads', () => {
  const plain = parseEpw(SEATTLE_EPW)

  it('the same with either line ending, a byte order mark, and empty lines at the end', () => {
    const unix = seattleLines().join('\n')
    for (const text of [
      unix,
      `${unix}\n`,
      unix.replaceAll('\n', '\r\n'),
      `\uFEFF${unix}\n\n`,
      `\u00EF\u00BB\u00BF${unix}\r\n`,
    ]) {
      expect(parseEpw(text)).toEqual(plain)
    }
  })

  it('a whole file without findings', () => {
    expect(plain.findings).toEqual([])
    expect(plain.assumptions).toEqual([])
    expect(plain.climate.length).toBe(8760)
    for (const key of ['ghiWM2', 'dniWM2', 'dhiWM2', 'dryBulbC', 'windMs', 'snowDepthCm'] as const) {
      expect(plain.climate[key].every(Number.isFinite)).toBe(true)
    }
  })

  it.each([
    ['-12.75', -12.75],
    [' 5.0 ', 5],
    ['+.5', 0.5],
    ['1.2E1', 12],
    ['7.', 7],
    ['0.1000000000000000055', 0.1],
  ])('the number %s', (text, value) => {
    expect(parseEpw(withFields([9, TEMPERATURE, text])).climate.dryBulbC[0]).toBe(value)
  })

  it('every number of the file as Number() does', () => {
    const lines = seattleLines()
    for (let row = 0; row < 8760; row++) {
      const fields = lines[row + 8]!.split(',')
      expect(plain.climate.dryBulbC[row]).toBe(Number(fields[TEMPERATURE]))
      expect(plain.climate.windMs[row]).toBe(Number(fields[WIND]))
      expect(plain.climate.dniWM2[row]).toBe(Number(fields[DNI]))
    }
  })

  it('a leap year of 8784 hours', () => {
    const lines = seattleLines()
    const leapDay = lines.slice(8 + 58 * 24, 8 + 59 * 24).map((line) => line.replace(/^(\d+),2,28,/, '$1,2,29,'))
    lines.splice(8 + 59 * 24, 0, ...leapDay)
    const { climate } = parseEpw(lines.join('\n'))
    expect(climate.length).toBe(8784)
    expect([climate.month[59 * 24], climate.day[59 * 24], climate.dayOfYear[59 * 24]]).toEqual([2, 29, 60])
    expect(climate.dayOfYear[8783]).toBe(366)
    expect(monthlyFromHourly(climate).ghiWhM2Day.every(Number.isFinite)).toBe(true)
  })

  it('rows without the last three columns, when all are so', () => {
    const lines = seattleLines().map((line, index) => (index < 8 ? line : line.split(',').slice(0, 32).join(',')))
    expect(parseEpw(lines.join('\n')).climate).toEqual(plain.climate)
  })

  it('years that jump from month to month', () => {
    expect(parseEpw(withFields([500, 0, '1955'])).climate).toEqual(plain.climate)
  })
})

describe('parseEpw refuses, with line and column,', () => {
  const last = 8768
  it.each<[string, () => string, RegExp]>([
    ['a text that is no EPW', () => 'month,ghi\n1,2\n', /line 1, column 1: found 'MONTH'/],
    ['an empty text', () => '', /DATA PERIODS/],
    [
      'a file without DATA PERIODS',
      () =>
        seattleLines()
          .filter((line) => !line.startsWith('DATA P'))
          .join('\n'),
      /no DATA PERIODS/,
    ],
    ['a latitude that is no number', () => withFields([1, 6, 'north']), /line 1, column 7: latitude must be .*'north'/],
    ['an empty longitude', () => withFields([1, 7, '']), /line 1, column 8: longitude/],
    ['two records per hour', () => withFields([8, 2, '2']), /line 8, column 3: 2 records per hour, need 1/],
    ['two data periods', () => withFields([8, 1, '2']), /line 8, column 2: 2 data periods/],
    [
      'a missing hour',
      () => seattleLines().toSpliced(100, 1).join('\n'),
      /line 101, column 4: month 1, day 4, hour 22 found where .*hour 21/,
    ],
    ['a repeated hour', () => seattleLines().toSpliced(100, 0, seattleLines()[99]!).join('\n'), /line 101, column 4/],
    ['hours 0 to 23', () => withFields([9, 3, '0']), /line 9, column 4: month 1, day 1, hour 0 found/],
    ['a month out of order', () => withFields([900, 1, '7']), /line 900, column 2/],
    [
      'a file that ends early',
      () => seattleLines().slice(0, -1).join('\n'),
      /line 8767: the file ends after 8759 hours/,
    ],
    ['a file of header only', () => seattleLines().slice(0, 8).join('\n'), /ends after 0 hours/],
    [
      'hours after the year',
      () => [...seattleLines(), seattleLines()[8]!].join('\n'),
      /line 8769: hours go on after 31 December/,
    ],
    ['a row that was cut off', () => SEATTLE_EPW.slice(0, -60), /line 8768: \d+ columns/],
    ['a row with a column too many', () => withFields([300, 20, '1,2']), /line 300: 36 columns/],
    [
      'rows with fewer columns than before',
      () => withFields([300, 34, '']).replace(/,\n/, '\n'),
      /line 300: 34 columns, the rows before have 35/,
    ],
    ['an empty line among the hours', () => seattleLines().toSpliced(50, 0, '').join('\n'), /line 51: empty line/],
    [
      'radiation that is no number',
      () => withFields([last, GHI, 'abc']),
      /line 8768, column 14: global horizontal radiation 'abc' is no number/,
    ],
    ['hexadecimal', () => withFields([20, DNI, '0x10']), /line 20, column 15: .*no number/],
    [
      'negative radiation',
      () => withFields([21, DHI, '-3']),
      /line 21, column 16: diffuse horizontal radiation -3 Wh\/m2 is outside 0/,
    ],
    [
      'radiation in another unit',
      () => withFields([22, GHI, '3600']),
      /line 22, column 14: .*3600 Wh\/m2 is outside 0 to 1500/,
    ],
    ['an impossible temperature', () => withFields([23, TEMPERATURE, '-80']), /line 23, column 7/],
    ['negative wind', () => withFields([24, WIND, '-1']), /line 24, column 22/],
    ['wind that is no number', () => withFields([24, WIND, 'calm']), /line 24, column 22: wind speed 'calm'/],
    ['negative snow', () => withFields([25, SNOW, '-4']), /line 25, column 31/],
  ])('%s', (_, text, message) => {
    expect(refusal(text()).message).toMatch(message)
  })
})

describe('missing codes of the EPW data dictionary', () => {
  it.each([
    ['global horizontal radiation', GHI, '9999'],
    ['direct normal radiation', DNI, '9999'],
    ['diffuse horizontal radiation', DHI, '9999'],
    ['dry-bulb temperature', TEMPERATURE, '99.9'],
    ['global horizontal radiation', GHI, ''],
    ['dry-bulb temperature', TEMPERATURE, ''],
  ])('refuse a file without %s (column %d, %s) and name the hours', (name, column, code) => {
    const { message } = refusal(withFields([9, column, code], [21, column, code]))
    expect(message).toContain(`${name} is missing in 2 of 8760 hours (1 Jan 01:00, line 9; 1 Jan 13:00, line 21)`)
  })

  it('name the first few hours, the count, and each quantity at once', () => {
    const lines = seattleLines()
    for (let line = 100; line < 140; line++) setField(lines, line, GHI, '9999')
    setField(lines, 500, TEMPERATURE, '99.9')
    const { message } = refusal(lines.join('\n'))
    expect(message).toContain('missing in 40 of 8760 hours')
    expect(message).toContain('line 104; ...)')
    expect(message).not.toContain('line 105')
    expect(message).toContain('dry-bulb temperature is missing in 1 of')
  })

  it('fill wind between the hours around and say so', () => {
    const { climate, findings } = parseEpw(
      withFields([12, WIND, '2'], [13, WIND, '999'], [14, WIND, '999'], [15, WIND, '5']),
    )
    expect(Array.from(climate.windMs.subarray(3, 7))).toEqual([2, 3, 4, 5])
    expect(findings).toHaveLength(1)
    expect(findings[0]).toMatchObject({ severity: 'warning', id: 'climate.epw-wind-missing' })
    expect(findings[0]!.message).toContain('missing in 2 of 8760 hours')
  })

  it('fill wind across the end of the year', () => {
    const { climate } = parseEpw(withFields([8768, WIND, '999'], [9, WIND, ''], [8767, WIND, '1'], [10, WIND, '4']))
    expect(climate.windMs[8759]).toBeCloseTo(2, 12)
    expect(climate.windMs[0]).toBeCloseTo(3, 12)
  })

  it('assume a light wind when there is none at all', () => {
    const { climate, assumptions, findings } = parseEpw(withColumn(WIND, () => '999'))
    expect(climate.windMs.every((wind) => wind === 1)).toBe(true)
    expect(assumptions).toHaveLength(1)
    expect(assumptions[0]).toMatchObject({ value: 1, unit: 'm/s' })
    expect(findings.map((one) => one.id)).toEqual(['climate.epw-wind-missing'])
  })

  it('mark unknown snow depth with -1', () => {
    const { climate, findings } = parseEpw(withFields([9, SNOW, '999'], [10, SNOW, ''], [11, SNOW, '12']))
    expect(Array.from(climate.snowDepthCm.subarray(0, 4))).toEqual([-1, -1, 12, 0])
    expect(findings.map((one) => one.id)).toEqual(['climate.epw-snow-missing'])
  })

  it('take snow depth as unknown when it is 0 all through a year with a frosty month', () => {
    const cold = withColumn(TEMPERATURE, (row) => (row < 744 ? '-8' : '10'))
    const { climate, findings } = parseEpw(cold)
    expect(climate.snowDepthCm.every((depth) => depth === -1)).toBe(true)
    expect(findings.map((one) => one.id)).toEqual(['climate.epw-snow-unknown'])
  })
})

const ids = (text: string, house: Parameters<typeof hourlyClimate>[1]): string[] => {
  const worksheet = new Worksheet()
  hourlyClimate(text, house, worksheet)
  return worksheet.result(0).findings.map((finding) => finding.id)
}

describe('hourlyClimate', () => {
  const seattle = { latitudeDeg: 47.6, longitudeDeg: -122.3, elevationM: 50, utcOffsetH: -8 }

  it('is content with a file for the place', () => {
    expect(ids(SEATTLE_EPW, seattle)).toEqual([])
  })
  it('warns about a far place, a high place, another clock, a clock far from the sun', () => {
    expect(ids(SEATTLE_EPW, { ...seattle, latitudeDeg: 45.5 })).toEqual(['climate.epw-far'])
    expect(ids(SEATTLE_EPW, { ...seattle, elevationM: 900 })).toEqual(['climate.epw-height'])
    expect(ids(SEATTLE_EPW, { ...seattle, utcOffsetH: -7 })).toEqual(['climate.epw-utc-offset'])
    expect(ids(withFields([1, 8, '-5.9']), seattle)).toContain('climate.epw-clock')
  })
  it('hands the gaps of the file on', () => {
    expect(ids(withFields([9, WIND, '999']), seattle)).toEqual(['climate.epw-wind-missing'])
  })
})
