import { describe, expect, it } from 'vitest'
import { readGreenButton, readUsage } from '../../src/money/index.js'
import type { IntervalCsv, Usage } from '../../src/project/index.js'
import { total } from './hours.js'

const EST = -5
const ids = (result: { findings: readonly { id: string }[] }): string[] => result.findings.map((finding) => finding.id)
function refusal(run: () => unknown): string {
  try {
    run()
  } catch (error) {
    return error instanceof Error ? error.message : ''
  }
  return 'accepted'
}

interface Hour {
  readonly utc: number
  readonly kwh: number
}
/** Hours from a UTC instant on; the k-th uses 1 + (k mod 7) / 10 kWh. */
function hours(from: string, count: number): Hour[] {
  const start = Date.parse(from) / 1000
  return Array.from({ length: count }, (_, k) => ({ utc: start + k * 3600, kwh: Math.round(10 + (k % 7)) / 10 }))
}
const year = hours('2025-01-01T00:00:00-05:00', 8760)

/** Runs of hours that follow each other: one block each, whose readings need no time of their own. */
function runsOf(readings: readonly Hour[]): Hour[][] {
  const runs: Hour[][] = []
  for (const reading of readings) {
    const last = runs.at(-1)
    if (last?.at(-1)?.utc === reading.utc - 3600) last.push(reading)
    else runs.push([reading])
  }
  return runs
}

function espi(
  readings: readonly Hour[],
  type: { uom?: number; power?: number; flow?: number; extra?: string } = {},
): string {
  const { uom = 72, power = 0, flow = 1, extra = '' } = type
  const value = ({ kwh }: Hour): string =>
    `<espi:IntervalReading><espi:value>${String(Math.round(kwh * 1000 * 10 ** -power))}</espi:value></espi:IntervalReading>`
  const blocks = runsOf(readings)
    .map(
      (run) =>
        `<espi:IntervalBlock><espi:interval><espi:start>${String(run[0]!.utc)}</espi:start></espi:interval>${run.map(value).join('')}</espi:IntervalBlock>`,
    )
    .join('')
  return `<?xml version="1.0"?><feed xmlns="http://www.w3.org/2005/Atom" xmlns:espi="http://naesb.org/espi">
<entry><link rel="self" href="/U/1"/><title>12 Lark Hollow &amp; Co</title><content><espi:UsagePoint><espi:ServiceCategory><espi:kind>0</espi:kind></espi:ServiceCategory></espi:UsagePoint></content></entry>
<entry><link rel="self" href="/L/1"/><content><espi:LocalTimeParameters><espi:dstEndRule>B40E2000</espi:dstEndRule><espi:dstOffset>3600</espi:dstOffset><espi:dstStartRule>360E2000</espi:dstStartRule><espi:tzOffset>-18000</espi:tzOffset></espi:LocalTimeParameters></content></entry>
<entry><link rel="self" href="/U/1/M/1"/><link rel="related" href="/U/1/M/1/B"/><link rel="related" href="/R/1"/><content><espi:MeterReading/></content></entry>
<entry><link rel="self" href="/U/1/M/1/B/1"/><link rel="up" href="/U/1/M/1/B"/><content>${blocks}</content></entry>
<entry><link rel="self" href="/R/1"/><content><espi:ReadingType><espi:accumulationBehaviour>4</espi:accumulationBehaviour><espi:flowDirection>${String(flow)}</espi:flowDirection><espi:intervalLength>3600</espi:intervalLength><espi:powerOfTenMultiplier>${String(power)}</espi:powerOfTenMultiplier><espi:uom>${String(uom)}</espi:uom></espi:ReadingType></content></entry>
${extra}</feed>`
}
const greenButton = (xml: string, usage: Usage = {}) =>
  readUsage({ green_button: 'meter.xml', ...usage }, { fileText: xml, utcOffsetH: EST })

