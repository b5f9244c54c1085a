import { expect, test } from 'vitest'
import { CAUTIOUS, downTo, upTo } from '../../../src/papers/proposal/cautious.js'
import * as fc from '../../fast-check.js'

const amount = fc.double({ min: -1e6, max: 1e6, noNaN: true })

test('gains are never rounded up, costs and times never down, and neither by a whole step', () => {
  fc.assert(
    fc.property(amount, (value) => {
      const slack = 1e-6 * Math.max(1, Math.abs(value))
      for (const round of [CAUTIOUS.gainUsd, CAUTIOUS.yearKwh, CAUTIOUS.monthKwh, CAUTIOUS.sharePct]) {
        expect(round(value)).toBeLessThanOrEqual(value + slack)
        expect(round(value)).toBeGreaterThan(value - 10 - slack)
      }
      for (const round of [CAUTIOUS.costUsd, CAUTIOUS.costKwh, CAUTIOUS.years]) {
        expect(round(value)).toBeGreaterThanOrEqual(value - slack)
        expect(round(value)).toBeLessThan(value + 10 + slack)
      }
    }),
    { numRuns: 200 },
  )
})

test('what is a whole number of steps stays, whatever noise arithmetic left', () => {
  expect([downTo(0.1, 0.3), upTo(0.1, 0.3), upTo(0.1, 0.1 + 0.2), downTo(10, 10440), upTo(0.01, 104.53)]).toEqual([
    0.3, 0.3, 0.3, 10440, 104.53,
  ])
  expect([CAUTIOUS.years(15.81), CAUTIOUS.gainUsd(-1774.06), CAUTIOUS.yearKwh(9591.4)]).toEqual([15.9, -1775, 9590])
  expect(Object.is(downTo(1, 0), 0)).toBe(true)
})
