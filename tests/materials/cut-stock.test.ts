import * as fc from '../fast-check.js'
import { describe, expect, test } from 'vitest'
import { cutStock, type CutPlan, type CutStock } from '../../src/materials/index.js'

const piecesOf = (lengths: readonly number[]) => lengths.map((lengthIn, i) => ({ for: `p${i}`, lengthIn }))

/** The least cost over every way to divide the pieces among sticks, found by trying all of them. */
function bruteForce(lengths: readonly number[], stocks: readonly CutStock[], kerfIn: number): number {
  const costOf = (members: readonly number[]): number => {
    const needed = members.reduce((sum, length) => sum + length + kerfIn, 0) - kerfIn
    const fitting = stocks.filter((stock) => stock.lengthIn >= needed - 1e-9)
    return Math.min(...fitting.map((stock) => stock.cents ?? stock.lengthIn))
  }
  const divide = (index: number, groups: readonly (readonly number[])[]): number => {
    const length = lengths[index]
    if (length === undefined) return groups.reduce((sum, group) => sum + costOf(group), 0)
    const joined = groups.map((group, i) => divide(index + 1, groups.with(i, [...group, length])))
    return Math.min(...joined, divide(index + 1, [...groups, [length]]))
  }
  return divide(0, [])
}

const costOf = (plan: CutPlan, stocks: readonly CutStock[]): number =>
  plan.sticks.reduce((sum, stick) => {
    const stock = stocks.find((each) => each.lengthIn === stick.stockIn)
    return sum + (stock?.cents ?? stick.stockIn)
  }, 0)

/** Every piece is cut once, and the cuts fit the stick. */
function expectRightCuts(plan: CutPlan, lengths: readonly number[], kerfIn: number): void {
  const cut = plan.sticks.flatMap((stick) => stick.pieces.map((piece) => piece.for))
  expect(cut.toSorted()).toEqual(
    piecesOf(lengths)
      .map((piece) => piece.for)
      .toSorted(),
  )
  for (const { stockIn, pieces, offcutIn } of plan.sticks) {
    const used = pieces.reduce((sum, piece) => sum + piece.lengthIn, 0) + kerfIn * (pieces.length - 1)
    expect(used).toBeLessThanOrEqual(stockIn + 1e-9)
    expect(offcutIn).toBeGreaterThanOrEqual(0)
    // The pieces are whole sixteenths here, so the rest is exact; a last cut takes a kerf unless nothing is left.
    expect(offcutIn).toBeCloseTo(Math.max(0, stockIn - used - kerfIn), 9)
  }
}

describe('cuts', () => {
  test('takes a piece of exactly the stock length without a cut', () => {
    const plan = cutStock(piecesOf([168, 168]), [{ lengthIn: 168 }], 0.125)
    expect(plan.sticks.map((stick) => [stick.stockIn, stick.offcutIn])).toEqual([
      [168, 0],
      [168, 0],
    ])
  })

  test('the kerf decides: two halves of a stick do not come from one', () => {
    expect(cutStock(piecesOf([84, 84]), [{ lengthIn: 168 }], 0.125).sticks).toHaveLength(2)
    expect(cutStock(piecesOf([84, 84]), [{ lengthIn: 168 }], 0).sticks).toHaveLength(1)
    expect(cutStock(piecesOf([84, 83.875]), [{ lengthIn: 168 }], 0.125).sticks).toHaveLength(1)
  })

  test('a piece between two sixteenths is counted as the longer', () => {
    expect(cutStock(piecesOf([84.01, 83.99]), [{ lengthIn: 168 }], 0).sticks).toHaveLength(2)
  })

  test('off-cuts go on to the next piece that fits', () => {
    const plan = cutStock(piecesOf([120, 120, 40, 40]), [{ lengthIn: 168 }], 0.125)
    expect(plan.sticks.map((stick) => stick.pieces.map((piece) => piece.lengthIn))).toEqual([
      [120, 40],
      [120, 40],
    ])
    expect(plan.sticks[0]?.offcutIn).toBeCloseTo(168 - 160 - 0.25, 9)
  })

  test('first-fit decreasing would take three, the best way takes two', () => {
    // Sticks of 100: 50+30+20 and 40+40+20 against 50+40, 40+30+20, 20.
    const plan = cutStock(piecesOf([50, 40, 40, 30, 20, 20]), [{ lengthIn: 100 }], 0)
    expect(plan.sticks).toHaveLength(2)
    expect(plan.proven).toBe(true)
  })

  test('the cheaper set of stock lengths wins by price and by length', () => {
    const stocks = (short?: number, long?: number) => [
      { lengthIn: 168, cents: short },
      { lengthIn: 204, cents: long },
    ]
    const lengths = [100, 100]
    expect(cutStock(piecesOf(lengths), stocks(), 0.125).sticks.map((stick) => stick.stockIn)).toEqual([204])
    expect(cutStock(piecesOf(lengths), stocks(1000, 2500), 0.125).sticks.map((stick) => stick.stockIn)).toEqual([
      168, 168,
    ])
  })

  test('a piece that no stock is long enough for is told, not cut', () => {
    const plan = cutStock(piecesOf([200, 100]), [{ lengthIn: 168 }], 0.125)
    expect(plan.tooLong.map((piece) => piece.for)).toEqual(['p0'])
    expect(plan.sticks).toHaveLength(1)
  })
})