describe('Green Button', () => {
  it('lays a year out in hours of standard time, without names', () => {
    const result = greenButton(espi(year))
    const { usageKwh, values, calendar } = result.values
    expect([...usageKwh]).toEqual(year.map((hour) => hour.kwh))
    expect(values).toMatchObject({ from: 'green_button', first_date: '2025-01-01', daylight_saving: true })
    expect(values.meter).toMatchObject({ readings: 8760, filled_hours: 0, duplicates_dropped: 0 })
    expect(calendar.weekday[0]).toBe(3)
    expect(JSON.stringify(result)).not.toContain('Lark')
    expect(ids(result)).toEqual([])
  })

  it('knows the power-of-ten multiplier', () => {
    const kwh = greenButton(
      espi(
        year.map((hour) => ({ ...hour, kwh: 2 })),
        { power: 3 },
      ),
    )
    expect(kwh.values.values.annual_kwh).toBe(17_520)
  })

  it('keeps the weekdays of data that begin in another month', () => {
    const result = greenButton(espi(hours('2024-07-01T00:00:00-05:00', 8760)))
    const { calendar, values } = result.values
    expect(values.first_date).toBe('2024-07-01')
    // 1 July 2024 was a Monday, 1 January 2025 a Wednesday.
    expect(calendar.weekday[181]).toBe(1)
    expect(calendar.weekday[0]).toBe(3)
  })

  it('takes the latest year of longer data', () => {
    const older = hours('2023-01-01T00:00:00-05:00', 731 * 24).map((hour) => ({ ...hour, kwh: 9 }))
    expect(greenButton(espi([...older, ...year])).values.values.annual_kwh).toBeCloseTo(
      total(year.map((hour) => hour.kwh)),
      6,
    )
  })

  it('drops readings that stand twice, and refuses or settles different ones', () => {
    const twice = greenButton(espi([...year, year[100]!]))
    expect(twice.values.values.meter?.duplicates_dropped).toBe(1)
    expect(ids(twice)).toContain('usage.duplicates')
    const conflict = espi([...year, { utc: year[100]!.utc, kwh: 5 }])
    expect(refusal(() => greenButton(conflict))).toBe(
      'two different readings overlap at 2025-01-05 09:00 UTC (1.2 and 5 kWh)',
    )
    expect(greenButton(conflict, { overlaps: 'last' }).values.usageKwh[100]).toBe(5)
    expect(greenButton(conflict, { overlaps: 'first' }).values.usageKwh[100]).toBe(1.2)
  })

  it('fills and reports a short gap, and refuses a hole of three days', () => {
    const short = greenButton(espi(year.filter((_, k) => k < 3000 || k >= 3006)))
    expect(short.values.values.meter).toMatchObject({ filled_hours: 6, longest_gap_hours: 6 })
    expect(ids(short)).toContain('usage.gaps-filled')
    const hole = espi(year.filter((_, k) => k < 3000 || k >= 3072))
    expect(refusal(() => greenButton(hole))).toBe(
      '72 hours are missing from 2025-05-06 00:00 standard time (72 hours in 1 gaps in all)',
    )
    const filled = greenButton(hole, { fill_gaps: 'typical_day' }).values
    // The same clock hour of working days in May, by hand.
    const days = Array.from({ length: 31 }, (_, d) => 120 + d).filter(
      (d) => ![0, 6].includes(filled.calendar.weekday[d]!),
    )
    const known = days.map((d) => d * 24 + 5).filter((h) => h < 3000 || h >= 3072)
    const mean = total(known.map((h) => year[h]!.kwh)) / known.length
    expect(filled.usageKwh[3005]).toBeCloseTo(mean, 6)
  })

  it('refuses data of less than a year, gas, and files that are none', () => {
    expect(refusal(() => greenButton(espi(year.slice(0, 768))))).toBe(
      'the data cover 32.0 days; a whole year is needed',
    )
    expect(refusal(() => greenButton(espi(year, { uom: 169 })))).toMatch(/no electric energy delivered/)
    expect(refusal(() => greenButton('<html></html>'))).toBe('the file is no ESPI feed')
    expect(refusal(() => greenButton('<feed><entry></feed>'))).toMatch(/^the file is no ESPI feed: line 1/)
    expect(refusal(() => greenButton(espi(year.map((hour) => ({ ...hour, kwh: -1 })))))).toMatch(/below zero/)
  })

  it('splits a net channel and warns that import is not the use of a house that exports', () => {
    const result = greenButton(
      espi(
        year.map((hour, k) => ({ ...hour, kwh: k % 2 === 0 ? -1 : 2 })),
        { flow: 4 },
      ),
    )
    expect(result.values.values.annual_kwh).toBe(8760)
    expect(result.values.values.meter?.export_kwh).toBe(4380)
    expect(ids(result)).toContain('usage.export-present')
  })

  it('leaves gas of the same feed out', () => {
    const gas = `<entry><link rel="self" href="/U/2"/><content><espi:UsagePoint><espi:ServiceCategory><espi:kind>1</espi:kind></espi:ServiceCategory></espi:UsagePoint></content></entry>
<entry><link rel="self" href="/U/2/M/1"/><link rel="related" href="/U/2/M/1/B"/><link rel="related" href="/R/1"/><content><espi:MeterReading/></content></entry>
<entry><link rel="self" href="/U/2/M/1/B/1"/><link rel="up" href="/U/2/M/1/B"/><content><espi:IntervalBlock><espi:IntervalReading><espi:timePeriod><espi:duration>900</espi:duration><espi:start>${String(year[0]!.utc)}</espi:start></espi:timePeriod><espi:value>99</espi:value></espi:IntervalReading></espi:IntervalBlock></content></entry>`
    expect(readGreenButton(espi(year, { extra: gas })).readings.length).toBe(8760)
  })
})

