import { describe, expect, it } from 'vitest'
import type { JudgedDay } from '../../src/fieldwork/review/judged-day.js'
import { yearOnYear } from '../../src/fieldwork/review/signs/degradation.js'
import { soilingRuns } from '../../src/fieldwork/review/signs/soiling-runs.js'
import { isRamp, sumsOfWeeks } from '../../src/fieldwork/review/signs/soiling.js'
import { randomOf } from './random-of.js'

const LEAST = { overall: 0.1, perWeek: 0.012 }

/** Days of known weather, each modelled 8 % wrong. @param left Of the output. */
function observed(left: (day: number) => number, count = 200) {
  const random = randomOf(41)
  return Array.from({ length: count }, (_, day) => {
    const ratio = left(day) * (1 + 0.08 * random.normal())
    return { day, kwh: 20 * ratio, ratio }
  })
}

describe('dirt where the weather of each day is known', () => {
  const dirty = (day: number): number => (day >= 50 && day < 140 ? 1 - 0.003 * (day - 50) : 1)
  it('is a fall that goes on, with its days and its size', () => {
    const [run, ...others] = soilingRuns(observed(dirty), LEAST, true)
    expect(others).toEqual([])
    // The stretch that shows it most clearly may begin some weeks before it.
    expect(run!.fromDay).toBeLessThanOrEqual(70)
    expect(run!.toDay).toBeGreaterThanOrEqual(120)
    // 0.3 % a day.
    expect(run!.lossPerWeek).toBeGreaterThan(0.012)
    expect(run!.lossPerWeek).toBeLessThan(0.03)
  })
  it('shows in weeks of which one day reads as if the modules were clean', () => {
    const days = observed(dirty).map((day) => (day.day % 7 === 3 ? { ...day, kwh: 20, ratio: 1 } : day))
    expect(soilingRuns(days, LEAST, true)).toHaveLength(1)
  })
  it('is no step from one level to another', () => {
    expect(
      soilingRuns(
        observed((day) => (day >= 90 ? 0.6 : 1)),
        LEAST,
        true,
      ),
    ).toEqual([])
  })
  it('counts all days of a week by their energy', () => {
    const days = [0.5, 1, 1, 1, 1, 1, 1, 0.8].map((ratio, day) => ({ day, ratio, kwh: (day === 0 ? 4 : 1) * ratio }))
    // Modelled: 4 and six times 1; then 1.
    expect(sumsOfWeeks(days)).toEqual([
      [0, (4 * 0.5 + 6) / 10],
      [1, expect.closeTo(0.8, 12)],
    ])
  })
  it.each([
    ['a line', [1, 0.9, 0.8, 0.7, 0.6, 0.5], true],
    ['a step', [1, 1, 1, 0.5, 0.5, 0.5], false],
  ])('%s is told from the other by what it leaves', (_, levels, is) => {
    expect(isRamp(levels.map((level, week) => [week, level] as const))).toBe(is)
  })
})

it('days a year apart are compared only where both have their own weather, or neither', () => {
  // The first year is judged by kinds of day, whose mean lies a fifth below what these clear days give; nothing has aged.
  const days = Array.from({ length: 1095 }, (_, day): JudgedDay => ({
    day,
    kwh: 20,
    kindsKwh: Array.from({ length: 10 }, (__, kind) => 12 + kind),
    expectedKwh: day < 365 ? 16 : 20,
    modelled: day < 365 ? undefined : { kwh: 20, spread: 0.1 },
  }))
  expect(yearOnYear(days)).toMatchObject({ pairs: 365, loss_pct_per_year: expect.closeTo(0, 9) as number })
})
