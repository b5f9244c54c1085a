import { KIND_COUNT } from '../day-model.js'
import type { JudgedDay } from '../judged-day.js'

/** Levels of output that are tried, as shares of the estimate: evenly apart in their logarithm. */
const LOWEST_LEVEL = 0.04
const HIGHEST_LEVEL = 1.5
const LEVEL_STEP = 0.015
export const LEVELS: readonly number[] = Array.from(
  { length: Math.floor(Math.log(HIGHEST_LEVEL / LOWEST_LEVEL) / LEVEL_STEP) + 1 },
  (_, at) => LOWEST_LEVEL * Math.exp(at * LEVEL_STEP),
)

/** Share of days that no kind of day explains: no single day may decide alone. Our own judgement. */
const ODD_DAYS = 0.03
/** Highest output over that of the clearest kind of day that odd days are spread over. */
const ODD_UP_TO = 1.5
/** A kind of day is at least this wide, as a share of the clearest: how far its mean is sure. Our own judgement. */
const LEAST_WIDTH = 0.05
/** A kind reaches so far towards its neighbours. */
const REACH = 0.6

/**
 * Logarithm of the odds of each day at each level, as running sums: entry `d * LEVELS.length + l` is the sum of the days
 * before day `d`, so that any stretch of days is a difference of two entries.
 *
 * @param days In order. Without their own weather a day is a mixture of its ten kinds; with it, near what was modelled.
 */
export function runningOdds(days: readonly JudgedDay[]): Float64Array {
  const width = LEVELS.length
  const sums = new Float64Array((days.length + 1) * width)
  days.forEach((day, at) => {
    const odds = day.modelled === undefined ? mixtureOdds(day) : modelledOdds(day, day.modelled)
    for (let level = 0; level < width; level += 1) {
      sums[(at + 1) * width + level] = sums[at * width + level]! + odds(LEVELS[level]!)
    }
  })
  return sums
}

function mixtureOdds({ kwh, kindsKwh }: JudgedDay): (level: number) => number {
  const best = kindsKwh[KIND_COUNT - 1]!
  const centres = kindsKwh.map((kind) => kind / best)
  const widths = centres.map((_, at) => {
    const gap = (centres[Math.min(KIND_COUNT - 1, at + 1)]! - centres[Math.max(0, at - 1)]!) / 2
    return Math.max(LEAST_WIDTH, REACH * gap)
  })
  const ratio = kwh / best
  return (level) => {
    const scaled = ratio / level
    let density = 0
    for (let kind = 0; kind < KIND_COUNT; kind += 1) {
      const z = (scaled - centres[kind]!) / widths[kind]!
      if (z < 6 && z > -6) density += Math.exp((-z * z) / 2) / widths[kind]!
    }
    const usual = ((1 - ODD_DAYS) * density) / (KIND_COUNT * Math.sqrt(2 * Math.PI))
    return Math.log(usual / level + ODD_DAYS / ODD_UP_TO)
  }
}

function modelledOdds({ kwh }: JudgedDay, { kwh: modelled, spread }: NonNullable<JudgedDay['modelled']>) {
  return (level: number): number => {
    const wide = spread * modelled * level
    const z = wide > 0 ? (kwh - modelled * level) / wide : 0
    const usual = wide > 0 ? Math.exp(-Math.min(700, (z * z) / 2)) / (Math.sqrt(2 * Math.PI) * spread * level) : 0
    return Math.log((1 - ODD_DAYS) * usual + ODD_DAYS / ODD_UP_TO)
  }
}