/** Wall clock of an instant in New York, by the run-time library as an oracle. */
const wall = new Intl.DateTimeFormat('en-CA', {
  timeZone: 'America/New_York',
  year: 'numeric',
  month: '2-digit',
  day: '2-digit',
  hour: '2-digit',
  minute: '2-digit',
  hourCycle: 'h23',
})
const wallStamp = (utc: number): string => wall.format(utc * 1000).replace(', ', ' ')

describe('interval table', () => {
  const mapping: IntervalCsv = {
    file: 'hours.csv',
    header_line: 3,
    stamp_columns: ['Start'],
    stamp_format: 'YYYY-MM-DD HH:mm',
    stamps_mark: 'beginning',
    clock: 'local',
    unit: 'kwh',
    interval_min: 60,
    use_column: 'kWh',
  }
  const head = '\ufeffName,"Person, Invented"\r\nAccount,1\r\nStart,kWh,Export,Flag\r\n'
  const table = (rows: readonly string[]): string => head + rows.join('\r\n')
  const csv = (text: string, change: Partial<IntervalCsv> = {}, usage: Usage = {}) =>
    readUsage({ interval_csv: { ...mapping, ...change }, ...usage }, { fileText: text, utcOffsetH: EST })
  const local = year.map((hour) => `${wallStamp(hour.utc)},${String(hour.kwh)},0,`)

  it('reads local clock time through both clock changes', () => {
    const result = csv(table(local))
    expect([...result.values.usageKwh]).toEqual(year.map((hour) => hour.kwh))
    expect(JSON.stringify(result)).not.toContain('Invented')
  })

  it('reads stamps that mark the ending', () => {
    const rows = year.map((hour) => `${wallStamp(hour.utc + 3600)},${String(hour.kwh)},0,`)
    expect([...csv(table(rows), { stamps_mark: 'ending' }).values.usageKwh]).toEqual(year.map((hour) => hour.kwh))
  })

  it('reads standard time, UTC, Unix seconds and ISO with a zone', () => {
    const expected = year.map((hour) => hour.kwh)
    const as = (stamp: (utc: number) => string, change: Partial<IntervalCsv>): number[] => [
      ...csv(table(year.map((hour) => `${stamp(hour.utc)},${String(hour.kwh)},0,`)), change).values.usageKwh,
    ]
    const iso = (utc: number): string => new Date(utc * 1000).toISOString()
    expect(
      as(
        (utc) =>
          iso(utc - 5 * 3600)
            .slice(0, 16)
            .replace('T', ' '),
        { clock: 'standard' },
      ),
    ).toEqual(expected)
    expect(as((utc) => iso(utc).slice(0, 16).replace('T', ' '), { clock: 'utc' })).toEqual(expected)
    expect(as(String, { stamp_format: 'unix_s' })).toEqual(expected)
    expect(as(iso, { stamp_format: 'iso' })).toEqual(expected)
  })

  it('reads a 12-hour clock in two columns, thousands separators and watt-hours', () => {
    const text = [
      'Date;Start;Wh',
      ...year.map(({ utc, kwh }) => {
        const date = new Date((utc - 5 * 3600) * 1000)
        const hour = date.getUTCHours()
        const day = `${String(date.getUTCMonth() + 1)}/${String(date.getUTCDate())}/${String(date.getUTCFullYear())}`
        return `${day};${String(hour % 12 === 0 ? 12 : hour % 12)}:00 ${hour < 12 ? 'am' : 'PM'};"${Math.round(kwh * 1000).toLocaleString('en-US')}"`
      }),
    ].join('\n')
    const change: Partial<IntervalCsv> = {
      header_line: 1,
      delimiter: ';',
      stamp_columns: ['Date', 'Start'],
      stamp_format: 'M/D/YYYY h:mm A',
      clock: 'standard',
      unit: 'wh',
      use_column: 'Wh',
    }
    expect([...csv(text, change).values.usageKwh]).toEqual(year.map((hour) => hour.kwh))
  })

  it('reads the wide layout, with the hour that a day of 24 columns lacks in autumn', () => {
    const columns = Array.from({ length: 24 }, (_, hour) => `h${String(hour)}`)
    const rows = Array.from({ length: 365 }, (_, d) => {
      const date = new Date(Date.UTC(2025, 0, 1 + d)).toISOString().slice(0, 10)
      return [date, ...columns.map((_, hour) => (date === '2025-03-09' && hour === 2 ? '' : '1'))].join(',')
    })
    const { use_column: _, ...rest } = mapping
    const wide: IntervalCsv = {
      ...rest,
      header_line: 1,
      stamp_columns: ['Day'],
      stamp_format: 'YYYY-MM-DD',
      wide_first_column: 'h0',
    }
    const result = readUsage(
      { interval_csv: wide },
      { fileText: [['Day', ...columns].join(','), ...rows].join('\n'), utcOffsetH: EST },
    )
    expect(result.values.values.meter).toMatchObject({ readings: 8759, filled_hours: 1 })
    expect(result.values.values.annual_kwh).toBe(8760)
  })

  it('adds quarters of an hour up, and takes mean power', () => {
    const quarters = year.flatMap(({ utc, kwh }) =>
      [0, 900, 1800, 2700].map((s) => `${String(utc + s)},${String(kwh)},0,`),
    )
    const result = csv(table(quarters), { stamp_format: 'unix_s', interval_min: 15, unit: 'kw' })
    expect(result.values.values.annual_kwh).toBeCloseTo(total(year.map((hour) => hour.kwh)), 6)
  })

  it('counts estimated readings', () => {
    const rows = local.map((row, k) => (k < 5 ? `${row}E` : row))
    const result = csv(table(rows), { estimated_column: 'Flag' })
    expect(result.values.values.meter?.estimated_readings).toBe(5)
    expect(ids(result)).toContain('usage.estimated')
  })

  it.each<[string, () => unknown, string]>([
    [
      'a hole of three days',
      () => csv(table(local.filter((_, k) => k < 3000 || k >= 3072))),
      '72 hours are missing from 2025-05-06 00:00 standard time (72 hours in 1 gaps in all)',
    ],
    [
      'a column that does not exist',
      () => csv(table(local), { use_column: 'Usage' }),
      "there is no column 'Usage' among the 4 of line 3",
    ],
    [
      'a pattern with a part that stands twice',
      () => csv(table(local), { stamp_format: 'YYYY-MM-DD HH:MM' }),
      "the month stands twice in 'YYYY-MM-DD HH:MM'; minutes are mm",
    ],
    [
      'a pattern with two kinds of hour',
      () => csv(table(local), { stamp_format: 'YYYY-MM-DD HH:mm h' }),
      "the hour stands twice in 'YYYY-MM-DD HH:mm h'",
    ],
    [
      'a pattern without a year',
      () => csv(table(local), { stamp_format: 'MM-DD HH:mm' }),
      "there is no year (YYYY or YY) in 'MM-DD HH:mm'",
    ],
    [
      'a cell that is no number',
      () => csv(table(['2025-01-01 00:00,many,0,'])),
      "hours.csv:4:18: 'many' is not a number",
    ],
    [
      'a reading below zero',
      () => csv(table(['2025-01-01 00:00,-1,0,'])),
      'hours.csv:4:18: the reading -1 is below zero',
    ],
    [
      'a stamp that does not fit',
      () => csv(table(['01/13/2025 00:00,1,0,'])),
      "hours.csv:4:1: '01/13/2025 00:00' does not fit 'YYYY-MM-DD HH:mm'",
    ],
    [
      'a day that is none',
      () => csv(table(['2025-02-30 00:00,1,0,'])),
      "hours.csv:4:1: '2025-02-30 00:00' does not fit 'YYYY-MM-DD HH:mm'",
    ],
    [
      'a reading in the skipped hour',
      () => csv(table(['2025-03-09 02:00,1,0,'])),
      'hours.csv:4:18: a reading stands in the hour that the spring clock change skips',
    ],
    [
      'a quote that is never closed',
      () => csv(table(local.map((row, k) => (k === 8000 ? row.replace(/,$/, ',"E') : row)))),
      'hours.csv:8004:24: the quote that opens here is never closed',
    ],
    [
      'text after a closing quote',
      () => csv(table(['2025-01-01 00:00,"1"2,0,'])),
      'hours.csv:4:21: text follows a closing quote; inside quotes a quote is written twice',
    ],
    [
      'a row with too few cells, which is no reading of nothing',
      () => csv(table(local.map((row, k) => (k === 7 ? row.slice(0, 16) : row)))),
      'hours.csv:11:1: the row has 1 cells, the header 4',
    ],
    [
      'a decimal comma between commas',
      () => csv(table(['2025-01-01 00:00,1,5,0,x'])),
      "hours.csv:4:24: the row has 5 cells, the header 4; a cell that holds ',' stands in quotes",
    ],
    [
      'a wide table that begins too late for a day',
      () => {
        const { use_column: _, ...rest } = mapping
        return readUsage(
          { interval_csv: { ...rest, wide_first_column: 'Export' } },
          { fileText: table(['2025-01-01 00:00,1,5,0']), utcOffsetH: EST },
        )
      },
      "a day of 60-minute intervals has 24 columns; from 'Export' on there are 2",
    ],
    [
      'no time zone',
      () => readUsage({ interval_csv: mapping }, { fileText: table(local) }),
      'the time zone of the house is not known, so meter times cannot be placed',
    ],
  ])('refuses %s', (_, run, message) => {
    expect(refusal(run)).toBe(message)
  })
})

