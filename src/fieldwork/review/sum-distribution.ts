import { KIND_COUNT } from './day-model.js'
import { kindTransitions, overDays } from './kind-transitions.js'
import { normalSums } from './normal-sums.js'
import type { DayOdds, SumDistribution } from './sum-types.js'
import { normalBelow, type KilowattHours } from '../../values/index.js'

export type { DayOdds, SumDistribution } from './sum-types.js'

/** Steps of the grid in a standard deviation of the sum. */
const FINENESS = 60
/** Days from which the sum is taken as normal. */
const MANY_DAYS = 800
/** Days apart after which two days know nothing of each other. */
const MEMORY_DAYS = 8
/** Probability at the ends of the grid that is cut off. */
const NEGLIGIBLE = 1e-13

/** Probabilities by kind of the last day, on a grid that begins at `firstCell` steps. */
interface State {
  readonly firstCell: number
  readonly byKind: readonly Float64Array[]
}

/**
 * Distribution of the sum over days, without random numbers: kind by kind and day by day, with days that hang together
 * by a chain of first order.
 *
 * @param days In order; days that are missing in between weaken the link.
 * @param correlation Of neighbouring days, 0 for independent ones.
 * @param marks Numbers of days after which the distribution so far is handed back too.
 * @limits Values are shared out between neighbours on a grid of a sixtieth of the standard deviation; the mean is exact.
 */
export function sumDistribution(
  days: readonly DayOdds[],
  correlation: number,
  marks: ReadonlySet<number> = new Set(),
): { readonly total: SumDistribution; readonly at: ReadonlyMap<number, SumDistribution> } {
  if (days.length > MANY_DAYS) return normalSums(days, correlation, marks)
  const stepKwh = gridStep(days, correlation)
  const table = kindTransitions(correlation)
  const strangers = kindTransitions(0)
  let state: State = {
    firstCell: 0,
    byKind: Array.from({ length: KIND_COUNT }, () => new Float64Array([1 / KIND_COUNT])),
  }
  let meanKwh = 0
  const at = new Map<number, SumDistribution>()
  const snapshot = (): SumDistribution => ({
    lowestKwh: state.firstCell * stepKwh,
    stepKwh,
    probability: sumOf(state.byKind),
    meanKwh,
  })
  days.forEach(({ day, kindsKwh }, index) => {
    const before = days[index - 1]?.day
    const apart = before === undefined ? MEMORY_DAYS : day - before
    const link = apart >= MEMORY_DAYS ? strangers : overDays(table, apart)
    state = trimmed(
      advance(
        state,
        link,
        kindsKwh.map((kwh) => kwh / stepKwh),
      ),
    )
    meanKwh += kindsKwh.reduce((sum, kwh) => sum + kwh, 0) / KIND_COUNT
    if (marks.has(index)) at.set(index, snapshot())
  })
  return { total: snapshot(), at }
}

function gridStep(days: readonly DayOdds[], correlation: number): number {
  const variance = days.reduce((sum, { kindsKwh }) => {
    const mean = kindsKwh.reduce((total, kwh) => total + kwh, 0) / KIND_COUNT
    return sum + kindsKwh.reduce((total, kwh) => total + (kwh - mean) ** 2, 0) / KIND_COUNT
  }, 0)
  const deviation = Math.sqrt((variance * (1 + correlation)) / (1 - correlation))
  return deviation > 0 ? deviation / FINENESS : 1
}

function advance(state: State, link: readonly (readonly number[])[], shifts: readonly number[]): State {
  const lowest = Math.floor(shifts[0]!)
  const used = state.byKind[0]?.length ?? 0
  const length = used + Math.floor(shifts[KIND_COUNT - 1]!) - lowest + 1
  const byKind = shifts.map((shift, to) => {
    const mixed = new Float64Array(used)
    for (let from = 0; from < KIND_COUNT; from += 1) addShare(mixed, state.byKind[from]!, link[from]![to]!)
    const result = new Float64Array(length)
    const whole = Math.floor(shift)
    const upper = shift - whole
    const offset = whole - lowest
    for (let cell = 0; cell < used; cell += 1) {
      const mass = mixed[cell]!
      result[cell + offset] = result[cell + offset]! + mass * (1 - upper)
      result[cell + offset + 1] = result[cell + offset + 1]! + mass * upper
    }
    return result
  })
  return { firstCell: state.firstCell + lowest, byKind }
}

