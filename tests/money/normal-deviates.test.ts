import { expect, test } from 'vitest'
import { normalDeviates, RandomSource } from '../../src/values/statistics/random.js'

test('deviates that are kept are those that a new source draws, whatever was asked before', () => {
  const drawn = (seed: number, count: number): number[] => {
    const source = new RandomSource(seed)
    return Array.from({ length: count }, () => source.normal())
  }
  for (const [seed, count] of [
    [7, 40],
    [7, 10],
    [8, 10],
    [7, 60],
    [7, 300_000],
    [7, 60],
  ] as const)
    expect(Array.from(normalDeviates(seed, count).subarray(0, Math.min(count, 60)))).toEqual(
      drawn(seed, Math.min(count, 60)),
    )
})

test('deviates have the moments of the standard normal distribution', () => {
  const deviates = normalDeviates(20261125, 200_000)
  const moment = (power: number): number => deviates.reduce((sum, z) => sum + z ** power, 0) / deviates.length
  // Five standard errors of each moment at 200,000 draws: sqrt(var / n) with var 1, 2, 15 and 96.
  expect(Math.abs(moment(1))).toBeLessThan(5 * Math.sqrt(1 / 200_000))
  expect(Math.abs(moment(2) - 1)).toBeLessThan(5 * Math.sqrt(2 / 200_000))
  expect(Math.abs(moment(3))).toBeLessThan(5 * Math.sqrt(15 / 200_000))
  expect(Math.abs(moment(4) - 3)).toBeLessThan(5 * Math.sqrt(96 / 200_000))
})
