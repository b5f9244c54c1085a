import type { Inches } from '../../values/index.js'

/** A piece to be cut. */
export interface CutPiece {
  /** What it is for. */
  readonly for: string
  readonly lengthIn: Inches
}

/** A length that is sold. */
export interface CutStock {
  readonly lengthIn: Inches
  /** Price of one, whole cents; undefined when it is not known. */
  readonly cents?: number | undefined
}

/** Lengths in whole steps, so that a sum of cuts is exact. */
export const STEPS_PER_IN = 16

/** The problem in whole steps: every piece and every stock takes one kerf more, which makes n pieces need n - 1 cuts. */
export interface CuttingProblem {
  /** Different sizes, longest first, with kerf, steps. */
  readonly sizes: readonly number[]
  /** How many of each size. */
  readonly demand: readonly number[]
  /** Stock lengths with kerf, steps; shortest first. */
  readonly capacities: readonly number[]
  /** Cost of each stock in whole units that have no common divisor. */
  readonly costs: readonly number[]
}

/** Rounds a piece up to the next step. */
export const pieceSteps = (lengthIn: Inches): number => Math.ceil(lengthIn * STEPS_PER_IN - 1e-6)
/** Rounds a stock length down to a step. */
export const stockSteps = (lengthIn: Inches): number => Math.floor(lengthIn * STEPS_PER_IN + 1e-6)

/**
 * Puts pieces and stock into whole steps of 1/16 in: pieces and kerf rounded up, stock rounded down.
 *
 * @param stocks Cost counts by price when every length has one, otherwise by length.
 */
export function cuttingProblem(
  lengthsIn: readonly Inches[],
  stocks: readonly CutStock[],
  kerfIn: Inches,
): CuttingProblem {
  const kerf = pieceSteps(kerfIn)
  const counts = new Map<number, number>()
  for (const lengthIn of lengthsIn) {
    const steps = pieceSteps(lengthIn) + kerf
    counts.set(steps, (counts.get(steps) ?? 0) + 1)
  }
  const sizes = [...counts.keys()].toSorted((a, b) => b - a)
  const ordered = stocks.toSorted((a, b) => a.lengthIn - b.lengthIn)
  const byPrice = ordered.every((stock) => stock.cents !== undefined && stock.cents > 0)
  const costs = ordered.map((stock) => (byPrice ? (stock.cents ?? 0) : stockSteps(stock.lengthIn)))
  const divisor = costs.reduce(greatestCommonDivisor)
  return {
    sizes,
    demand: sizes.map((size) => counts.get(size) ?? 0),
    capacities: ordered.map((stock) => stockSteps(stock.lengthIn) + kerf),
    costs: costs.map((cost) => cost / divisor),
  }
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b)
}
