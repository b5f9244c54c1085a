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

/** Number of a week, and its level. */
export type Week = readonly [week: number, level: number]

/** The best day of each week. */
export function bestOfWeeks(days: readonly ObservedDay[]): Week[] {
  return weeksOf(days, (own) => Math.max(...own.map(({ ratio }) => ratio)))
}

/** Energy of each week over what its own weather lets expect. */
export function sumsOfWeeks(days: readonly ObservedDay[]): Week[] {
  return weeksOf(days, (own) => {
    const expected = own.reduce((sum, { kwh, ratio }) => sum + (ratio > 0 ? kwh / ratio : 0), 0)
    return expected > 0 ? own.reduce((sum, { kwh }) => sum + kwh, 0) / expected : 0
  })
}

function weeksOf(days: readonly ObservedDay[], levelOf: (own: readonly ObservedDay[]) => number): Week[] {
  const byWeek = new Map<number, ObservedDay[]>()
  const first = days[0]?.day ?? 0
  for (const day of days) {
    const week = Math.floor((day.day - first) / 7)
    const own = byWeek.get(week)
    if (own === undefined) byWeek.set(week, [day])
    else own.push(day)
  }
  return [...byWeek].map(([week, own]): Week => [week, levelOf(own)]).toSorted((a, b) => a[0] - b[0])
}

/**
 * Whether a fall is one that goes on, and not a step from one level to another: the straight line leaves less than the best two levels.
 */
export function isRamp(weeks: readonly Week[]): boolean {
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length
  const levels = weeks.map(([, level]) => level)
  const around = (values: readonly number[]): number => {
    const middle = mean(values)
    return values.reduce((sum, value) => sum + (value - middle) ** 2, 0)
  }
  const [middleWeek, middle] = [mean(weeks.map(([week]) => week)), mean(levels)]
  const spread = weeks.reduce((sum, [week]) => sum + (week - middleWeek) ** 2, 0)
  const slope = weeks.reduce((sum, [week, level]) => sum + (week - middleWeek) * (level - middle), 0) / spread
  const line = around(levels) - slope ** 2 * spread
  const steps = levels.map((_, at) => (at === 0 ? Infinity : around(levels.slice(0, at)) + around(levels.slice(at))))
  return line < Math.min(...steps)
}

/**
 * Slope of the clear-day envelope: the best day of each week, the median of all slopes between weeks, and a rank test.
 *
 * @param weekly What stands for a week: its best day, or all its days where the weather of each is known.
 * @returns undefined when the weeks are too few or no clear fall is seen.
 * @source Sen 1968, J. Am. Stat. Assoc. 63:1379 (slope); Mann 1945 and Kendall 1975 (test); from memory, unverified
 * @limits A change of the season's shading that the project file does not know looks the same.
 */
export function soilingTrend(
  days: readonly ObservedDay[],
  weekly: (days: readonly ObservedDay[]) => readonly Week[] = bestOfWeeks,
): SoilingTrend | undefined {
  const weeks = weekly(days)
  const count = weeks.length
  if (count < REVIEW_THRESHOLDS.soilingWeeks) return undefined
  const slopes: number[] = []
  let score = 0
  for (let at = 0; at < count; at += 1) {
    for (let later = at + 1; later < count; later += 1) {
      const [early, late] = [weeks[at]!, weeks[later]!]
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
