import { describe, expect, it } from 'vitest'
import { readProduction } from '../../src/fieldwork/index.js'
import { productionLimits } from '../../src/fieldwork/index.js'
import type { Production } from '../../src/project/index.js'
import { project, run } from './synthetic.js'

const limits = productionLimits(project, run)
const read = (text: string, mapping: Production = {}) => readProduction('p.csv', text, mapping, limits)
function seriesOf(text: string, mapping: Production = {}) {
  const { series, problems } = read(text, mapping)
  if (series === undefined) throw new Error(problems.map((problem) => problem.message).join('\n'))
  return series
}
const complaints = (text: string, mapping: Production = {}): string[] =>
  (read(text, mapping).problems ?? []).map(
    (problem) => `${problem.line ?? 0}:${problem.column ?? 0} ${problem.message}`,
  )
const idsOf = (text: string, mapping: Production = {}): string[] =>
  seriesOf(text, mapping).findings.map((finding) => finding.id)
const messagesOf = (text: string): string[] => seriesOf(text).findings.map((finding) => finding.message)
const kwhOf = (text: string, mapping: Production = {}): number[] =>
  seriesOf(text, mapping).spans.map((span) => Number(span.kwh.toFixed(6)))
const startsOf = (text: string, mapping: Production = {}): string[] =>
  seriesOf(text, mapping).spans.map((span) => new Date(span.startMs).toISOString().slice(0, 16))

describe('kinds of table', () => {
  it('days in kWh', () => {
    const series = seriesOf('date,kWh\n2026-05-01,20.5\n2026-05-02,31\n')
    expect(series.resolution).toBe('day')
    expect(series.spans.map((span) => span.kwh)).toEqual([20.5, 31])
  })
  it('months, with names and with first days', () => {
    for (const stamps of [
      ['2026-03', '2026-04'],
      ['Mar 2026', 'April 2026'],
      ['2026-03-01', '2026-04-01'],
      ['3/31/2026', '4/30/2026'],
    ]) {
      const series = seriesOf(`Month,Energy (kWh)\n${stamps[0]},800\n${stamps[1]},900\n`)
      expect(series.resolution).toBe('month')
      expect(series.spans.map((span) => (span.endMs - span.startMs) / 86_400_000)).toEqual([31, 30])
    }
  })
  it('Wh, power in W over quarter hours, semicolons with decimal commas, thousands in quotes', () => {
    expect(kwhOf('date,Energy Wh\n2026-05-01,20500\n2026-05-02,31000\n')).toEqual([20.5, 31])
    expect(kwhOf('time,ac_w\n2026-05-01 12:00,4000\n2026-05-01 12:15,2000\n2026-05-01 12:30,0\n')).toEqual([1, 0.5, 0])
    expect(kwhOf('Datum date;kWh\n2026-05-01;20,5\n2026-05-02;31,25\n', { time_columns: ['Datum date'] })).toEqual([
      20.5, 31.25,
    ])
    expect(kwhOf('date,Wh\n2026-05-01,"20,500"\n2026-05-02,"31,000"\n')).toEqual([20.5, 31])
  })
  it('a cumulative meter, its reset, and a day that was not read', () => {
    const text =
      'date,meter reading (kWh)\n2026-05-01,1000\n2026-05-02,1020\n2026-05-04,1065\n2026-05-05,5\n2026-05-06,30\n'
    expect(kwhOf(text)).toEqual([20, 45, 25])
    const series = seriesOf(text)
    expect(series.meter).toBe('cumulative')
    expect(series.spans.map((span) => (span.endMs - span.startMs) / 86_400_000)).toEqual([1, 2, 1])
    expect(startsOf(text)[0]).toBe('2026-05-02T00:00')
    expect(series.findings.map((finding) => finding.id)).toEqual(['output.meter-reset'])
  })
  it('a counter without a name that says so is known by only rising', () => {
    const rows = Array.from({ length: 14 }, (_, at) => `2026-05-${String(at + 1).padStart(2, '0')},${500 + 20 * at}`)
    expect(seriesOf(`date,kWh\n${rows.join('\n')}\n`).meter).toBe('cumulative')
  })
  it('lines above the header, another delimiter, date and time in two columns', () => {
    const text = 'Invented logger\nexport of today\n\nDate\tTime\tkWh\n05/13/2026\t1:00 PM\t3\n05/13/2026\t2:00 PM\t2\n'
    expect(startsOf(text)).toEqual(['2026-05-13T13:00', '2026-05-13T14:00'])
  })
  it('module columns by id, their sum when there is no total', () => {
    const [one, two] = limits.moduleIds
    const series = seriesOf(`date,${one ?? ''},${two ?? ''}\n2026-05-01,1.5,1.25\n`, { unit: 'kwh' })
    expect(series.moduleIds).toEqual([one, two])
    expect(series.spans.at(0)).toMatchObject({ kwh: 2.75, moduleKwh: [1.5, 1.25] })
  })
})