const sixteenths = (min: number, max: number) => fc.integer({ min: min * 16, max: max * 16 }).map((n) => n / 16)

describe('the least cost', () => {
  test('is that of trying every way, for one and for two stock lengths', () => {
    fc.assert(
      fc.property(
        fc.array(sixteenths(12, 168), { minLength: 1, maxLength: 7 }),
        fc.constantFrom(0, 0.125, 0.25),
        fc.constantFrom<readonly CutStock[]>(
          [{ lengthIn: 168 }],
          [{ lengthIn: 168 }, { lengthIn: 204 }],
          [
            { lengthIn: 168, cents: 3900 },
            { lengthIn: 204, cents: 4650 },
          ],
          [
            { lengthIn: 132, cents: 3000 },
            { lengthIn: 168, cents: 3900 },
            { lengthIn: 204, cents: 4450 },
          ],
        ),
        (lengths, kerfIn, stocks) => {
          const plan = cutStock(piecesOf(lengths), stocks, kerfIn)
          expectRightCuts(plan, lengths, kerfIn)
          expect(plan.proven).toBe(true)
          expect(costOf(plan, stocks)).toBe(bruteForce(lengths, stocks, kerfIn))
        },
      ),
      { numRuns: 250 },
    )
  })

  test('is within one stick of what the lengths alone ask for', () => {
    fc.assert(
      fc.property(
        // Short pieces pack closely, so the sum of lengths is a close bound.
        fc.array(sixteenths(10, 60), { minLength: 20, maxLength: 40 }),
        (lengths) => {
          const plan = cutStock(piecesOf(lengths), [{ lengthIn: 168 }], 0.125)
          expectRightCuts(plan, lengths, 0.125)
          expect(plan.sticks.length).toBeLessThanOrEqual(plan.leastSticks + 1)
        },
      ),
      { numRuns: 12 },
    )
  })

  test('never falls when a piece is added', () => {
    const stocks = [{ lengthIn: 168 }, { lengthIn: 204 }]
    fc.assert(
      fc.property(fc.array(sixteenths(20, 204), { minLength: 1, maxLength: 14 }), sixteenths(20, 204), (some, more) => {
        const before = costOf(cutStock(piecesOf(some), stocks, 0.125), stocks)
        const after = costOf(cutStock(piecesOf([...some, more]), stocks, 0.125), stocks)
        expect(after).toBeGreaterThanOrEqual(before)
      }),
      { numRuns: 60 },
    )
  })

  test('is proven quickly for many equal rails of a large roof', () => {
    const lengths = [
      ...Array.from({ length: 24 }, () => 137.5),
      ...Array.from({ length: 24 }, () => 61.3125),
      ...Array.from({ length: 12 }, () => 44.5),
    ]
    const started = performance.now()
    const plan = cutStock(piecesOf(lengths), [{ lengthIn: 168 }, { lengthIn: 204 }], 0.125)
    expect(plan.proven).toBe(true)
    expect(performance.now() - started).toBeLessThan(3000)
  })
})
