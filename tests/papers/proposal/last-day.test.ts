import { describe, expect, test } from 'vitest'
import { isBusinessDay, lastDayToCancel } from '../../../src/papers/proposal/last-day.js'

/** Federal holidays of two years on their own dates. Source: 5 USC 6103(a) (from memory), written out by hand. */
const HOLIDAYS = [
  ['2026-01-01', '2026-01-19', '2026-02-16', '2026-05-25', '2026-06-19', '2026-07-04', '2026-09-07', '2026-10-12'],
  ['2026-11-11', '2026-11-26', '2026-12-25', '2027-01-01', '2027-01-18', '2027-02-15', '2027-05-31', '2027-06-19'],
  ['2027-07-04', '2027-09-06', '2027-10-11', '2027-11-11', '2027-11-25', '2027-12-25'],
].flat()

describe('the last day to cancel', () => {
  // Source: 16 CFR 429, Saturdays count, Sundays and federal holidays do not (secondary).
  test.each([
    ['a Monday', '2026-03-02', 3, '2026-03-05'],
    ['a Friday: Saturday counts, Sunday does not', '2026-03-06', 3, '2026-03-10'],
    ['a Saturday', '2026-03-07', 3, '2026-03-11'],
    ['a Sunday', '2026-03-08', 3, '2026-03-11'],
    ['before Thanksgiving', '2026-11-24', 3, '2026-11-28'],
    ['before Christmas', '2026-12-23', 3, '2026-12-28'],
    ['over New Year', '2026-12-30', 3, '2027-01-04'],
    ['before the Fourth of July on a Saturday', '2026-07-01', 3, '2026-07-06'],
    ['before a Monday holiday', '2026-09-04', 3, '2026-09-09'],
    ['in a leap year', '2028-02-28', 3, '2028-03-02'],
    ['five days', '2026-03-06', 5, '2026-03-12'],
    ['seven days', '2026-03-06', 7, '2026-03-14'],
  ])('after %s', (_, signed, days, last) => {
    expect(lastDayToCancel(signed, days)).toBe(last)
  })

  test('every day of two years is a business day but Sundays and federal holidays', () => {
    for (let at = Date.UTC(2026, 0, 1); at < Date.UTC(2028, 0, 1); at += 86400000) {
      const date = new Date(at).toISOString().slice(0, 10)
      const counts = new Date(at).getUTCDay() !== 0 && !HOLIDAYS.includes(date)
      expect([date, isBusinessDay(date)]).toEqual([date, counts])
    }
  })
})
