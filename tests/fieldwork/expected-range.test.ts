// The stated 80 % range against days drawn from the kinds of day by other code than the one that made the range.
import { describe, expect, it } from 'vitest'
import { kindTransitions } from '../../src/fieldwork/review/kind-transitions.js'
import { normalBelow, normalQuantile } from '../../src/values/index.js'
import { kindsOfDay, quantileKwh, shareBelow, sumDistribution } from '../../src/fieldwork/review/index.js'
import { dayOf, drawKinds, model, randomOf, run, shareOfNormal } from './synthetic.js'

const TRIALS = 2000
const dates = ['2026-03-20', '2026-06-15', '2026-11-01']
/** Each length and each season once; every length in every season in the night. */
const periods = [7, 30, 90].flatMap((length, at) =>
  dates
    .filter((_from, season) => season === at || process.env['NIGHTLY'] !== undefined)
    .map((from) => ({ length, from })),
)

function oddsOf(from: string, length: number) {
  return Array.from({ length }, (_, at) => ({ day: dayOf(from) + at, kindsKwh: kindsOfDay(model, dayOf(from) + at) }))
}

describe.each([0, 0.29])('days with a correlation of %s from one to the next', (correlation) => {
  it.each(periods)('the 80 % range of $length days from $from holds 80 % of 2,000 trials', ({ from, length }) => {
    const odds = oddsOf(from, length)
    const { total } = sumDistribution(odds, correlation)
    const [low, high] = [quantileKwh(total, 0.1), quantileKwh(total, 0.9)]
    let inside = 0
    let mean = 0
    for (let trial = 0; trial < TRIALS; trial += 1) {
      const kinds = drawKinds(length, correlation, 1000 * length + trial)
      const sum = odds.reduce((kwh, { kindsKwh }, at) => kwh + (kindsKwh[kinds[at] as number] as number), 0)
      mean += sum / TRIALS
      if (sum >= low && sum <= high) inside += 1
    }
    expect(inside / TRIALS).toBeGreaterThan(0.77)
    expect(inside / TRIALS).toBeLessThan(0.83)
    expect(Math.abs(mean / total.meanKwh - 1)).toBeLessThan(0.02)
  })
})

it('the range with the method holds 80 % of trials whose system is off by a constant factor', () => {
  const odds = oddsOf('2026-06-01', 30)
  const { total } = sumDistribution(odds, 0.29)
  const [low, high] = [quantileKwh(total, 0.1, 0.08), quantileKwh(total, 0.9, 0.08)]
  const random = randomOf(77)
  let inside = 0
  for (let trial = 0; trial < TRIALS; trial += 1) {
    const kinds = drawKinds(30, 0.29, 500_000 + trial)
    const factor = 1 + 0.08 * random.normal()
    const sum = factor * odds.reduce((kwh, { kindsKwh }, at) => kwh + (kindsKwh[kinds[at] as number] as number), 0)
    if (sum >= low && sum <= high) inside += 1
  }
  expect(inside / TRIALS).toBeGreaterThan(0.77)
  expect(inside / TRIALS).toBeLessThan(0.83)
})

it('a day has one chance in ten of each kind', () => {
  const [odds] = oddsOf('2026-05-16', 1)
  const { total } = sumDistribution(odds === undefined ? [] : [odds], 0.29)
  const kinds = odds?.kindsKwh ?? []
  for (let kind = 1; kind < 10; kind += 1) {
    const between = ((kinds[kind - 1] as number) + (kinds[kind] as number)) / 2
    expect(shareBelow(total, between)).toBeCloseTo(kind / 10, 6)
  }
})

it('two days against all hundred pairs', () => {
  const odds = oddsOf('2026-02-10', 2)
  const { total } = sumDistribution(odds, 0)
  const sums = (odds[0]?.kindsKwh ?? [])
    .flatMap((one) => (odds[1]?.kindsKwh ?? []).map((two) => one + two))
    .toSorted((a, b) => a - b)
  for (const at of [10, 35, 50, 80, 95]) {
    const between = ((sums[at - 1] as number) + (sums[at] as number)) / 2
    expect(Math.abs(shareBelow(total, between) - at / 100)).toBeLessThan(0.011)
  }
})

it('the kinds of a month have the mean of the estimate, and the season within the month does not change it', () => {
  for (let month = 0; month < 12; month += 1) {
    const days = new Date(Date.UTC(2026, month + 1, 0)).getUTCDate()
    const first = Date.UTC(2026, month, 1) / 86_400_000
    let sum = 0
    for (let at = 0; at < days; at += 1) sum += kindsOfDay(model, first + at).reduce((a, b) => a + b, 0) / 10
    expect(sum).toBeCloseTo(run.result.values.monthly[month]?.ac_kwh as number, 6)
  }
})

it('transitions keep every kind equally probable and have the stated correlation', () => {
  const table = kindTransitions(0.29)
  for (let kind = 0; kind < 10; kind += 1) {
    expect(table[kind]?.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9)
    expect(table.reduce((sum, row) => sum + (row[kind] as number), 0)).toBeCloseTo(1, 9)
  }
  const kinds = drawKinds(50_000, 0.29, 9)
  const counts = table.map((row) => row.map(() => 0))
  kinds
    .slice(1)
    .forEach(
      (to, at) => ((counts[kinds[at] as number] as number[])[to] = (counts[kinds[at] as number]?.[to] as number) + 1),
    )
  // About 5,000 days of each kind: a cell has a standard error of sqrt(p (1 - p) / 5000); five of them for a hundred cells.
  table.forEach((row, from) =>
    row.forEach((share, to) => {
      const seen = (counts[from]?.[to] as number) / (counts[from]?.reduce((a, b) => a + b, 0) as number)
      expect(Math.abs(seen - share)).toBeLessThan(5 * Math.sqrt((share * (1 - share)) / 4800))
    }),
  )
})

it('the normal distribution against integration', () => {
  for (const z of [-3, -1.2816, -0.3, 0, 0.7, 1.9]) expect(normalBelow(z)).toBeCloseTo(shareOfNormal(z), 6)
  expect(normalQuantile(0.9)).toBeCloseTo(1.28155, 4)
})
