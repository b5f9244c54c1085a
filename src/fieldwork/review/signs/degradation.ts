import { RandomSource } from '../../../values/index.js'
import type { JudgedDay } from '../judged-day.js'
import { median } from './soiling.js'

/** Change of output by age, from days a year apart. */
export interface YearOnYear {
  /** Loss of output a year, %; negative when it rises. */
  readonly loss_pct_per_year: number
  readonly low_pct_per_year: number
  readonly high_pct_per_year: number
  readonly pairs: number
}

const YEAR_DAYS = 365
/** Fewer pairs than this say nothing. */
const LEAST_PAIRS = 300
/** Only days that give this share of the clearest kind: dull days have more of the weather than of the plant. */
const CLEAR_ENOUGH = 0.5
const BLOCK_DAYS = 30
const DRAWS = 400
const SEED = 20_260_102

/**
 * Year on year: the median of the changes between days that are a year apart, over the energy expected of each; its interval of 95 %
 * by drawing blocks of thirty days anew, so that days which hang together are not counted as many.
 *
 * @returns undefined below two years.
 * @source year-on-year method: Hasselbrink et al. 2013; Jordan et al., IEEE Journal of Photovoltaics 8(2) 2018 (from memory)
 * @limits Tested on simulated years only. Dirt and shade that grow from year to year count as ageing.
 */
export function yearOnYear(days: readonly JudgedDay[]): YearOnYear | undefined {
  const byDay = new Map(days.map((day) => [day.day, day]))
  const byBlock = new Map<number, number[]>()
  const ratio = ({ kwh, expectedKwh }: JudgedDay): number => kwh / expectedKwh
  const counts = (day: JudgedDay): boolean =>
    day.expectedKwh > 0 &&
    (day.modelled !== undefined || day.kwh > CLEAR_ENOUGH * day.kindsKwh[day.kindsKwh.length - 1]!)
  for (const day of days) {
    const later = byDay.get(day.day + YEAR_DAYS)
    if (later === undefined || !counts(day) || !counts(later)) continue
    if (later.kwh <= 0 || day.kwh <= 0) continue
    // A day of known weather beside one of a kind of day would show how the two differ, and no age.
    if ((later.modelled === undefined) !== (day.modelled === undefined)) continue
    const block = Math.floor(day.day / BLOCK_DAYS)
    byBlock.set(block, [...(byBlock.get(block) ?? []), Math.log(ratio(later) / ratio(day))])
  }
  const blocks = [...byBlock.values()]
  const changes = blocks.flat()
  if (changes.length < LEAST_PAIRS) return undefined
  const random = new RandomSource(SEED)
  const drawn = Array.from({ length: DRAWS }, () =>
    median(Array.from({ length: blocks.length }, () => blocks[Math.floor(random.uniform() * blocks.length)]!).flat()),
  ).toSorted((a, b) => a - b)
  const loss = (change: number): number => 100 * (1 - Math.exp(change))
  return {
    loss_pct_per_year: loss(median(changes)),
    low_pct_per_year: loss(drawn[Math.floor(0.975 * DRAWS)]!),
    high_pct_per_year: loss(drawn[Math.floor(0.025 * DRAWS)]!),
    pairs: changes.length,
  }
}
