import type { Worksheet } from '../../worksheet/index.js'
import { layRails, type LaidRail, type LayoutRules, type RailToLay } from '../rails/index.js'
import { at, type Inches } from '../../values/index.js'

/**
 * Lays the rails, and where the rafters bend too much under the mounts puts these closer together, one rafter at a time.
 *
 * @param ratioOf Highest ratio of bending of the rafters under a layout.
 * @returns The widest layout under which the rafters pass, otherwise the one with the lowest ratio.
 */
export function sparingRafters(
  plane: string,
  rails: readonly RailToLay[],
  rules: LayoutRules,
  ratioOf: (laid: readonly LaidRail[]) => number,
  worksheet: Worksheet,
): LaidRail[] {
  const widest = layRails(rails, rules)
  const [first, before] = [widestGapIn(widest), ratioOf(widest)]
  if (before <= 1 || rules.spacingIn !== undefined) return widest
  let best = { laid: widest, ratio: before }
  // Below the widest gap that is used, each multiple of the rafter spacing is a layout of its own.
  for (
    let limitIn = first - rules.rafterSpacingIn;
    limitIn >= rules.rafterSpacingIn - 1e-6;
    limitIn -= rules.rafterSpacingIn
  ) {
    const laid = layRails(rails, { ...rules, longestSpanIn: limitIn })
    if (laid.some((rail) => rail.limitsBroken)) break
    const ratio = ratioOf(laid)
    if (ratio < best.ratio - 1e-9) best = { laid, ratio }
    if (ratio <= 1) break
  }
  if (best.laid !== widest) {
    worksheet.find({
      severity: 'note',
      id: 'structure.closer-for-rafters',
      message: `plane '${plane}': mounts stand at most ${widestGapIn(best.laid).toFixed(1)} in apart instead of ${first.toFixed(1)} in, so that the rafters use ${(100 * best.ratio).toFixed(0)} instead of ${(100 * before).toFixed(0)} % of what they may bend`,
      where: `structure.framing.${plane}`,
      fix: 'Nothing to do; with a wished spacing, or a document that the rafters stand on, mounts are not put closer for their sake.',
    })
  }
  return best.laid
}

function widestGapIn(laid: readonly LaidRail[]): Inches {
  return Math.max(0, ...laid.flatMap(({ supportsIn }) => supportsIn.slice(1).map((x, i) => x - at(supportsIn, i))))
}
