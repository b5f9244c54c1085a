import { describe, expect, test } from 'vitest'
import { changeHours, orderOf, parseStamp, standardMs } from '../../src/values/time/index.js'

const iso = (ms: number): string => new Date(ms).toISOString().slice(0, 16)

describe('stamps', () => {
  test.each([
    ['2026-07-31', '2026-07-31T00:00', 'date', undefined],
    ['2026/7/1', '2026-07-01T00:00', 'date', undefined],
    ['2026.12.31', '2026-12-31T00:00', 'date', undefined],
    ['7/31/2026', '2026-07-31T00:00', 'date', undefined],
    ['7/31/26', '2026-07-31T00:00', 'date', undefined],
    ['2026-07', '2026-07-01T00:00', 'month', undefined],
    ['2026-12', '2026-12-01T00:00', 'month', undefined],
    ['Jan 2026', '2026-01-01T00:00', 'month', undefined],
    ['December-2026', '2026-12-01T00:00', 'month', undefined],
    ['2026-07-31 14:05', '2026-07-31T14:05', 'time', undefined],
    ['2026-07-31T14:05:59.9', '2026-07-31T14:05', 'time', undefined],
    ['2026-07-31 24:00', '2026-08-01T00:00', 'time', undefined],
    ['7/31/2026 12:30 AM', '2026-07-31T00:30', 'time', undefined],
    ['7/31/2026 12:30 PM', '2026-07-31T12:30', 'time', undefined],
    ['7/31/2026 1:30 pm', '2026-07-31T13:30', 'time', undefined],
    ['7/31/2026 11:30 am', '2026-07-31T11:30', 'time', undefined],
    ['2026-07-31T14:00Z', '2026-07-31T14:00', 'time', 0],
    ['2026-07-31T14:00-05:30', '2026-07-31T14:00', 'time', -5.5],
    ['2026-07-31T14:00+0145', '2026-07-31T14:00', 'time', 1.75],
    ['2028-02-29', '2028-02-29T00:00', 'date', undefined],
  ] as const)('%s', (text, clock, kind, offset) => {
    const stamp = parseStamp(text, 'month_first')
    expect([iso(stamp?.clockMs ?? 0), stamp?.kind, stamp?.offsetH]).toEqual([clock, kind, offset])
  })

  test.each([
    '2026-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-06-31',
    '2026-13',
    '2026-00',
    'Foo 2026',
    '2026-07-31 25:00',
    '2026-07-31 24:01',
    '2026-07-31 24:00:01',
    '2026-07-31 12:60',
    '2026-07-31 12:00:60',
    '7/31/2026 13:00 PM',
    '7/31/2026 0:30 AM',
    '2026-07-31Z',
    'yesterday',
    '',
  ])("'%s' is no date or time", (text) => {
    expect(parseStamp(text, 'month_first')).toBeUndefined()
  })

  test('day and month by the order, which a number above 12 tells', () => {
    expect(iso(parseStamp('3/4/2026', 'month_first')?.clockMs ?? 0)).toBe('2026-03-04T00:00')
    expect(iso(parseStamp('3/4/2026', 'day_first')?.clockMs ?? 0)).toBe('2026-04-03T00:00')
    expect(['13/4/2026', '4/13/2026', '12/12/2026', '2026-04-13'].map(orderOf)).toEqual([
      'day_first',
      'month_first',
      undefined,
      undefined,
    ])
  })
})

describe('daylight saving time', () => {
  // Energy Policy Act of 2005: second Sunday of March to first Sunday of November, at 02:00 by the clock.
  test.each([
    [2024, '2024-03-10T02:00', '2024-11-03T01:00'],
    [2025, '2025-03-09T02:00', '2025-11-02T01:00'],
    [2026, '2026-03-08T02:00', '2026-11-01T01:00'],
    [2027, '2027-03-14T02:00', '2027-11-07T01:00'],
    [2029, '2029-03-11T02:00', '2029-11-04T01:00'],
  ])('%d', (year, skipped, twice) => {
    const { skippedMs, twiceMs } = changeHours(year)
    expect([iso(skippedMs), iso(twiceMs)]).toEqual([skipped, twice])
  })

  test.each([
    ['2026-03-08T01:59', false, '2026-03-08T01:59'],
    ['2026-03-08T02:00', false, undefined],
    ['2026-03-08T02:59', false, undefined],
    ['2026-03-08T03:00', false, '2026-03-08T02:00'],
    ['2026-11-01T00:59', true, '2026-10-31T23:59'],
    ['2026-11-01T01:00', false, '2026-11-01T00:00'],
    ['2026-11-01T01:00', true, '2026-11-01T01:00'],
    ['2026-11-01T02:00', false, '2026-11-01T02:00'],
  ] as const)('%s by the clock, second time %s', (clock, second, standard) => {
    const ms = standardMs(Date.parse(`${clock}Z`), second)
    expect(ms === undefined ? undefined : iso(ms)).toBe(standard)
  })
})
