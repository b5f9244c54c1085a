import {
  largerStandardDevices,
  NEXT_SIZE_UP_LIMIT_A,
  smallerStandardDevices,
  standardDevices,
  type Edition,
} from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import type { Amperes } from '../../values/index.js'

/** Relative noise of floating-point sums; 13 x 1.2307692 A is not more than 16 A because of it. */
const NOISE = 1e-12

/**
 * The smallest standard overcurrent device that is not below a current.
 *
 * @param requiredA Current, A, already with its 125 percent; above 0.
 * @returns Rating, A.
 * @throws StageError above the largest rating of the table.
 * @source NEC 240.6(A)
 */
export function nextStandardDeviceA(requiredA: Amperes, where: string): Amperes {
  const rating = standardDevices.find((device) => device >= requiredA * (1 - NOISE))
  if (rating === undefined)
    throw new StageError(
      where,
      `${requiredA.toFixed(1)} A is above the largest standard overcurrent device of the table, ${standardDevices.at(-1)} A`,
      'This tool is for small systems; divide the system or ask an electrical engineer',
    )
  return rating
}

/**
 * The largest standard device that is not above a limit.
 *
 * @param limitA Limit, A.
 * @returns Rating, A, or 0 when even the smallest is above the limit.
 * @source NEC 240.6(A)
 */
export function largestStandardDeviceA(limitA: Amperes): Amperes {
  return standardDevices.findLast((device) => device <= limitA * (1 + NOISE)) ?? 0
}

/**
 * The standard ratings beside one that is none.
 *
 * @param ratingA Rating as stated, A.
 * @returns undefined for a standard rating; a side is undefined beyond the ends of the table.
 * @source NEC 240.6(A)
 */
export function standardNeighbours(
  edition: Edition,
  ratingA: Amperes,
): { readonly below: number | undefined; readonly above: number | undefined } | undefined {
  const made = [...(smallerStandardDevices[edition] ?? []), ...standardDevices, ...largerStandardDevices]
  if (made.includes(ratingA)) return undefined
  return { below: made.findLast((device) => device < ratingA), above: made.find((device) => device > ratingA) }
}

/**
 * Whether a device protects a conductor: not above its ampacity, or the next standard size above it.
 *
 * @param deviceA Rating of the device, A.
 * @param ampacityA Ampacity after all factors and the terminal limit, A.
 * @source NEC 240.4, 240.4(B)
 */
export function deviceProtects(deviceA: Amperes, ampacityA: Amperes): boolean {
  if (deviceA <= ampacityA) return true
  if (deviceA > NEXT_SIZE_UP_LIMIT_A) return false
  return standardDevices.find((device) => device >= ampacityA) === deviceA
}
