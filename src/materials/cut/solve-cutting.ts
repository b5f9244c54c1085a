import type { PatternUse } from './best-pattern.js'
import type { CuttingProblem } from './cutting-problem.js'
import { fillGreedily } from './fill-greedily.js'
import { fullPatterns } from './full-patterns.js'
import { pieceWorths } from './piece-worth.js'

export interface CuttingSolution {
  readonly sticks: readonly PatternUse[]
  readonly cost: number
  /** No way of cutting costs less than this. */
  readonly lowerBound: number
  /** Whether the search was completed, so that the cost is the least there is. */
  readonly proven: boolean
}

/** Patterns looked at before the search gives up proving; a house has a few hundred. */
const MOST_LOOKS = 60_000
/** Patterns looked at for one stick. */
const MOST_FOR_ONE = 4_000

interface Choice extends PatternUse {
  readonly rank: number
}

/**
 * The cheapest way to cut all pieces, and among those the fewest sticks: branch and bound over full patterns for the
 * longest remaining piece.
 *
 * @returns undefined when a piece is longer than every stock length.
 */
export function solveCutting(problem: CuttingProblem): CuttingSolution | undefined {
  const { sizes, demand, capacities, costs } = problem
  const widest = Math.max(...capacities)
  if (sizes.some((size) => size > widest)) return undefined
  const worths = pieceWorths(problem)
  const boundOf = (left: readonly number[]): number =>
    Math.ceil(left.reduce((sum, count, i) => sum + count * (worths[i] ?? 0), 0) - 1e-6)
  const sticksOf = (left: readonly number[]): number =>
    Math.ceil(left.reduce((sum, count, i) => sum + count * (sizes[i] ?? 0), 0) / widest - 1e-9)
  const lowerBound = boundOf(demand)
  const reached = new Map<string, { cost: number; sticks: number }[]>()
  let best = fillGreedily(problem, worths)
  let looks = 0
  let complete = true

  const improves = (cost: number, sticks: number): boolean =>
    cost < best.cost || (cost === best.cost && sticks < best.sticks.length)

  /** Whether the same pieces remained before at no more cost and with no more sticks. */
  function seen(left: readonly number[], cost: number, sticks: number): boolean {
    const key = left.join()
    const before = reached.get(key) ?? []
    if (before.some((state) => state.cost <= cost && state.sticks <= sticks)) return true
    reached.set(key, [...before, { cost, sticks }])
    return false
  }

  function choices(left: readonly number[]): Choice[] {
    const found: Choice[] = []
    for (const [stock, capacity] of capacities.entries()) {
      const cost = costs[stock] ?? 0
      // A pattern that a stick of no more cost holds as well is looked at there.
      const holdsCheaper = Math.max(0, ...capacities.filter((_, k) => k !== stock && isCheaper(k, stock)))
      const first = looks
      for (const { pattern, used } of fullPatterns(sizes, left, capacity)) {
        looks++
        if (used > holdsCheaper) {
          // What the stick costs beyond the worth of its pieces.
          const rank = cost - pattern.reduce((sum, count, i) => sum + count * (worths[i] ?? 0), 0)
          found.push({ stock, pattern, rank })
        }
        if (looks - first >= MOST_FOR_ONE) {
          complete = false
          break
        }
      }
    }
    return found.sort((a, b) => a.rank - b.rank || b.stock - a.stock)
  }

  function isCheaper(k: number, stock: number): boolean {
    const [a, b] = [costs[k] ?? 0, costs[stock] ?? 0]
    return a < b || (a === b && k < stock)
  }

  function search(left: readonly number[], cost: number, sticks: readonly PatternUse[]): void {
    if (left.every((count) => count === 0)) {
      if (improves(cost, sticks.length)) best = { cost, sticks: [...sticks] }
      return
    }
    if (!improves(cost + boundOf(left), sticks.length + sticksOf(left))) return
    if (seen(left, cost, sticks.length)) return
    for (const choice of choices(left)) {
      if (looks > MOST_LOOKS) {
        complete = false
        return
      }
      const rest = left.map((count, i) => count - (choice.pattern[i] ?? 0))
      search(rest, cost + (costs[choice.stock] ?? 0), [...sticks, choice])
    }
  }

  search(demand, 0, [])
  return {
    sticks: best.sticks.map(({ stock, pattern }) => ({ stock, pattern })),
    cost: best.cost,
    lowerBound,
    proven: complete || best.cost === lowerBound,
  }
}
