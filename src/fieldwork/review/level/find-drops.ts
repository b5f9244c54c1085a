import { REVIEW_DESIGN } from '../../../tables/fieldwork/index.js'
import type { JudgedDay } from '../judged-day.js'
import { LEVELS, runningOdds } from './day-odds.js'

/** A stretch of days at a lower level than the others. */
export interface Drop {
  /** Index of its first day, and of the day after its last. */
  readonly from: number
  readonly end: number
  /** Output over that of the estimate, in the stretch and outside it. */
  readonly level: number
  readonly usualLevel: number
  /** Logarithm of how much better a drop explains the days than none, weather that lasts taken off. */
  readonly evidence: number
}

const LENGTHS = [5, 7, 10, 14, 20, 28, 40, 56, 80, 112, 160, 224, 320, 450, 640, 900, 1300, 1800, 2600]
/** Begins of stretches are first tried so many days apart. */
const STRIDE = 3

/** What a search for drops rests on. */
export interface DropBasis {
  /** Correlation of one day with the next. */
  readonly correlation: number
  /** How far a stretch of days may lie off the estimate without a fault, as a share. @param end Index of the day after it. */
  readonly tolerance: (from: number, end: number) => number
  /** Evidence that a drop needs. */
  readonly evidence: number
}

/** The level that explains all days best, as a share of the estimate. */
export function usualLevel(days: readonly JudgedDay[]): number {
  const sums = runningOdds(days)
  return LEVELS[bestOf(sumsWithout(sums, days.length, []))]!
}

/**
 * Looks for stretches in which the output is lower than in the others. All days of a stretch are judged together: the evidence of
 * days that hang together counts less, by (1 - r) / (1 + r).
 *
 * @param days In order; days without output are to be taken out before.
 * @limits A fault that is there from the first to the last day is no drop; see the level itself.
 */
export function findDrops(days: readonly JudgedDay[], basis: DropBasis): Drop[] {
  const drops: Drop[] = []
  const sums = runningOdds(days)
  while (drops.length < REVIEW_DESIGN.mostDrops) {
    const next = strongestDrop(sums, days.length, drops, basis)
    if (next === undefined) break
    drops.push(next)
  }
  return drops.toSorted((a, b) => a.from - b.from)
}

function strongestDrop(sums: Float64Array, count: number, found: readonly Drop[], basis: DropBasis): Drop | undefined {
  const rest = sumsWithout(sums, count, found)
  const usual = bestOf(rest)
  let best: Drop | undefined
  const outside = count - found.reduce((sum, drop) => sum + drop.end - drop.from, 0)
  const tryAt = (from: number, end: number): void => {
    if (from < 0 || end > count || end - from < REVIEW_DESIGN.leastDropDays) return
    if (found.some((drop) => from < drop.end && end > drop.from)) return
    const drop = dropOf(sums, rest, { from, end, usual, outside: outside - (end - from) }, basis)
    if (drop !== undefined && drop.evidence > (best?.evidence ?? basis.evidence)) best = drop
  }
  for (let from = 0; from < count; from += STRIDE) {
    for (const length of LENGTHS) tryAt(from, from + length)
    tryAt(from, count)
  }
  // Both ends to the day.
  for (let round = 0; round < 12; round += 1) {
    const held: Drop | undefined = best
    if (held === undefined) break
    const { from, end } = held
    for (const move of [-14, -7, -3, -2, -1, 1, 2, 3, 7, 14]) {
      tryAt(from + move, end)
      tryAt(from, Math.min(count, end + move))
    }
    if (best === held) break
  }
  return best
}

/** Level above which days outside a drop are luck, unless all days together lie as high. */
const HIGHEST_USUAL = LEVELS.findIndex((level) => level > REVIEW_DESIGN.highestUsualLevel)

function dropOf(
  sums: Float64Array,
  rest: Float64Array,
  { from, end, usual, outside }: { from: number; end: number; usual: number; outside: number },
  { correlation, tolerance }: DropBasis,
): Drop | undefined {
  // The level outside: at first sight that of all days, then without the stretch.
  // A few bright weeks above the estimate are luck, and no level that the others fell from.
  const most = Math.max(usual, HIGHEST_USUAL)
  const around = outside < REVIEW_DESIGN.leastDaysOutside ? usual : Math.min(most, bestOutside(sums, rest, from, end))
  const usualOutside = LEVELS[around]!
  const steps = Math.ceil(-Math.log(1 - tolerance(from, end)) / LEVEL_STEP_LOG)
  const [low, same] = [around - steps, Math.min(LEVELS.length - 1, around + steps)]
  if (low <= 0) return undefined
  const below = bestWithin(sums, from, end, 0, low - 1)
  const within = bestWithin(sums, from, end, low, same)
  const evidence = ((below.odds - within.odds) * (1 - correlation)) / (1 + correlation)
  return { from, end, level: LEVELS[below.at]!, usualLevel: usualOutside, evidence }
}

const LEVEL_STEP_LOG = Math.log(LEVELS[1]! / LEVELS[0]!)

function bestWithin(sums: Float64Array, from: number, end: number, low: number, high: number) {
  const width = LEVELS.length
  let [at, odds] = [low, -Infinity]
  for (let level = low; level <= high; level += 1) {
    const sum = sums[end * width + level]! - sums[from * width + level]!
    if (sum > odds) {
      at = level
      odds = sum
    }
  }
  return { at, odds }
}

/** Sums of the odds of all days but those of some stretches, by level. */
function sumsWithout(sums: Float64Array, count: number, without: readonly Pick<Drop, 'from' | 'end'>[]): Float64Array {
  const width = LEVELS.length
  return Float64Array.from({ length: width }, (_, level) => {
    let sum = sums[count * width + level]!
    for (const { from, end } of without) sum -= sums[end * width + level]! - sums[from * width + level]!
    return sum
  })
}

function bestOf(odds: Float64Array): number {
  return odds.reduce((best, own, at) => (own > odds[best]! ? at : best), 0)
}

/** The level that explains the days best which are left without one more stretch. */
function bestOutside(sums: Float64Array, rest: Float64Array, from: number, end: number): number {
  const { length } = rest
  const [begin, after] = [from * length, end * length]
  let [at, odds] = [0, -Infinity]
  for (let level = 0; level < length; level += 1) {
    const sum = rest[level]! - (sums[after + level]! - sums[begin + level]!)
    if (sum > odds) {
      at = level
      odds = sum
    }
  }
  return at
}
