import { evenLayout, fewestMounts, optimisedMounts, type LayoutProblem } from '../mounts/index.js'
import type { LoadedRail } from './loaded-rail.js'
import { railDemand, type RailDemand } from './rail-demand.js'
import type { SpanLimit } from './span-limit.js'
import type { Inches } from '../../values/index.js'

/** A rail with the rules for placing its mounts. */
export interface RailToLay {
  readonly loaded: LoadedRail
  /** Rafters that may carry a mount of this rail, in. */
  readonly rafters: readonly number[]
  /** Longest span by wind zone and exposure. */
  readonly limitOf: (zone: string, exposed: boolean) => SpanLimit
}

export interface LaidRail extends RailToLay {
  readonly supportsIn: readonly Inches[]
  readonly demand: RailDemand
  /** Whether no layout on these rafters keeps spacing and free ends. */
  readonly limitsBroken: boolean
  /** Mounts on rafters that the rails below use too, as many of them as are to be staggered, though neighbouring rails shall be staggered, in. */
  readonly sharedIn: readonly Inches[]
}

export interface LayoutRules {
  readonly layout: 'aligned' | 'staggered'
  /** Rails below a rail whose rafters it leaves free, where they are staggered. */
  readonly staggerRails: number
  /** One spacing for all zones, in; otherwise each zone's own longest span. */
  readonly spacingIn: Inches | undefined
  readonly optimise: boolean
  readonly maxCantileverIn: Inches
  readonly maxCantileverOfSpan: number
  readonly longestSpanIn: Inches
  readonly rafterSpacingIn: Inches
}

/** Share of a rail's width below which a zone does not limit a span. */
const LIMITING_SHARE = 0.1

/**
 * Lays the mounts of all rails of one plane.
 *
 * @param rails From the lowest up.
 * @returns One entry a rail.
 */
export function layRails(rails: readonly RailToLay[], rules: LayoutRules): LaidRail[] {
  const laid: LaidRail[] = []
  const demands: Demands = new Map()
  const groups = rules.layout === 'aligned' ? byRun(rails) : rails.map((rail) => [rail])
  for (const group of groups) {
    const common = sharedRafters(group)
    const taken = takenBelow(laid, group, rules.layout === 'aligned' ? 0 : rules.staggerRails)
    const layout = solveStaggered(group, common, taken, rules, demands)
    const supportsIn = layout ?? common
    const sharedIn = supportsIn.filter((x) => taken.at(-1)?.has(x) === true)
    for (const rail of group) {
      const demand = demandOf(demands, rail, supportsIn)
      laid.push({ ...rail, supportsIn, demand, limitsBroken: layout === undefined, sharedIn })
    }
  }
  return laid
}

/** Rafters that the nearest rail below uses, at each place where there is one; those of the two nearest; and so on. */
function takenBelow(laid: readonly LaidRail[], group: readonly RailToLay[], rails: number): ReadonlySet<number>[] {
  const [own] = group
  const taken = Array.from({ length: rails }, () => new Set<number>())
  if (own === undefined) return taken
  const below = laid.filter(({ loaded }) => loaded.line.yIn < own.loaded.line.yIn - 1e-6)
  for (const x of own.rafters) {
    const over = below.filter(({ loaded }) => loaded.line.startIn <= x && x <= loaded.line.endIn)
    const heights = [...new Set(over.map(({ loaded }) => loaded.line.yIn))].sort((a, b) => b - a)
    for (const [index, set] of taken.entries()) {
      const near = heights.slice(0, index + 1)
      if (over.some((rail) => near.includes(rail.loaded.line.yIn) && rail.supportsIn.includes(x))) set.add(x)
    }
  }
  return taken
}

/**
 * Solves on rafters that the rails below left free, as many rails as asked or fewer; where its ends cannot be reached so, it
 * shares end rafters, which get the smallest reactions; where that does not help either, any rafter. The first layout that passes wins, otherwise the best.
 */
function solveStaggered(
  group: readonly RailToLay[],
  common: readonly number[],
  taken: readonly ReadonlySet<number>[],
  rules: LayoutRules,
  demands: Demands,
): readonly number[] | undefined {
  const { startIn, endIn } = group[0]?.loaded.line ?? { startIn: 0, endIn: 0 }
  const nearEnd = (x: number): boolean => Math.min(x - startIn, endIn - x) <= rules.maxCantileverIn
  const staggered = taken
    .filter((set) => set.size > 0)
    .toReversed()
    .flatMap((set) => [common.filter((x) => !set.has(x)), common.filter((x) => !set.has(x) || nearEnd(x))])
  let best: { layout: readonly number[]; ratio: number } | undefined
  for (const rafters of [...staggered, common]) {
    const layout = solve(group, rafters, rules, demands)
    if (layout === undefined) continue
    const ratio = ratioOf(group, layout, demands)
    if (best === undefined || ratio < best.ratio) best = { layout, ratio }
    if (ratio <= 1) break
  }
  return best?.layout ?? solveBySheet(group, common, rules, demands)
}

