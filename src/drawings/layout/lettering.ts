import { CAP_HEIGHT, POINTS_PER_INCH, type PaperSize } from '../model/index.js'
import { TYPE_PT } from './text.js'

/** Least height of lettering, inches of capitals, on paper that is meant to be read as it is. @source drafting practice, 3/32 in as plotted (secondary). */
const LEAST_CAPITAL_IN = 3 / 32
/** Least height of type, points: "10 point or larger" on plans. @source permit guide of a large city's building department, read. */
const LEAST_TYPE_PT = 10
/** Letter paper is half of the usual sheet; capitals keep a twelfth of an inch on it, in. */
const LEAST_CAPITAL_LETTER_IN = 0.081
/** Long side below which paper counts as a reduced sheet, points. */
const REDUCED_BELOW_PT = 1000

/**
 * How much larger a sheet is printed than it is laid out, so that its least type (`TYPE_PT.small`) keeps the least height.
 *
 * @param leastTextIn Height of capitals that the authority asks for, in; it stands instead of the common one.
 */
export function enlargementOf(size: PaperSize, leastTextIn?: number): number {
  const capital = (heightIn: number): number => (heightIn * POINTS_PER_INCH) / CAP_HEIGHT
  if (leastTextIn !== undefined) return capital(leastTextIn) / TYPE_PT.small
  const leastPt = isReduced(size)
    ? capital(LEAST_CAPITAL_LETTER_IN)
    : Math.max(LEAST_TYPE_PT, capital(LEAST_CAPITAL_IN))
  return leastPt / TYPE_PT.small
}

/** Whether a sheet of paper is about half of the usual one, so that its lettering is that of a reduced print. */
export function isReduced({ widthPt }: PaperSize): boolean {
  return widthPt < REDUCED_BELOW_PT
}
