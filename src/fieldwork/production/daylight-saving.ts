import type { Milliseconds } from '../../values/index.js'

const DAY_MS = 86_400_000
const HOUR_MS = 3_600_000

/**
 * Standard time of a clock reading in the United States, ms as if UTC.
 *
 * @param clockMs Reading of the clock on the wall, as if UTC.
 * @param second Whether this is the second time that the clock shows it, in the hour that comes twice in autumn.
 * @returns undefined for the hour that does not exist in spring.
 * @source Energy Policy Act of 2005, section 110: second Sunday of March to first Sunday of November, 02:00 (from memory).
 * @limits Years from 2007.
 */
export function standardMs(clockMs: Milliseconds, second: boolean): Milliseconds | undefined {
  const year = new Date(clockMs).getUTCFullYear()
  const spring = sundayMs(year, 2, 2) + 2 * HOUR_MS
  const autumn = sundayMs(year, 10, 1) + 2 * HOUR_MS
  if (clockMs < spring || clockMs >= autumn) return clockMs
  if (clockMs < spring + HOUR_MS) return undefined
  return clockMs >= autumn - HOUR_MS && second ? clockMs : clockMs - HOUR_MS
}

/** Beginning of the hours, as the clock shows them, that are skipped in spring and come twice in autumn. */
export function changeHours(year: number): { readonly skippedMs: Milliseconds; readonly twiceMs: Milliseconds } {
  return { skippedMs: sundayMs(year, 2, 2) + 2 * HOUR_MS, twiceMs: sundayMs(year, 10, 1) + HOUR_MS }
}

/** Midnight of the nth Sunday. @param month 0 to 11. */
function sundayMs(year: number, month: number, nth: number): Milliseconds {
  const first = Date.UTC(year, month, 1)
  return first + (((7 - new Date(first).getUTCDay()) % 7) + 7 * (nth - 1)) * DAY_MS
}
