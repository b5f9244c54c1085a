import { describe, expect, it } from 'vitest'
import {
  addPairs,
  balancedPairs,
  highestLineA,
  inTurn,
  lineCurrentsOf,
  onePair,
  twoWireEquivalentA,
  unbalancePct,
  type PairCurrents,
} from '../../src/electrical/system/index.js'
import { assert, double, integer, property, record } from '../fast-check.js'

const current = double({ min: 0, max: 200, noNaN: true })
const someOf = record({ ab: current, bc: current, ca: current })

/** Currents as complex numbers: each in phase with the voltage of its pair, V_AB at 0, V_BC at -120, V_CA at 120 degrees. */
function phasors({ ab, bc, ca }: PairCurrents) {
  const at = (size: number, deg: number) => ({
    re: size * Math.cos((deg / 180) * Math.PI),
    im: size * Math.sin((deg / 180) * Math.PI),
  })
  return { ab: at(ab, 0), bc: at(bc, -120), ca: at(ca, 120) }
}

type Complex = { readonly re: number; readonly im: number }
const less = (one: Complex, other: Complex): Complex => ({ re: one.re - other.re, im: one.im - other.im })
const abs = ({ re, im }: Complex): number => Math.hypot(re, im)

/** What flows out of each line: A feeds AB and takes CA. */
function linesByPhasors(pairs: PairCurrents) {
  const { ab, bc, ca } = phasors(pairs)
  return { a: less(ab, ca), b: less(bc, ab), c: less(ca, bc) }
}

describe('currents of three lines', () => {
  it('are the sums of the phasors', () => {
    assert(
      property(someOf, (pairs) => {
        const lines = lineCurrentsOf(pairs)
        const { a, b, c } = linesByPhasors(pairs)
        expect(lines.a).toBeCloseTo(abs(a), 6)
        expect(lines.b).toBeCloseTo(abs(b), 6)
        expect(lines.c).toBeCloseTo(abs(c), 6)
      }),
      { numRuns: 300 },
    )
  })

  it('lose as much as the equivalent two-wire current says, between the pair that loses most', () => {
    assert(
      property(someOf, (pairs) => {
        const { a, b, c } = linesByPhasors(pairs)
        const along = ({ re, im }: Complex, deg: number): number =>
          re * Math.cos((deg / 180) * Math.PI) + im * Math.sin((deg / 180) * Math.PI)
        // Volts between two lines of 1 ohm each, in phase with the voltage between them.
        const rises = [along(less(a, b), 0), along(less(b, c), -120), along(less(c, a), 120)]
        expect(2 * twoWireEquivalentA(pairs)).toBeCloseTo(Math.max(...rises), 6)
      }),
      { numRuns: 300 },
    )
  })

  it('two pairs n, 0, n give sqrt(3) n i in the line between them and n i in the others', () => {
    const { a, b, c } = lineCurrentsOf({ ab: 4 * 1.83, bc: 0, ca: 4 * 1.83 })
    expect(a).toBeCloseTo(Math.sqrt(3) * 4 * 1.83, 9)
    expect([b, c]).toEqual([4 * 1.83, 4 * 1.83])
  })

  it('three equal pairs are balanced, and the same as a three-phase source', () => {
    assert(
      property(integer({ min: 1, max: 40 }), double({ min: 0.1, max: 50, noNaN: true }), (each, ampere) => {
        expect(unbalancePct(inTurn(3 * each, ampere))).toBeLessThan(1e-9)
        expect(highestLineA(inTurn(3 * each, ampere))).toBeCloseTo(Math.sqrt(3) * each * ampere, 6)
        expect(highestLineA(balancedPairs(ampere))).toBeCloseTo(ampere, 9)
        expect(2 * twoWireEquivalentA(balancedPairs(ampere))).toBeCloseTo(Math.sqrt(3) * ampere, 9)
      }),
      { numRuns: 100 },
    )
  })

  it('unbalance: one pair alone is half off the mean', () => {
    // Lines 1, 1, 0: mean 2/3, largest deviation 2/3.
    expect(unbalancePct(onePair(10))).toBeCloseTo(100, 9)
    // Lines sqrt(3), 1, 1.
    const mean = (Math.sqrt(3) + 2) / 3
    expect(unbalancePct({ ab: 1, bc: 0, ca: 1 })).toBeCloseTo((100 * (Math.sqrt(3) - mean)) / mean, 9)
    expect(unbalancePct(onePair(0))).toBe(0)
  })

  it('another source never lowers a line', () => {
    assert(
      property(someOf, someOf, (one, other) => {
        const [before, after] = [lineCurrentsOf(one), lineCurrentsOf(addPairs([one, other]))]
        for (const line of ['a', 'b', 'c'] as const) expect(after[line]).toBeGreaterThanOrEqual(before[line] - 1e-9)
      }),
      { numRuns: 200 },
    )
  })

  it('in turn, the pairs differ by one inverter at the most, AB first', () => {
    expect([inTurn(1, 1), inTurn(2, 1), inTurn(16, 1)]).toEqual([
      { ab: 1, bc: 0, ca: 0 },
      { ab: 1, bc: 1, ca: 0 },
      { ab: 6, bc: 5, ca: 5 },
    ])
  })

  it('on a single phase nothing is rounded', () => {
    expect(highestLineA(onePair(0.1 + 0.2))).toBe(0.1 + 0.2)
    expect(twoWireEquivalentA(onePair(0.1 + 0.2))).toBe(0.1 + 0.2)
  })
})
