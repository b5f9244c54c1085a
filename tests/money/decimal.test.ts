import { Big } from 'big.js'
import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import { Decimal, decimal, toCents } from '../../src/values/decimal/index.js'

/** The same arithmetic by the library alone: quotients rounded half up at 20 places. */
const Truth = Big()
Truth.DP = 20
Truth.RM = 1

/** Amounts as people type them, small and far beyond 2^53 units, so that both ways of working are taken. */
const typed = fc
  .tuple(
    fc.bigInt({ min: -(10n ** 19n), max: 10n ** 19n }),
    fc.integer({ min: 0, max: 12 }),
    fc.integer({ min: 1, max: 20 }),
  )
  .map(([whole, places, digits]) => `${String(whole).slice(0, digits + 1)}e-${String(places)}`)
  .filter((text) => /\de-/u.test(text))
  .map((text) => new Truth(text))
const ours = (value: Big): Decimal =>
  value.c.length <= 15 ? decimal(Number(value.toFixed())) : new Decimal(0, 0, value)
const same = (value: Decimal, truth: Big): void =>
  expect(new Truth(value.toFixed()).eq(truth), `${value.toFixed()} is ${truth.toFixed()}`).toBe(true)

describe('exact decimals against a library of decimals alone', () => {
  it('adds, takes away, multiplies, compares and rounds alike', () => {
    fc.assert(
      fc.property(typed, typed, fc.integer({ min: 0, max: 8 }), (a, b, places) => {
        same(ours(a).plus(ours(b)), a.plus(b))
        same(ours(a).minus(ours(b)), a.minus(b))
        same(ours(a).times(ours(b)), a.times(b))
        expect(Math.sign(ours(a).compare(ours(b)))).toBe(a.cmp(b) + 0)
        same(ours(a).roundedTo(places), a.round(places, 1))
        if (!b.eq(0)) same(ours(a).div(ours(b)), a.div(b))
        expect(ours(a).toNumber()).toBe(Number(a.toFixed()) + 0)
      }),
      { numRuns: 2000 },
    )
  })

  it('stays exact through a long chain that leaves the range of binary numbers', () => {
    let value = decimal(0.01)
    let truth = new Truth('0.01')
    for (let turn = 0; turn < 40; turn += 1) {
      value = value.times(decimal(1.07)).plus(decimal(0.03))
      truth = truth.times('1.07').plus('0.03')
      same(value, truth)
    }
  })

  // Published line of a real sheet: 0.0475 USD/kWh x 550 kWh = 26.125, billed 26.13 (half up).
  it('rounds the half cent that binary floats miss', () => {
    expect(toCents(decimal(0.0475).times(550)).toFixed()).toBe('26.13')
  })
})