/**
 * Where the spans of the zones, which stand for even rails, leave no layout: one within the spans of the sheet, by its exact
 * checks. A wished spacing is kept.
 */
function solveBySheet(
  group: readonly RailToLay[],
  rafters: readonly number[],
  rules: LayoutRules,
  demands: Demands,
): readonly number[] | undefined {
  const [first] = group
  if (first === undefined || rules.spacingIn !== undefined) return undefined
  const { startIn, endIn } = first.loaded.line
  const problem: LayoutProblem = { ...rules, startIn, endIn, rafters, limitIn: () => rules.longestSpanIn }
  const fewest = fewestMounts(problem)
  return fewest === undefined
    ? undefined
    : firstThatPasses(problem, fewest, (layout) => ratioOf(group, layout, demands))
}

/** Largest demand over capacity of a layout over all rails of a group. */
function ratioOf(group: readonly RailToLay[], layout: readonly number[], demands: Demands): number {
  return Math.max(...group.map((rail) => demandOf(demands, rail, layout).ratio))
}

/** Demands that are known already, by rail and supports. */
type Demands = Map<RailToLay, Map<string, RailDemand>>

function demandOf(demands: Demands, rail: RailToLay, supportsIn: readonly Inches[]): RailDemand {
  const known = demands.get(rail) ?? new Map<string, RailDemand>()
  demands.set(rail, known)
  const key = supportsIn.join()
  const demand = known.get(key) ?? railDemand(rail.loaded, { supportsIn })
  known.set(key, demand)
  return demand
}

function byRun(rails: readonly RailToLay[]): RailToLay[][] {
  const runs = new Map<string, RailToLay[]>()
  for (const rail of rails) {
    const key = rail.loaded.line.run
    runs.set(key, [...(runs.get(key) ?? []), rail])
  }
  return [...runs.values()]
}

/** Rafters that every rail of a group may use. */
function sharedRafters(group: readonly RailToLay[]): number[] {
  const [first, ...others] = group
  return (first?.rafters ?? []).filter((x) => others.every((rail) => rail.rafters.includes(x)))
}

/** Longest allowed span between two places of a rail by the zones in between. */
function limitBetween(rail: RailToLay, rules: LayoutRules, from: number, to: number): number {
  if (rules.spacingIn !== undefined) return Math.min(rules.spacingIn, rules.longestSpanIn)
  let limit = rules.longestSpanIn
  for (const patch of rail.loaded.patches) {
    if (patch.toIn <= from || patch.fromIn >= to) continue
    for (const { key, widthFt } of patch.widths) {
      if (widthFt < LIMITING_SHARE * patch.totalWidthFt) continue
      limit = Math.min(limit, rail.limitOf(key.zone, key.exposed).spanIn)
    }
  }
  // Where not even neighbouring rafters pass, they are used and the failing check is reported.
  return Math.max(limit, rules.rafterSpacingIn)
}

function solve(
  group: readonly RailToLay[],
  rafters: readonly number[],
  rules: LayoutRules,
  demands: Demands,
): readonly number[] | undefined {
  const [first] = group
  if (first === undefined) return undefined
  const { startIn, endIn } = first.loaded.line
  const memo = new Map<string, number>()
  const problem: LayoutProblem = {
    startIn,
    endIn,
    rafters,
    maxCantileverIn: rules.maxCantileverIn,
    maxCantileverOfSpan: rules.maxCantileverOfSpan,
    limitIn: (from, to) => {
      if (rules.optimise) return rules.longestSpanIn
      const key = `${from},${to}`
      const held = memo.get(key) ?? Math.min(...group.map((rail) => limitBetween(rail, rules, from, to)))
      memo.set(key, held)
      return held
    },
  }
  const ratio = (layout: readonly number[]): number => ratioOf(group, layout, demands)
  if (rules.optimise) return optimisedMounts(problem, ratio)
  const fewest = fewestMounts(problem)
  if (fewest === undefined || rules.spacingIn !== undefined) return fewest
  return firstThatPasses(problem, fewest, ratio)
}

/** Adds mounts until the exact check passes; the best layout when none does. */
function firstThatPasses(
  problem: LayoutProblem,
  fewest: readonly number[],
  ratioOf: (layout: readonly number[]) => number,
): readonly number[] {
  let best = { layout: fewest, ratio: ratioOf(fewest) }
  for (let count = fewest.length + 1; best.ratio > 1 && count <= problem.rafters.length; count++) {
    const layout = evenLayout(problem, count)
    if (layout === undefined) continue
    const ratio = ratioOf(layout)
    if (ratio < best.ratio) best = { layout, ratio }
  }
  return best.layout
}
