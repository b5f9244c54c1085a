import { bestPattern, type Pattern } from './best-pattern.js'
import type { CuttingProblem } from './cutting-problem.js'

/** More rounds only sharpen the bound; any set of worths that passes the last step is valid. */
const MOST_ROUNDS = 400

/**
 * What a piece of each size costs at least: no stick gives pieces of more worth than it costs, so the worth of all pieces
 * that remain is a lower bound of the cost of cutting them.
 *
 * @returns Worth by size, in the unit of the costs.
 * @source Gilmore & Gomory 1961, 1963: column generation for the cutting-stock problem (from memory)
 */
export function pieceWorths(problem: CuttingProblem): number[] {
  const { sizes, demand, capacities, costs } = problem
  const inverse = sizes.map((_, i) => sizes.map((__, j) => (i === j ? 1 / fewestForOne(problem, i).count : 0)))
  const basisCosts = sizes.map((_, i) => fewestForOne(problem, i).cost)
  let worth: number[] = []
  for (let round = 0; round < MOST_ROUNDS; round++) {
    worth = sizes.map((_, j) =>
      Math.max(
        0,
        basisCosts.reduce((sum, cost, i) => sum + cost * (inverse[i]?.[j] ?? 0), 0),
      ),
    )
    const entering = mostWanted(problem, worth)
    if (entering === undefined) break
    if (!pivot(inverse, basisCosts, demand, entering)) break
  }
  // Rounding, or a stop before the end, must not make the bound too high.
  const excess = Math.max(
    1,
    ...capacities.map((capacity, j) => bestPattern(sizes, demand, worth, capacity).worth / (costs[j] ?? 1)),
  )
  return worth.map((value) => value / excess)
}

function fewestForOne(
  { sizes, demand, capacities, costs }: CuttingProblem,
  i: number,
): { count: number; cost: number } {
  const size = sizes[i] ?? 1
  const options = capacities
    .map((capacity, j) => ({ count: Math.min(demand[i] ?? 1, Math.floor(capacity / size)), cost: costs[j] ?? 0 }))
    .filter((option) => option.count > 0)
  return options.reduce((a, b) => (b.cost / b.count < a.cost / a.count ? b : a))
}

interface Entering {
  readonly pattern: Pattern
  readonly cost: number
}

/** The pattern whose pieces are worth most beyond the cost of its stick. */
function mostWanted(
  { sizes, demand, capacities, costs }: CuttingProblem,
  worth: readonly number[],
): Entering | undefined {
  let best: (Entering & { gain: number }) | undefined
  for (const [j, capacity] of capacities.entries()) {
    const cost = costs[j] ?? 0
    const found = bestPattern(sizes, demand, worth, capacity)
    const gain = found.worth - cost
    if (gain > 1e-9 * cost && gain > (best?.gain ?? 0)) best = { pattern: found.pattern, cost, gain }
  }
  return best
}

/** One step of the simplex method; false when no row limits it. */
function pivot(inverse: number[][], basisCosts: number[], demand: readonly number[], entering: Entering): boolean {
  const times = (vector: readonly number[]): number[] =>
    inverse.map((row) => row.reduce((sum, value, j) => sum + value * (vector[j] ?? 0), 0))
  const column = times(entering.pattern)
  const amounts = times(demand)
  let leaving = -1
  let least = Infinity
  for (const [i, share] of column.entries()) {
    if (share <= 1e-9) continue
    const ratio = Math.max(0, amounts[i] ?? 0) / share
    if (ratio < least - 1e-12) [leaving, least] = [i, ratio]
  }
  const row = inverse[leaving]
  const share = column[leaving]
  if (row === undefined || share === undefined) return false
  const scaled = row.map((value) => value / share)
  for (const [i, other] of inverse.entries())
    inverse[i] = i === leaving ? scaled : other.map((value, j) => value - (column[i] ?? 0) * (scaled[j] ?? 0))
  basisCosts[leaving] = entering.cost
  return true
}
