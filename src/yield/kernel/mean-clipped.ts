import { normalBelow, normalDensity } from '../../values/index.js'
import type { Real } from './memory.js'

/** Spreads of this many standard deviations and more below the limit clip nothing that counts. */
export const REACH_SPREADS: Real = 4

/** The spread is at most 140/350 of the light above 52 W/m2, so power further below a limit than this never reaches it. */
export const REACH_OF_MEAN: Real = 1 + (REACH_SPREADS * 140) / 350

/**
 * Power that a limit cuts off on average when power varies normally about its mean.
 *
 * @param meanW Mean power without the limit, W. @param limitW The limit, W. @param spreadW Standard deviation, W.
 * @returns E = s phi(x) + (P - L) Phi(x), x = (P - L)/s, W; never less than what the mean alone loses.
 * @source Mean of the excess of a normal variable over a limit (elementary).
 */
export function meanClippedW(meanW: Real, limitW: Real, spreadW: Real): Real {
  const above = meanW - limitW
  if (spreadW <= 0) return Math.max(0, above)
  const x = above / spreadW
  return Math.max(Math.max(0, above), spreadW * normalDensity(x) + above * normalBelow(x))
}