describe('totals with a load shape', () => {
  const monthly = [910, 760, 720, 640, 610, 780, 1050, 980, 720, 600, 690, 860.123456]

  it('monthly totals add up exactly', () => {
    const result = readUsage(
      { monthly_kwh: monthly, load_shape: 'cold-fuelheat-MI', year: 2026, daylight_saving: true },
      {},
    )
    expect(result.values.values.monthly_kwh).toEqual(monthly)
    expect(result.assumptions).toEqual([])
    expect(ids(result)).toEqual(['usage.hours-estimated'])
  })

  it('annual totals follow the shares of the shape', () => {
    const result = readUsage({ annual_kwh: 10_000, load_shape: 'cold-electricheat-CT' }, {})
    expect(result.values.values.annual_kwh).toBe(10_000)
    // 0.19134 of a sum of shares of 1.00001
    expect(result.values.values.monthly_kwh[0]).toBeCloseTo(1913.4, 0)
  })

  it('a missing load shape is chosen by state, said by name, and warned about where it fits badly', () => {
    const ohio = readUsage({ monthly_kwh: monthly }, { state: 'OH' })
    expect(ohio.assumptions.find((one) => one.path === 'usage.load_shape')?.value).toBe('cold-fuelheat-MI')
    expect(ids(ohio)).not.toContain('usage.shape-poor-fit')
    const florida = readUsage({ monthly_kwh: monthly }, { state: 'FL' })
    expect(florida.assumptions.find((one) => one.path === 'usage.load_shape')?.value).toBe('mixed-humid-fuelheat-MO')
    expect(ids(florida)).toContain('usage.shape-poor-fit')
  })

  it('refuses what is no use', () => {
    expect(refusal(() => readUsage({ monthly_kwh: [...monthly, 1] }, {}))).toBe('there are 13 months, not 12')
    expect(refusal(() => readUsage(undefined, {}))).toMatch(/^usage states no energy/)
    expect(refusal(() => readUsage({}, {}))).toMatch(/^usage states no energy; exactly one of/)
    expect(refusal(() => readUsage({ annual_kwh: 1, monthly_kwh: monthly }, {}))).toMatch(
      /^usage states monthly_kwh and annual_kwh/,
    )
    expect(refusal(() => readUsage({ annual_kwh: 1, load_shape: 'desert' }, {}))).toMatch(
      /^there is no load shape 'desert'; known: even, /,
    )
  })
})