describe('clocks', () => {
  const hours = (stamps: readonly string[]): string => `time,kWh\n${stamps.map((stamp) => `${stamp},1`).join('\n')}\n`
  it('daylight saving time when declared, both ways', () => {
    expect(startsOf(hours(['2026-07-01 13:00', '2026-07-01 14:00']), { clock: 'local' })[0]).toBe('2026-07-01T12:00')
    const autumn = hours(['2026-11-01 00:00', '2026-11-01 01:00', '2026-11-01 01:00', '2026-11-01 02:00'])
    expect(startsOf(autumn, { clock: 'local' })).toEqual([
      '2026-10-31T23:00',
      '2026-11-01T00:00',
      '2026-11-01T01:00',
      '2026-11-01T02:00',
    ])
  })
  it('daylight saving time when the change of clocks is seen', () => {
    const spring = hours(['2026-03-08 00:00', '2026-03-08 01:00', '2026-03-08 03:00', '2026-03-08 04:00'])
    expect(seriesOf(spring).clock).toBe('local')
    expect(startsOf(spring)).toEqual(['2026-03-08T00:00', '2026-03-08T01:00', '2026-03-08T02:00', '2026-03-08T03:00'])
  })
  it('stamps at the ends of intervals, UTC, and offsets in the text', () => {
    expect(startsOf(hours(['2026-05-01 13:00', '2026-05-01 14:00']), { stamps_mark: 'ending' })[0]).toBe(
      '2026-05-01T12:00',
    )
    expect(startsOf(hours(['2026-05-01 18:00', '2026-05-01 19:00']), { clock: 'utc' })[0]).toBe('2026-05-01T12:00')
    expect(startsOf(hours(['2026-05-01T13:00-05:00', '2026-05-01T14:00-05:00']))[0]).toBe('2026-05-01T12:00')
    expect(startsOf(hours(['2026-05-01T18:00Z', '2026-05-01T19:00Z']))[0]).toBe('2026-05-01T12:00')
  })
  it('a time that no clock shows is a bad cell', () => {
    const text = hours(['2026-03-08 01:00', '2026-03-08 02:00', '2026-03-08 03:00'])
    expect(complaints(text, { clock: 'local' })[0]).toMatch(/^3:1 '2026-03-08 02:00' does not exist/)
  })
})

