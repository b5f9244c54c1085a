import type { Obstruction } from '../project/index.js'
import { inchesOf, type Inches } from '../values/index.js'
import type { RafterGrid } from './rafter-lines.js'

/** What is built through a roof, so that the rafters under it are headed off. */
const BUILT_THROUGH: readonly Obstruction['kind'][] = ['chimney', 'skylight', 'dormer']

/** Rafters with their breadth, and the numbers of those that a person knows not to be whole. */
export interface RaftersWithCuts extends RafterGrid {
  readonly breadthIn: Inches
  readonly cutRafters: readonly number[]
}

/**
 * Numbers of rafters that are not whole: stated ones, and those that a chimney, skylight or dormer stands on.
 *
 * @source IRC R802.9, openings in roof framing need headers and trimmers (from memory)
 */
export function cutRafters(framing: RaftersWithCuts, obstructions: readonly Obstruction[]): ReadonlySet<number> {
  const cut = new Set(framing.cutRafters)
  const half = framing.breadthIn / 2
  for (const o of obstructions) {
    if (!BUILT_THROUGH.includes(o.kind)) continue
    const [from, to] = [inchesOf(o.x_ft) - half, inchesOf(o.x_ft + o.width_ft) + half]
    const first = Math.max(1, Math.ceil((from - framing.firstOffsetIn) / framing.spacingIn) + 1)
    for (let n = first; framing.firstOffsetIn + (n - 1) * framing.spacingIn < to - 1e-9; n++) {
      if (framing.firstOffsetIn + (n - 1) * framing.spacingIn > from + 1e-9) cut.add(n)
    }
  }
  return cut
}
