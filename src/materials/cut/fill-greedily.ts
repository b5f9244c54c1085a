import { bestPattern, type PatternUse } from './best-pattern.js'
import type { CuttingProblem } from './cutting-problem.js'

/**
 * A good way to cut all pieces, stick by stick: always the pattern that costs least beyond the worth of its pieces.
 *
 * @param worths Worth of one piece of each size; a piece of no worth goes where it is the longest left.
 */
export function fillGreedily(
  { sizes, demand, capacities, costs }: CuttingProblem,
  worths: readonly number[],
): { readonly cost: number; readonly sticks: readonly PatternUse[] } {
  const left = [...demand]
  const sticks: PatternUse[] = []
  let cost = 0
  while (left.some((count) => count > 0)) {
    const first = left.findIndex((count) => count > 0)
    const size = sizes[first] ?? 0
    const rest = left.map((count, i) => (i === first ? count - 1 : count))
    const options = capacities.flatMap((capacity, stock) => {
      if (capacity < size) return []
      const best = bestPattern(sizes, rest, worths, capacity - size)
      const loss = (costs[stock] ?? 0) - best.worth
      return [{ stock, loss, pattern: best.pattern.map((count, i) => (i === first ? count + 1 : count)) }]
    })
    const [head, ...others] = options
    if (head === undefined) throw new Error('a piece is longer than every stock length')
    const chosen = others.reduce((a, b) => (b.loss < a.loss ? b : a), head)
    for (const [i, count] of chosen.pattern.entries()) left[i] = (left[i] ?? 0) - count
    sticks.push({ stock: chosen.stock, pattern: chosen.pattern })
    cost += costs[chosen.stock] ?? 0
  }
  return { cost, sticks }
}
