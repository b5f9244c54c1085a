import { REVIEW_THRESHOLDS } from '../../../tables/fieldwork/index.js'
import { normalBelow } from '../../../values/index.js'
import type { ObservedDay } from './observed-day.js'

/** A fall of what clear days give. */
export interface SoilingTrend {
  readonly weeks: number
  /** Loss of the clear-day envelope a week, as a share (positive = falling). */
  readonly lossPerWeek: number
  readonly lossOverall: number
  /** Chance of so clear a fall without any trend. */
  readonly chance: number
}

/**
 * Slope of the clear-day envelope: the best day of each week, the median of all slopes between weeks, and a rank test.
 *
 * @returns undefined when the weeks are too few or no clear fall is seen.
 * @source Sen 1968, J. Am. Stat. Assoc. 63:1379 (slope); Mann 1945 and Kendall 1975 (test); from memory, unverified
 * @limits A change of the season's shading that the project file does not know looks the same.
 */
export function soilingTrend(days: readonly ObservedDay[]): SoilingTrend | undefined {
  const byWeek = new Map<number, number>()
  const first = days[0]?.day ?? 0
  for (const { day, ratio } of days) {
    const week = Math.floor((day - first) / 7)
    byWeek.set(week, Math.max(byWeek.get(week) ?? 0, ratio))
  }
  const weeks = [...byWeek].toSorted((a, b) => a[0] - b[0])
  const count = weeks.length
  if (count < REVIEW_THRESHOLDS.soilingWeeks) return undefined
  const slopes: number[] = []
  let score = 0
  for (let at = 0; at < count; at += 1) {
    for (let later = at + 1; later < count; later += 1) {
      const [early, late] = [weeks[at] as [number, number], weeks[later] as [number, number]]
      slopes.push((late[1] - early[1]) / (late[0] - early[0]))
      score += Math.sign(late[1] - early[1])
    }
  }
  const slope = median(slopes)
  const level = median(weeks.map(([, ratio]) => ratio))
  const spread = Math.sqrt((count * (count - 1) * (2 * count + 5)) / 18)
  const chance = normalBelow((score + 1) / spread)
  const lossPerWeek = level > 0 ? -slope / level : 0
  const span = (weeks.at(-1)?.[0] ?? 0) - (weeks[0]?.[0] ?? 0)
  const lossOverall = lossPerWeek * span
  if (chance > REVIEW_THRESHOLDS.soilingChance || lossOverall < REVIEW_THRESHOLDS.soilingLoss) return undefined
  return { weeks: count, lossPerWeek, lossOverall, chance }
}

export function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort()
  const middle = sorted.length / 2
  return sorted.length % 2 === 1
    ? (sorted[Math.floor(middle)] ?? 0)
    : ((sorted[middle - 1] ?? 0) + (sorted[middle] ?? 0)) / 2
}
