import { normalDensity, type KilowattHours } from '../../values/index.js'
import type { DayOdds, SumDistribution } from './sum-types.js'

/** Standard deviations to either side that the grid covers, and its steps in one. */
const REACH = 7
const FINENESS = 20

/**
 * Distribution of the sum over very many days by a normal law: mean of each day, variance of days that hang together. Over years it is
 * nearer the truth than a grid that every day is rounded to, and takes no time.
 *
 * @source central limit theorem for a chain of first order: variance times (1 + r) / (1 - r) for energies that follow the correlation
 * @limits For hundreds of days and more.
 */
export function normalSums(
  days: readonly DayOdds[],
  correlation: number,
  marks: ReadonlySet<number>,
): { readonly total: SumDistribution; readonly at: ReadonlyMap<number, SumDistribution> } {
  const at = new Map<number, SumDistribution>()
  let [mean, variance] = [0, 0]
  days.forEach(({ kindsKwh }, index) => {
    const own = kindsKwh.reduce((sum, kwh) => sum + kwh, 0) / kindsKwh.length
    mean += own
    variance += kindsKwh.reduce((sum, kwh) => sum + (kwh - own) ** 2, 0) / kindsKwh.length
    if (marks.has(index)) at.set(index, normalSum(mean, (variance * (1 + correlation)) / (1 - correlation)))
  })
  return { total: normalSum(mean, (variance * (1 + correlation)) / (1 - correlation)), at }
}

function normalSum(meanKwh: KilowattHours, variance: number): SumDistribution {
  const stepKwh = variance > 0 ? Math.sqrt(variance) / FINENESS : 1
  const cells = REACH * FINENESS
  const density = Float64Array.from({ length: 2 * cells + 1 }, (_, cell) => normalDensity((cell - cells) / FINENESS))
  const sum = density.reduce((total, each) => total + each, 0)
  return { lowestKwh: meanKwh - cells * stepKwh, stepKwh, probability: density.map((each) => each / sum), meanKwh }
}
