import { Kept } from '../../values/index.js'
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
  return solved.of(JSON.stringify(problem), () => search(problem))
}

/** Houses of a fleet with equal roofs cut equal rails. */
const solved = new Kept<CuttingSolution | undefined>(64)

function search(problem: CuttingProblem): CuttingSolution | undefined {
  const widest = Math.max(...problem.capacities)
  if (problem.sizes.some((size) => size > widest)) return undefined
  const searching = new CuttingSearch(problem)
  const lowerBound = searching.boundOf(problem.demand)
  searching.from(problem.demand, 0, [])
  const { cost, sticks } = searching.best
  return {
    sticks: sticks.map(({ stock, pattern }) => ({ stock, pattern })),
    cost,
    lowerBound,
    proven: searching.complete || cost === lowerBound,
  }
}

/** Pieces that remained, and what had been spent until then. */
interface Spent {
  readonly cost: number
  readonly sticks: number
}

/** Branch and bound: the best way so far, and what has been looked at. */
class CuttingSearch {
  best: { readonly cost: number; readonly sticks: readonly PatternUse[] }
  complete = true
  private looks = 0
  private readonly problem: CuttingProblem
  private readonly worths: readonly number[]
  private readonly widest: number
  private readonly reached = new Map<string, Spent[]>()

  constructor(problem: CuttingProblem) {
    this.problem = problem
    this.worths = pieceWorths(problem)
    this.widest = Math.max(...problem.capacities)
    this.best = fillGreedily(problem, this.worths)
  }

  /** No way of cutting these pieces costs less. */
  boundOf(left: readonly number[]): number {
    return Math.ceil(this.worthOf(left) - 1e-6)
  }

  /** Tries every way of cutting what is left that may still be better than the best. */
  from(left: readonly number[], cost: number, sticks: readonly PatternUse[]): void {
    if (left.every((count) => count === 0)) {
      if (this.improves({ cost, sticks: sticks.length })) this.best = { cost, sticks: [...sticks] }
      return
    }
    const atBest = { cost: cost + this.boundOf(left), sticks: sticks.length + this.sticksOf(left) }
    if (!this.improves(atBest)) return
    if (this.seen(left, { cost, sticks: sticks.length })) return
    for (const choice of this.choices(left)) {
      if (this.looks > MOST_LOOKS) {
        this.complete = false
        return
      }
      const rest = left.map((count, i) => count - (choice.pattern[i] ?? 0))
      this.from(rest, cost + (this.problem.costs[choice.stock] ?? 0), [...sticks, choice])
    }
  }

  private worthOf(pieces: readonly number[]): number {
    return pieces.reduce((sum, count, i) => sum + count * (this.worths[i] ?? 0), 0)
  }

  /** The fewest sticks that hold these pieces. */
  private sticksOf(left: readonly number[]): number {
    const { sizes } = this.problem
    return Math.ceil(left.reduce((sum, count, i) => sum + count * (sizes[i] ?? 0), 0) / this.widest - 1e-9)
  }

  private improves({ cost, sticks }: Spent): boolean {
    return cost < this.best.cost || (cost === this.best.cost && sticks < this.best.sticks.length)
  }

  /** Whether the same pieces remained before at no more cost and with no more sticks. */
  private seen(left: readonly number[], spent: Spent): boolean {
    const key = left.join()
    const before = this.reached.get(key) ?? []
    if (before.some((state) => state.cost <= spent.cost && state.sticks <= spent.sticks)) return true
    this.reached.set(key, [...before, spent])
    return false
  }

  /** Full patterns for the longest remaining piece, the best first. */
  private choices(left: readonly number[]): Choice[] {
    const { sizes, capacities, costs } = this.problem
    const found: Choice[] = []
    for (const [stock, capacity] of capacities.entries()) {
      const cost = costs[stock] ?? 0
      // A pattern that a stick of no more cost holds as well is looked at there.
      const holdsCheaper = Math.max(0, ...capacities.filter((_, k) => k !== stock && this.isCheaper(k, stock)))
      const first = this.looks
      for (const { pattern, used } of fullPatterns(sizes, left, capacity)) {
        this.looks++
        // What the stick costs beyond the worth of its pieces.
        if (used > holdsCheaper) found.push({ stock, pattern, rank: cost - this.worthOf(pattern) })
        if (this.looks - first >= MOST_FOR_ONE) {
          this.complete = false
          break
        }
      }
    }
    return found.sort((a, b) => a.rank - b.rank || b.stock - a.stock)
  }

  private isCheaper(k: number, stock: number): boolean {
    const { costs } = this.problem
    const [a, b] = [costs[k] ?? 0, costs[stock] ?? 0]
    return a < b || (a === b && k < stock)
  }
}
