import type { Source } from '../worksheet/index.js'

/** Where the spread within an hour comes from. */
export const SPREAD_SOURCE: Source = {
  document:
    'fit to 15 days of ten-minute light on a plane at Saint-Pierre, La Reunion (clipped 1.46, 6.3 and 11.8 % against 1.46, 6.0 and 11.3 % measured, at DC to AC 1.3, 1.5 and 1.7); fading of clear hours is judgement; not tested elsewhere',
  place: 's = 140 W/m2 x clip(min(G, 1050 - G)/350, 0.15, 1) x clip((0.80 - kt)/0.25, 0.1, 1)',
  standing: 'secondary',
}

/** Spread of light in the middle of its range, W/m2, and the light about which it is symmetric. */
const MOST_WM2 = 140
const UPPER_WM2 = 1050
const FLANK_WM2 = 350
const LEAST_SHARE = 0.15
/** Clearness from which an hour counts as cloudless, and over which its spread fades. */
const CLEAR_KT = 0.8
const FADE_KT = 0.25
const LEAST_CLEAR = 0.1

/**
 * Standard deviation of the light on a plane within an hour, over its mean.
 *
 * @param planeWM2 Mean light on the plane, W/m2. @param clearness Global over extraterrestrial light on the level.
 * @returns A share of 1; 0 in the dark.
 * @source `SPREAD_SOURCE`
 */
export function spreadWithinHour(planeWM2: number, clearness: number): number {
  if (planeWM2 <= 0) return 0
  const flank = Math.min(1, Math.max(LEAST_SHARE, Math.min(planeWM2, UPPER_WM2 - planeWM2) / FLANK_WM2))
  const clouds = Math.min(1, Math.max(LEAST_CLEAR, (CLEAR_KT - clearness) / FADE_KT))
  return (MOST_WM2 * flank * clouds) / planeWM2
}