/** The loop that all time goes into, a function of its own so that the engine compiles it soon. */
function addShare(mixed: Float64Array, source: Float64Array, share: number): void {
  const { length } = mixed
  for (let cell = 0; cell < length; cell += 1) mixed[cell] = mixed[cell]! + share * source[cell]!
}

/** Without the ends that carry next to nothing. */
function trimmed({ firstCell, byKind }: State): State {
  const total = sumOf(byKind)
  let [first, end, mass] = [0, total.length, 0]
  while (first < end - 1 && (mass += total[first]!) < NEGLIGIBLE) first += 1
  mass = 0
  while (end > first + 1 && (mass += total[end - 1]!) < NEGLIGIBLE) end -= 1
  return { firstCell: firstCell + first, byKind: byKind.map((kind) => kind.slice(first, end)) }
}

function sumOf(byKind: readonly Float64Array[]): Float64Array {
  const sum = new Float64Array(byKind[0]?.length ?? 0)
  for (const kind of byKind) for (let cell = 0; cell < kind.length; cell += 1) sum[cell] = sum[cell]! + kind[cell]!
  return sum
}

/**
 * Share of cases in which the sum is below a value.
 *
 * @param spread Relative standard deviation of a factor on the whole sum (how sure the method is), 0 for weather alone.
 */
export function shareBelow(distribution: SumDistribution, kwh: KilowattHours, spread = 0): number {
  return spread > 0 ? shareOfPoints(mergedPoints(distribution), kwh, spread) : shareOfCells(distribution, kwh)
}

/** Sum below which a share of the cases lie, kWh. @param share 0 to 1. */
export function quantileKwh(distribution: SumDistribution, share: number, spread = 0): KilowattHours {
  const { lowestKwh, stepKwh, probability } = distribution
  const points = spread > 0 ? mergedPoints(distribution) : []
  let low = Math.min(0, lowestKwh - stepKwh)
  let high = (lowestKwh + probability.length * stepKwh) * (1 + 5 * spread)
  for (let round = 0; round < 40; round += 1) {
    const middle = (low + high) / 2
    const below = spread > 0 ? shareOfPoints(points, middle, spread) : shareOfCells(distribution, middle)
    if (below < share) low = middle
    else high = middle
  }
  return (low + high) / 2
}

function shareOfCells({ lowestKwh, stepKwh, probability }: SumDistribution, kwh: KilowattHours): number {
  // A value stands for the stretch of one step round it.
  const place = (kwh - lowestKwh) / stepKwh + 0.5
  let share = 0
  for (let cell = 0; cell < Math.min(probability.length, place); cell += 1) {
    share += probability[cell]! * Math.min(1, place - cell)
  }
  return share
}

interface MassPoint {
  readonly kwh: KilowattHours
  readonly mass: number
}

/** Ten cells as one at their centre of gravity: far finer than how sure any method is. */
function mergedPoints({ lowestKwh, stepKwh, probability }: SumDistribution): MassPoint[] {
  const points: MassPoint[] = []
  for (let start = 0; start < probability.length; start += 10) {
    let [mass, moment] = [0, 0]
    for (let cell = start; cell < Math.min(start + 10, probability.length); cell += 1) {
      mass += probability[cell]!
      moment += probability[cell]! * (lowestKwh + cell * stepKwh)
    }
    if (mass > 1e-9) points.push({ mass, kwh: moment / mass })
  }
  return points
}

function shareOfPoints(points: readonly MassPoint[], kwh: KilowattHours, spread: number): number {
  return points.reduce(
    (share, point) =>
      share + point.mass * (point.kwh > 0 ? normalBelow((kwh / point.kwh - 1) / spread) : kwh > point.kwh ? 1 : 0),
    0,
  )
}
