import { KIND_COUNT } from './day-model.js'
import { kindTransitions, overDays } from './kind-transitions.js'
import { normalBelow } from './normal.js'

/** A day with what it may give, kWh, kinds of equal probability, lowest first. */
export interface DayOdds {
  readonly day: number
  readonly kindsKwh: readonly number[]
}

/** Distribution of a sum of energy: probabilities of values that are `stepKwh` apart from `lowestKwh` on. */
export interface SumDistribution {
  readonly lowestKwh: number
  readonly stepKwh: number
  readonly probability: Float64Array
  readonly meanKwh: number
}

const CELLS = 2500
/** Days apart after which two days know nothing of each other. */
const MEMORY_DAYS = 8

/**
 * Distribution of the sum over days, exactly (no random numbers): kind by kind and day by day, with days that hang
 * together by a chain of first order.
 *
 * @param days In order; days that are missing in between weaken the link.
 * @param correlation Of neighbouring days, 0 for independent ones.
 * @param marks Numbers of days after which the distribution so far is handed back too.
 * @limits Values are rounded to 1/2500 of the range between the lowest and the highest sum, without bias of the mean.
 */
export function sumDistribution(
  days: readonly DayOdds[],
  correlation: number,
  marks: ReadonlySet<number> = new Set(),
): { readonly total: SumDistribution; readonly at: ReadonlyMap<number, SumDistribution> } {
  const low = days.map(({ kindsKwh }) => kindsKwh[0] as number)
  const range = days.reduce((sum, { kindsKwh }, at) => sum + (kindsKwh[KIND_COUNT - 1] as number) - (low[at] as number), 0)
  const stepKwh = range > 0 ? range / (CELLS - 2) : 1
  const table = kindTransitions(correlation)
  let state: Float64Array[] = Array.from({ length: KIND_COUNT }, () => new Float64Array(CELLS))
  for (const kind of state) kind[0] = 1 / KIND_COUNT
  let [lowestKwh, used, meanKwh] = [0, 1, 0]
  const at = new Map<number, SumDistribution>()
  const snapshot = (): SumDistribution => ({ lowestKwh, stepKwh, probability: total(state), meanKwh })
  days.forEach(({ day, kindsKwh }, index) => {
    const before = days[index - 1]?.day
    const apart = before === undefined ? MEMORY_DAYS : day - before
    const link = apart >= MEMORY_DAYS ? kindTransitions(0) : overDays(table, apart)
    state = advance(state, used, link, kindsKwh.map((kwh) => (kwh - (low[index] as number)) / stepKwh))
    lowestKwh += low[index] as number
    meanKwh += kindsKwh.reduce((sum, kwh) => sum + kwh, 0) / KIND_COUNT
    used = Math.min(CELLS, used + Math.ceil(((kindsKwh[KIND_COUNT - 1] as number) - (low[index] as number)) / stepKwh) + 1)
    if (marks.has(index)) at.set(index, snapshot())
  })
  return { total: snapshot(), at }
}

function advance(
  state: readonly Float64Array[],
  used: number,
  link: readonly (readonly number[])[],
  shifts: readonly number[],
): Float64Array[] {
  return shifts.map((shift, to) => {
    const result = new Float64Array(CELLS)
    const whole = Math.floor(shift)
    const upper = shift - whole
    for (let from = 0; from < KIND_COUNT; from += 1) {
      const share = link[from]?.[to] ?? 0
      const source = state[from] as Float64Array
      for (let cell = 0; cell < used; cell += 1) {
        const mass = (source[cell] as number) * share
        if (mass === 0) continue
        const target = Math.min(CELLS - 2, cell + whole)
        result[target] = (result[target] as number) + mass * (1 - upper)
        result[target + 1] = (result[target + 1] as number) + mass * upper
      }
    }
    return result
  })
}

function total(state: readonly Float64Array[]): Float64Array {
  const sum = new Float64Array(CELLS)
  for (const kind of state) for (let cell = 0; cell < CELLS; cell += 1) sum[cell] = (sum[cell] as number) + (kind[cell] as number)
  return sum
}

/**
 * Share of cases in which the sum is below a value.
 *
 * @param spread Relative standard deviation of a factor on the whole sum (how sure the method is), 0 for weather alone.
 */
export function shareBelow(distribution: SumDistribution, kwh: number, spread = 0): number {
  const { lowestKwh, stepKwh, probability } = distribution
  let share = 0
  for (let cell = 0; cell < probability.length; cell += 1) {
    const mass = probability[cell] as number
    if (mass < 1e-12) continue
    const value = lowestKwh + cell * stepKwh
    // A value stands for the stretch of one step round it.
    const above = (kwh - value) / stepKwh + 0.5
    share += mass * (spread > 0 && value > 0 ? normalBelow((kwh / value - 1) / spread) : Math.min(1, Math.max(0, above)))
  }
  return share
}

/** Sum below which a share of the cases lie, kWh. @param share 0 to 1. */
export function quantileKwh(distribution: SumDistribution, share: number, spread = 0): number {
  const { lowestKwh, stepKwh, probability } = distribution
  let low = Math.min(0, lowestKwh - stepKwh)
  let high = (lowestKwh + probability.length * stepKwh) * (1 + 5 * spread)
  for (let round = 0; round < 40; round += 1) {
    const middle = (low + high) / 2
    if (shareBelow(distribution, middle, spread) < share) low = middle
    else high = middle
  }
  return (low + high) / 2
}
