import { describe, expect, it } from 'vitest'
import type { JudgedDay } from '../../src/fieldwork/review/judged-day.js'
import { findDrops } from '../../src/fieldwork/review/level/find-drops.js'
import { keptByDays } from '../../src/fieldwork/review/review-months.js'
import { mixedSpread } from '../../src/fieldwork/review/spread.js'

/** Days of known weather that give these shares of what is modelled. */
function daysAt(levels: readonly number[]): JudgedDay[] {
  return levels.map((level, day) => ({
    day,
    kwh: 20 * level,
    kindsKwh: Array.from({ length: 10 }, (_, kind) => 2 + 2 * kind),
    expectedKwh: 20,
    modelled: { kwh: 20, spread: 0.1 },
  }))
}
const run = (days: number, level: number): number[] => Array.from({ length: days }, () => level)

describe('two lower stretches', () => {
  it('are both held against the days outside of them, and not against each other', () => {
    const days = daysAt([...run(25, 1), ...run(50, 0.4), ...run(20, 1), ...run(25, 0.75)])
    const drops = findDrops(days, { correlation: 0.29, tolerance: () => 0.05, evidence: 10.5 })
    expect(drops.map(({ from, end }) => [from, end])).toEqual([
      [25, 75],
      [95, 120],
    ])
    // Levels are tried 1.5 % apart.
    drops.forEach(({ level }, at) => expect(Math.abs(level / [0.4, 0.75][at]! - 1)).toBeLessThan(0.015))
    // The weaker is found when the stronger is known, and held against the good days alone.
    expect(Math.abs(drops[1]!.usualLevel - 1)).toBeLessThan(0.015)
  })
})

describe('the spread of days of which some have their own weather', () => {
  const longTerm = { method: 0.03, slowWeather: 0.04 }
  it.each([
    [0, 0.03, 0.04],
    [1, 0.05, 0],
    [0.25, 0.035, 0.03],
  ])('with a share of %d of the energy modelled is %d of the method and %d of slow weather', (share, method, slow) => {
    const mixed = mixedSpread(longTerm, 0.05, share)
    expect(mixed.method).toBeCloseTo(method, 9)
    expect(mixed.slowWeather).toBeCloseTo(slow, 9)
  })
})

describe('sums of months that are kept', () => {
  const days = (from: string, count: number) =>
    Array.from({ length: count }, (_, at) => ({
      firstDay: Date.parse(`${from}T00:00:00Z`) / 86_400_000 + at,
      days: 1,
      kwh: 1,
      moduleKwh: [],
    }))
  it.each([
    ['one January is as another', '2025-01-01', '2026-01-01', true, 1],
    ['not where days have weather of their own', '2025-01-01', '2026-01-01', false, 2],
    ['the first 28 days of a leap February stand otherwise in their month', '2023-02-01', '2024-02-01', true, 2],
    ['a month is not its neighbour', '2025-01-01', '2025-03-01', true, 2],
  ])('%s', (_, one, other, isKept, times) => {
    let called = 0
    const total = { lowestKwh: 0, stepKwh: 1, probability: new Float64Array([1]), meanKwh: 0 }
    const courseOf = keptByDays(() => ({ total, at: new Map(), modelledKwh: (called += 1) }), isKept)
    courseOf(days(one, 28))
    courseOf(days(other, 28))
    expect(called).toBe(times)
  })
})
