import { describe, expect, test } from 'vitest'
import {
  findRoot,
  normalBelow,
  normalDeviates,
  normalQuantile,
  quantile,
  RandomSource,
} from '../../src/values/index.js'

describe('the normal law', () => {
  // Standard normal table, NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1 (from memory), here with more places.
  test.each([
    [0, 0.5],
    [0.5, 0.691462461],
    [1, 0.841344746],
    [1.5, 0.933192799],
    [2, 0.977249868],
    [3, 0.998650102],
    [-1, 0.158655254],
    [-2.5, 0.006209665],
  ])('below %f lies %f', (z, share) => {
    expect(Math.abs(normalBelow(z) - share)).toBeLessThan(7.5e-8)
  })

  test('far out there is nothing left', () => {
    expect([normalBelow(9), normalBelow(-9)]).toEqual([1, 0])
  })

  test.each([
    [0.5, 0],
    [0.9, 1.281552],
    [0.975, 1.959964],
    [0.01, -2.326348],
  ])('a share of %f lies below %f', (share, z) => {
    expect(normalQuantile(share)).toBeCloseTo(z, 5)
  })
})

describe('quantiles of samples', () => {
  // Straight lines between the samples, the first at 0 and the last at 1 (definition 7 of Hyndman & Fan 1996).
  test.each([
    [0, 1],
    [0.25, 1.75],
    [0.5, 2.5],
    [0.9, 3.7],
    [1, 4],
  ])('of 1, 2, 3, 4 at %f', (share, value) => {
    expect(quantile(Float64Array.of(1, 2, 3, 4), share)).toBeCloseTo(value, 12)
  })

  test('an infinite last sample spoils only what reaches it', () => {
    expect(quantile(Float64Array.of(1, 2, Infinity), 0.5)).toBe(2)
    expect(quantile(Float64Array.of(1, 2, Infinity), 1)).toBe(Infinity)
  })
})

describe('seeded numbers', () => {
  test('the same seed gives the same numbers, another seed others', () => {
    const three = (seed: number): number[] => {
      const source = new RandomSource(seed)
      return [source.uniform(), source.uniform(), source.uniform()]
    }
    expect(three(7)).toEqual(three(7))
    expect(three(7)).not.toEqual(three(8))
  })

  test('uniform ones lie evenly between 0 and 1', () => {
    const source = new RandomSource(1)
    const tenths = Array.from({ length: 10 }, () => 0)
    for (let i = 0; i < 20_000; i += 1) tenths[Math.floor(source.uniform() * 10)]! += 1
    // Binomial, 20,000 draws of a tenth: standard deviation 42.
    for (const count of tenths) expect(Math.abs(count - 2000)).toBeLessThan(4 * 42.5)
  })

  test('normal ones have mean 0, variance 1 and the shares of the law', () => {
    const deviates = [...normalDeviates(3, 20_000)]
    const mean = deviates.reduce((sum, each) => sum + each, 0) / deviates.length
    const variance = deviates.reduce((sum, each) => sum + (each - mean) ** 2, 0) / deviates.length
    expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(20_000))
    expect(Math.abs(variance - 1)).toBeLessThan(4 * Math.sqrt(2 / 20_000))
    const within = deviates.filter((each) => Math.abs(each) < 1).length / deviates.length
    expect(Math.abs(within - 0.682689)).toBeLessThan(4 * Math.sqrt((0.683 * 0.317) / 20_000))
  })
})

describe('roots', () => {
  test('where a line, a curve and a jump cross zero', () => {
    expect(findRoot((x) => 2 * x - 3, 0, 5, 1e-9)).toBeCloseTo(1.5, 8)
    expect(findRoot((x) => x ** 3 - 2, 0, 5, 1e-9)).toBeCloseTo(Math.cbrt(2), 8)
    expect(findRoot((x) => (x < 0.3 ? -1 : 1), 0, 5, 1e-9)).toBeCloseTo(0.3, 8)
  })

  test('none where both ends have the same sign', () => {
    expect(findRoot((x) => x ** 2 + 1, -1, 1, 1e-9)).toBeUndefined()
  })
})
