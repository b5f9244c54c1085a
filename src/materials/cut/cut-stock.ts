import {
  cuttingProblem,
  STEPS_PER_IN,
  stockSteps,
  pieceSteps,
  type CutPiece,
  type CutStock,
} from './cutting-problem.js'
import { solveCutting } from './solve-cutting.js'
import type { Inches } from '../../values/index.js'

/** What is cut from one stick. */
export interface CutStick {
  readonly stockIn: Inches
  readonly pieces: readonly CutPiece[]
  /** What is left after the last cut, in. */
  readonly offcutIn: Inches
}

export interface CutPlan {
  readonly sticks: readonly CutStick[]
  /** Whether the choice between stock lengths was made by price; by length otherwise. */
  readonly byPrice: boolean
  /** No way of cutting takes fewer sticks of the longest length than this. */
  readonly leastSticks: number
  /** Whether no cheaper way exists. */
  readonly proven: boolean
  /** Pieces that no stock length is long enough for; they are not cut. */
  readonly tooLong: readonly CutPiece[]
}

/**
 * Cuts pieces from stock lengths: the cheapest way, then the fewest sticks. The rest of a stick goes on to the next piece
 * that fits, so every off-cut that can be used is.
 *
 * @param pieces Lengths in in, rounded up to 1/16 in.
 * @param kerfIn Width of a cut, in.
 * @limits A piece is never joined from two; where joints may lie is decided before.
 */
export function cutStock(pieces: readonly CutPiece[], stocks: readonly CutStock[], kerfIn: Inches): CutPlan {
  const longest = Math.max(0, ...stocks.map((stock) => stockSteps(stock.lengthIn)))
  const tooLong = pieces.filter((piece) => pieceSteps(piece.lengthIn) > longest)
  const cuttable = pieces.filter((piece) => pieceSteps(piece.lengthIn) <= longest)
  const byPrice = stocks.every((stock) => stock.cents !== undefined && stock.cents > 0)
  if (cuttable.length === 0) return { sticks: [], byPrice, leastSticks: 0, proven: true, tooLong }
  const problem = cuttingProblem(
    cuttable.map((piece) => piece.lengthIn),
    stocks,
    kerfIn,
  )
  const solution = solveCutting(problem)
  if (solution === undefined) throw new Error('a piece that fits was not cut')
  const kerf = pieceSteps(kerfIn)
  const ordered = stocks.toSorted((a, b) => a.lengthIn - b.lengthIn)
  const waiting = new Map<number, CutPiece[]>()
  for (const piece of cuttable) {
    const steps = pieceSteps(piece.lengthIn) + kerf
    waiting.set(steps, [...(waiting.get(steps) ?? []), piece])
  }
  const sticks = solution.sticks.map(({ stock, pattern }): CutStick => {
    const own = problem.sizes.flatMap((size, i) => waiting.get(size)?.splice(0, pattern[i] ?? 0) ?? [])
    const used = pattern.reduce((sum, count, i) => sum + count * (problem.sizes[i] ?? 0), 0)
    const left = (problem.capacities[stock] ?? 0) - used - kerf
    return {
      stockIn: ordered[stock]?.lengthIn ?? 0,
      pieces: own,
      offcutIn: Math.max(0, left) / STEPS_PER_IN,
    }
  })
  const total = problem.sizes.reduce((sum, size, i) => sum + size * (problem.demand[i] ?? 0), 0)
  return {
    sticks: sticks.toSorted((a, b) => b.stockIn - a.stockIn || a.offcutIn - b.offcutIn),
    byPrice,
    leastSticks: Math.ceil(total / Math.max(...problem.capacities) - 1e-9),
    proven: solution.proven,
    tooLong,
  }
}
