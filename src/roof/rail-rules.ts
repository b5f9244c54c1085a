import type { RoofProject } from '../project/index.js'
import { own, type Inches } from '../values/index.js'

/** Longest span looked at when the rail sheet sets none, in. */
const LONGEST_SPAN_IN = 144

/** Space between a mount and the edge of the plane when it is not stated, in. @source common practice, no source */
export const MOUNT_EDGE_IN = 3

/** Space between a mount and an obstruction when it is not stated, in. @source common practice, no source */
export const MOUNT_CLEARANCE_IN = 6

/** How mounts may stand under a rail. */
export interface RailRules {
  /** Longest free end past the first and last mount, in. */
  readonly maxCantileverIn: Inches
  /** Longest free end as a share of the next span; Infinity when the sheet sets none. */
  readonly maxCantileverOfSpan: number
  /** Longest distance between neighbouring mounts, in. */
  readonly longestSpanIn: Inches
}

/**
 * Rules of the chosen rail for its mounts, with what the person wishes narrower.
 *
 * @returns undefined when no rail is chosen or its sheet does not limit the free end.
 */
export function railRules(project: RoofProject): RailRules | undefined {
  const { structure } = project
  const rail = own(project.equipment.rails, structure?.rail)
  if (rail?.max_cantilever_in === undefined) return undefined
  return {
    maxCantileverIn: Math.min(rail.max_cantilever_in, structure?.max_cantilever_in ?? Infinity),
    maxCantileverOfSpan: rail.max_cantilever_of_span ?? Infinity,
    longestSpanIn: rail.max_span_in ?? LONGEST_SPAN_IN,
  }
}

/** Longest distance between mounts that the chosen rail's sheet allows, in. */
export function sheetSpanIn(rail: { readonly max_span_in?: Inches }): Inches {
  return rail.max_span_in ?? LONGEST_SPAN_IN
}

const SLACK_IN = 1e-6

/** Whether a free end is within its longest length and its share of the span beside it. */
export function freeEndFits(freeIn: Inches, spanIn: Inches, rules: Omit<RailRules, 'longestSpanIn'>): boolean {
  return freeIn <= rules.maxCantileverIn + SLACK_IN && freeIn <= rules.maxCantileverOfSpan * spanIn + SLACK_IN
}

/**
 * The fewest mounts that hold a rail, Infinity when no set of rafters keeps spans and free ends.
 *
 * @param rail Its ends, in.
 * @param rafters Rafters that may carry a mount of it, in, ascending; those off the rail are passed over.
 */
export function fewestOnRafters(
  { startIn, endIn }: { readonly startIn: Inches; readonly endIn: Inches },
  rafters: readonly Inches[],
  rules: RailRules,
): number {
  // Fewest mounts of a row of mounts that begins rightly and ends at a rafter, two at least.
  const reached: number[] = []
  const first = rafters.find((x) => x >= startIn - SLACK_IN) ?? Infinity
  const final = rafters.findLast((x) => x <= endIn + SLACK_IN) ?? -Infinity
  const { maxCantileverIn } = rules
  if (first - startIn > maxCantileverIn + SLACK_IN || endIn - final > maxCantileverIn + SLACK_IN) return Infinity
  let best = Infinity
  for (let last = 0; last < rafters.length; last++) {
    const x = rafters[last] ?? 0
    let fewest = Infinity
    if (x > endIn + SLACK_IN) break
    for (let before = last - 1; before >= 0; before--) {
      const from = rafters[before] ?? 0
      const span = x - from
      if (span > rules.longestSpanIn + SLACK_IN || from < startIn - SLACK_IN) break
      const here = freeEndFits(from - startIn, span, rules) ? 2 : (reached[before] ?? Infinity) + 1
      fewest = Math.min(fewest, here)
      if (here < best && freeEndFits(endIn - x, span, rules)) best = here
    }
    reached.push(fewest)
  }
  return best
}
