import { COLUMN_C, MOST_SLENDERNESS, UNBRACED_LENGTH } from '../../tables/nds/index.js'
import { at, type Inches, type PoundsPerSquareInch } from '../../values/index.js'
import type { WoodStrength } from './wood-strength.js'

type Section = Pick<WoodStrength, 'breadthIn' | 'depthIn' | 'stabilityPsi'>

/**
 * Slenderness RB of a member whose compression edge is held at its ends only.
 *
 * @param unbracedIn Distance between points that hold the compression edge, in.
 * @returns Pure number; the standard allows up to 50.
 * @source NDS 2018 3.3.3.6 and table 3.3.3 (secondary)
 */
export function slendernessOf({ breadthIn: b, depthIn: d }: Section, unbracedIn: Inches): number {
  const row = UNBRACED_LENGTH.find(({ upToDepths }) => unbracedIn / d <= upToDepths) ?? at(UNBRACED_LENGTH, 2)
  const effectiveIn = row.lengths * unbracedIn + row.depths * d
  return Math.sqrt((effectiveIn * d) / b ** 2)
}

/**
 * Beam stability factor CL of a member whose compression edge is held at its ends only.
 *
 * @param unbracedIn Distance between points that hold the compression edge, in.
 * @param bendingPsi Fb with all factors but CL, load duration included.
 * @returns Pure number from 0 to 1; 0 over a slenderness of 50, which the standard does not allow.
 * @source NDS 2018 3.3.3 (secondary)
 */
export function beamStability(section: Section, unbracedIn: Inches, bendingPsi: PoundsPerSquareInch): number {
  if (unbracedIn <= 0) return 1
  const slenderness = slendernessOf(section, unbracedIn)
  if (slenderness > MOST_SLENDERNESS) return 0
  const alpha = (1.2 * section.stabilityPsi) / slenderness ** 2 / bendingPsi
  const half = (1 + alpha) / 1.9
  return half - Math.sqrt(half ** 2 - alpha / 0.95)
}

/** Depth of a 2x8, in: up to it, 4 to 1 by nominal sizes, held ends are enough. @source NDS 2018 4.4.1.2 (secondary) */
export const ENDS_ENOUGH_DEPTH_IN = 7.25

/**
 * CL where the lower edge is pressed, by wind from below or over a support: 1 when a ceiling holds it, or when held ends are enough.
 *
 * @param asShallow What a 2x8 of the same wood bears, over what this section bears with CL 1: a deeper rafter counts for no less.
 * @source NDS 2018 4.4.1.2, ratio of nominal sizes up to 4 (secondary); else 3.3.3
 */
export function lowerEdgeStability(
  section: Section,
  unbracedIn: Inches,
  bendingPsi: PoundsPerSquareInch,
  { isHeld, asShallow }: { readonly isHeld: boolean; readonly asShallow: number },
): number {
  if (isHeld || section.depthIn <= ENDS_ENOUGH_DEPTH_IN) return 1
  return Math.max(Math.min(1, asShallow), beamStability(section, unbracedIn, bendingPsi))
}

/**
 * Column stability factor CP.
 *
 * @param lengthIn Unbraced length about the strong axis (sheathing holds the weak one), in.
 * @param compressionPsi Fc with all factors but CP, load duration included.
 * @source NDS 2018 3.7.1 (secondary)
 */
export function columnStability(
  section: Section,
  lengthIn: Inches,
  compressionPsi: PoundsPerSquareInch,
): { factor: number; eulerPsi: PoundsPerSquareInch } {
  const eulerPsi = (0.822 * section.stabilityPsi) / (lengthIn / section.depthIn) ** 2
  const ratio = eulerPsi / compressionPsi
  const half = (1 + ratio) / (2 * COLUMN_C)
  return { factor: half - Math.sqrt(half ** 2 - ratio / COLUMN_C), eulerPsi }
}
