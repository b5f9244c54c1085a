import { freeEndFits } from '../../roof/index.js'
import type { Inches } from '../../values/index.js'

/** Where the mounts of one or more rails on the same rafters may go. */
export interface LayoutProblem {
  readonly startIn: Inches
  readonly endIn: Inches
  /** Rafters that a mount may use, in, ascending. */
  readonly rafters: readonly number[]
  readonly maxCantileverIn: Inches
  /** Largest free end as a share of the next span; Infinity when the sheet sets none. */
  readonly maxCantileverOfSpan: number
  /** Largest allowed distance between neighbouring mounts at two places, in. */
  readonly limitIn: (fromIn: Inches, toIn: Inches) => number
}

const SLACK_IN = 1e-6

interface Partial {
  readonly cost: number
  readonly path: readonly number[]
}

function startFits(problem: LayoutProblem, first: number, second: number): boolean {
  return freeEndFits(first - problem.startIn, second - first, problem)
}

function endFits(problem: LayoutProblem, before: number, last: number): boolean {
  return freeEndFits(problem.endIn - last, last - before, problem)
}

/**
 * The most even layout with a given number of mounts: least sum of squared spans, free ends counted double.
 *
 * @returns Positions ascending, in, or undefined when that number cannot keep the limits.
 */
export function evenLayout(problem: LayoutProblem, count: number): readonly number[] | undefined {
  const { startIn, endIn, rafters, maxCantileverIn } = problem
  let layer = new Map<number, Partial>()
  for (const x of rafters) {
    if (x - startIn <= maxCantileverIn + SLACK_IN) layer.set(x, { cost: (2 * (x - startIn)) ** 2, path: [x] })
  }
  let best: Partial | undefined
  for (let placed = 2; placed <= count; placed++) {
    const next = new Map<number, Partial>()
    for (const [from, partial] of layer) {
      for (const to of rafters) {
        if (to <= from + SLACK_IN || to - from > problem.limitIn(from, to) + SLACK_IN) continue
        if (placed === 2 && !startFits(problem, from, to)) continue
        const cost = partial.cost + (to - from) ** 2
        if (placed === count) {
          if (endIn - to > maxCantileverIn + SLACK_IN || !endFits(problem, from, to)) continue
          const whole = cost + (2 * (endIn - to)) ** 2
          if (best === undefined || whole < best.cost - 1e-9) best = { cost: whole, path: [...partial.path, to] }
        } else if (cost < (next.get(to)?.cost ?? Infinity) - 1e-9) next.set(to, { cost, path: [...partial.path, to] })
      }
    }
    layer = next
  }
  return best?.path
}

/** The fewest mounts that keep spacing and free-end limits, most evenly spread; undefined when none do. */
export function fewestMounts(problem: LayoutProblem, atLeast = 2): readonly number[] | undefined {
  for (let count = atLeast; count <= problem.rafters.length; count++) {
    const layout = evenLayout(problem, count)
    if (layout !== undefined) return layout
  }
  return undefined
}

/** Every layout with a given number of mounts that keeps the limits, or undefined when there are more than `most`. */
export function allLayouts(problem: LayoutProblem, count: number, most: number): number[][] | undefined {
  const { startIn, endIn, rafters, maxCantileverIn } = problem
  const found: number[][] = []
  let steps = 0
  const extend = (path: readonly number[], fromIndex: number): boolean => {
    for (let i = fromIndex; i < rafters.length; i++) {
      steps += 1
      if (steps > most * 50) return false
      const x = rafters[i] ?? 0
      const last = path.at(-1)
      if (
        last === undefined ? x - startIn > maxCantileverIn + SLACK_IN : x - last > problem.limitIn(last, x) + SLACK_IN
      ) {
        break
      }
      if (path.length === 1 && last !== undefined && !startFits(problem, last, x)) continue
      if (path.length + 1 < count) {
        if (!extend([...path, x], i + 1)) return false
        continue
      }
      if (endIn - x > maxCantileverIn + SLACK_IN || (last !== undefined && !endFits(problem, last, x))) continue
      found.push([...path, x])
      if (found.length > most) return false
    }
    return true
  }
  return extend([], 0) ? found : undefined
}

/**
 * Looks for the fewest mounts whose exact check passes, and among those for the layout with the lowest ratio.
 *
 * With few possible layouts all are tried; otherwise the most even one is improved mount by mount.
 *
 * @param ratioOf Exact largest demand over capacity of a layout.
 * @returns The layout, or the best one found with every rafter used when nothing passes; undefined when none keeps the limits.
 */
export function optimisedMounts(
  problem: LayoutProblem,
  ratioOf: (supportsIn: readonly Inches[]) => number,
  mostTried = 300,
): readonly number[] | undefined {
  let best: { layout: readonly number[]; ratio: number } | undefined
  const rank = (layout: readonly number[]): { layout: readonly number[]; ratio: number } => ({
    layout,
    ratio: ratioOf(layout),
  })
  for (let count = 2; count <= problem.rafters.length; count++) {
    const even = evenLayout(problem, count)
    if (even === undefined) continue
    const all = allLayouts(problem, count, mostTried)
    const candidate =
      all === undefined
        ? improved(problem, rank(even), rank)
        : all.map(rank).reduce((a, b) => (b.ratio < a.ratio - 1e-9 ? b : a))
    if (best === undefined || candidate.ratio < best.ratio) best = candidate
    if (candidate.ratio <= 1) return candidate.layout
  }
  return best?.layout
}

function improved<Ranked extends { layout: readonly number[]; ratio: number }>(
  problem: LayoutProblem,
  start: Ranked,
  rank: (layout: readonly number[]) => Ranked,
): Ranked {
  let best = start
  for (let round = 0; round < problem.rafters.length; round++) {
    const moves = best.layout.flatMap((_x, index) => [-1, 1].map((step) => moved(problem, best.layout, index, step)))
    const better = moves
      .filter((layout) => layout !== undefined)
      .map((layout) => rank(layout))
      .reduce((a, b) => (b.ratio < a.ratio - 1e-9 ? b : a), best)
    if (better === best) return best
    best = better
  }
  return best
}

/** The layout with one mount on the neighbouring rafter, when that keeps the limits. */
function moved(problem: LayoutProblem, layout: readonly number[], index: number, step: number): number[] | undefined {
  const at = problem.rafters.indexOf(layout[index] ?? Number.NaN)
  const x = problem.rafters[at + step]
  if (at < 0 || x === undefined || layout.includes(x)) return undefined
  const next = layout.with(index, x)
  const [first, second, before, last] = [next[0] ?? 0, next[1] ?? 0, next.at(-2) ?? 0, next.at(-1) ?? 0]
  const spansFit = next.every((b, i) => {
    const a = next[i - 1]
    return a === undefined || (b > a && b - a <= problem.limitIn(a, b) + SLACK_IN)
  })
  const endsFit =
    first - problem.startIn <= problem.maxCantileverIn + SLACK_IN &&
    problem.endIn - last <= problem.maxCantileverIn + SLACK_IN &&
    startFits(problem, first, second) &&
    endFits(problem, before, last)
  return spansFit && endsFit ? next : undefined
}