describe('faults of the data, each told', () => {
  it('every bad cell with its line and column', () => {
    const text = 'date,kWh\n2026-05-01,x1\n2026-02-30,20\n2026-05-03,21\n2026-05-04\n'
    const found = complaints(text)
    expect(found).toHaveLength(3)
    expect(found[0]).toMatch(/^2:12 'x1' is no number/)
    expect(found[1]).toMatch(/^3:1 '2026-02-30' is no date/)
    expect(found[2]).toMatch(/^5:1 the row has 1 cells/)
  })
  it('a quote that is never closed, which would swallow the rows below it', () => {
    const days = Array.from({ length: 90 }, (_, at) => new Date(Date.UTC(2026, 3, 1 + at)).toISOString().slice(0, 10))
    const rows = days.map((day, at) => `${day},${20 + (at % 7)},${at === 21 ? '"cloudy' : 'ok'}`)
    const text = `date,kWh,note\n${rows.join('\n')}\n`
    expect(complaints(text)).toEqual(['23:15 the quote that opens here is never closed'])
    expect(seriesOf(text.replace('"cloudy', '"cloudy"')).spans).toHaveLength(90)
    // Another quote far below closes it again.
    expect(complaints(text.replace('2026-06-10,20,ok', '2026-06-10,20,ok"'))[0]).toMatch(/^23:15 .* holds whole rows/)
    expect(complaints('date,kWh\n2026-05-01,"20"5\n2026-05-02,31\n')[0]).toMatch(/^2:16 text follows a closing quote/)
  })
  it('a decimal comma between commas is no kWh without its decimals', () => {
    expect(complaints('date,kWh\n2026-05-01,20,5\n2026-05-02,31,25\n')[0]).toMatch(
      /^2:15 the row has 3 cells, the header 2; a cell that holds ',' stands in quotes/,
    )
  })
  it('the delimiter that was found is said', () => {
    const said = (text: string) => seriesOf(text).taken.map(({ path, value }) => `${path}=${value}`)
    expect(said('date;kWh\n2026-05-01;20,5\n2026-05-02;31\n')).toContain('production.delimiter=semicolon')
    expect(said('date,kWh\n2026-05-01,20.5\n2026-05-02,31\n').join()).not.toContain('delimiter')
  })
  it('100,000 minutes are read in seconds', () => {
    const start = Date.UTC(2026, 4, 1)
    const rows = Array.from({ length: 100_000 }, (_, at) => {
      return `${new Date(start + at * 60_000).toISOString().slice(0, 16).replace('T', ' ')},0.01`
    })
    const before = performance.now()
    expect(seriesOf(`time,kWh\n${rows.join('\n')}\n`, { meter: 'interval' }).spans).toHaveLength(100_000)
    expect(performance.now() - before).toBeLessThan(10_000)
  })
  it('a header that does not say what is what', () => {
    expect(complaints('date,kWh solar,kWh total\n2026-05-01,1,2\n')[0]).toMatch(
      /^1:16 several columns may hold the production/,
    )
    expect(complaints('date,energy\n2026-05-01,1\n')[0]).toMatch(/^1:6 the unit of 'energy' is unknown/)
    expect(complaints('a,kWh\n2026-05-01,1\n')[0]).toMatch(/no column is named as a time stamp/)
    expect(complaints('date,kWh\n', {})[0]).toMatch(/the table has no rows/)
    expect(complaints('', {})[0]).toMatch(/no line with column names/)
    expect(complaints('date,kWh\n2026-05-01,1\n', { value_column: 'Energy' })[0]).toMatch(/no column 'Energy'/)
    expect(complaints('date,kWh\n2026-05-01,1\n', { module_columns: { kWh: 'roof.m99' } })[0]).toMatch(
      /module 'roof.m99', which the project does not have/,
    )
  })
  it('columns in different units', () => {
    const [one] = limits.moduleIds
    const text = `date,kWh,${one ?? ''} Wh\n2026-05-01,20,1000\n`
    expect(complaints(text)[0]).toMatch(/^1:10 .* is in wh, 'kWh' in kwh; bring them to one unit/)
  })
  it('dates that may be read two ways', () => {
    expect(complaints('date,kWh\n03/04/2026,20\n03/05/2026,20\n')[0]).toMatch(/declare date_order/)
    expect(startsOf('date,kWh\n03/04/2026,20\n04/04/2026,20\n', { date_order: 'day_first' })[1]).toBe(
      '2026-04-04T00:00',
    )
    expect(complaints('date,kWh\n13/04/2026,20\n04/13/2026,20\n')[0]).toMatch(/neither/)
  })
  it('rows out of order, repeated rows, contradicting rows, empty cells', () => {
    expect(idsOf('date,kWh\n2026-05-02,20\n2026-05-01,20\n')).toEqual(['output.rows-out-of-order'])
    expect(idsOf('date,kWh\n2026-05-01,20\n2026-05-01,20\n2026-05-02,20\n')).toEqual(['output.rows-repeated'])
    const contradicting = 'date,kWh\n2026-05-01,20\n2026-05-01,22\n2026-05-02,19\n'
    expect(idsOf(contradicting)).toContain('output.rows-contradict')
    expect(kwhOf(contradicting)).toEqual([19])
    expect(idsOf('date,kWh\n2026-05-01,20\n2026-05-02,\n2026-05-03,19\n')).toEqual(['output.cells-empty'])
  })
  it('one slip of the unit is left out, a wrong unit throughout is refused', () => {
    const days = Array.from({ length: 9 }, (_, at) => `2026-05-0${at + 1},${20 + ((at * 7) % 5)}`)
    const slip = `date,kWh\n${days.join('\n').replace('2026-05-04,21', '2026-05-04,21000')}\n`
    expect(idsOf(slip)).toEqual(['output.reading-impossible'])
    expect(kwhOf(slip)).toHaveLength(8)
    const boundless = slip.replace('2026-05-04,21000', '2026-05-04,1.7976931348623157e308')
    expect(idsOf(boundless)).toEqual(['output.reading-impossible'])
    expect(messagesOf(boundless)[0]).toMatch(/^1 reading cannot be and are left out: .*:5:12 \(1\.798e\+308 kWh\)$/)
    const all = `date,kWh\n${days.map((row) => `${row}000`).join('\n')}\n`
    expect(complaints(all)[0]).toMatch(/more than this system can give when read as kwh; as wh they would fit/)
  })
  it('a clean table has no findings', () => {
    expect(idsOf('date,kWh\n2026-05-01,20\n2026-05-02,31\n2026-05-03,12\n')).toEqual([])
  })
})
