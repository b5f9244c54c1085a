import { LAG_SCREWS, type LagSize } from '../../tables/nds/index.js'
import type { Inches, Pounds } from '../../values/index.js'

/**
 * Reference withdrawal design value of a lag screw in side grain, W = 1800 G^1.5 D^0.75.
 *
 * @param specificGravity G, 0.31 to 0.73.
 * @param diameterIn Nominal diameter D, in.
 * @returns lb per inch of thread in the wood, tip left out.
 * @source NDS 2018 eq. 12.2-1 (11.2-1 in NDS 2012), reproduces table 12.2A
 */
export function withdrawalPerInchLb(specificGravity: number, diameterIn: Inches): Pounds {
  return 1800 * specificGravity ** 1.5 * diameterIn ** 0.75
}

/** A lag screw and what it passes through before it reaches the rafter. */
export interface LagInRafter {
  readonly size: LagSize
  /** Under the head, in. */
  readonly lengthIn: Inches
  /** Thread including the tip, in; the standard table's when undefined. */
  readonly threadLengthIn: Inches | undefined
  /** Mount base, roofing and sheathing together, in. */
  readonly aboveRafterIn: Inches
  readonly rafterDepthIn: Inches
}

/**
 * Thread that really holds in the rafter, tip left out, in.
 *
 * @returns in; 0 when the screw does not reach.
 * @source NDS 2018 12.2.1.1 and appendix L, table L2: T = min(6, L / 2 + 1/2)
 */
export function threadInRafterIn(lag: LagInRafter): Inches {
  const { tipIn } = LAG_SCREWS[lag.size]
  const thread = lag.threadLengthIn ?? Math.min(6, lag.lengthIn / 2 + 0.5)
  return Math.max(0, Math.min(thread - tipIn, penetrationIn(lag)))
}

/** Length of the screw in the rafter without its tip, thread or not, in. @source NDS 2018 12.1.4.6 */
export function penetrationIn(lag: LagInRafter): Inches {
  const reach = lag.lengthIn - lag.aboveRafterIn - LAG_SCREWS[lag.size].tipIn
  return Math.max(0, Math.min(reach, lag.rafterDepthIn))
}
