import { REVIEW_DESIGN } from '../../../tables/fieldwork/index.js'
import { bestOfWeeks, isRamp, soilingTrend, sumsOfWeeks, type SoilingTrend } from './soiling.js'
import type { ObservedDay } from './observed-day.js'

/** A fall between two cleanings. */
export interface SoilingRun extends SoilingTrend {
  readonly fromDay: number
  readonly toDay: number
  /** Whether the output came back within a fortnight after it, as rain makes it. */
  readonly hasRecovered: boolean
}

export interface LeastLoss {
  readonly overall: number
  readonly perWeek: number
}

/** Lengths of stretches that are tried, weeks. */
const LENGTHS = [7, 10, 14, 18, 24]
const STEP_WEEKS = 2
/** Where the weather of each day is known weeks tell more, so that the beginning of a fall is looked for to the week. */
const LENGTHS_KNOWN = [7, 10, 12, 14, 18, 24]

/**
 * Looks for stretches in which what clear days give falls week by week, and for a rise after them.
 *
 * @param isKnown Whether the weather of each day is known: all days of a week count then, and a step is no dirt.
 * @param least Loss that a stretch needs in all and in a week, as shares: what seasons lie off the estimate makes less.
 * @limits A season in which the estimate is too high at its end looks the same; hence the tolerance.
 */
export function soilingRuns(days: readonly ObservedDay[], least: LeastLoss, isKnown = false): SoilingRun[] {
  if (days.length === 0) return []
  const [first, last] = [days[0]!.day, days.at(-1)!.day]
  const found: SoilingRun[] = []
  for (const weeks of isKnown ? LENGTHS_KNOWN : LENGTHS) {
    for (let from = first; from + 7 * weeks <= last + 8; from += 7 * (isKnown ? 1 : STEP_WEEKS)) {
      const end = from + 7 * weeks
      const inside = days.filter(({ day }) => day >= from && day < end)
      const trend = soilingTrend(inside, isKnown ? sumsOfWeeks : bestOfWeeks)
      if (trend === undefined || trend.chance > REVIEW_DESIGN.soilingChance) continue
      if (trend.lossOverall < least.overall || trend.lossPerWeek < least.perWeek) continue
      if (isKnown && !isRamp(sumsOfWeeks(inside))) continue
      const level = best(days, end - 14, end)
      const after = best(days, end, end + 14)
      found.push({
        ...trend,
        fromDay: from,
        toDay: Math.min(last, end - 1),
        hasRecovered: level > 0 && after > level * (1 + trend.lossOverall / 2),
      })
    }
  }
  const kept: SoilingRun[] = []
  for (const run of found.toSorted((a, b) => a.chance - b.chance)) {
    if (kept.every((other) => run.toDay < other.fromDay || run.fromDay > other.toDay)) kept.push(run)
  }
  return kept.toSorted((a, b) => a.fromDay - b.fromDay)
}

function best(days: readonly ObservedDay[], from: number, end: number): number {
  return days.reduce((most, { day, ratio }) => (day >= from && day < end ? Math.max(most, ratio) : most), 0)
}
