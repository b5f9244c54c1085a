import { bareRoofPressurePsf, type WindOnPlane } from './wind-pressure.js'
import type { PoundsPerSquareFoot, SquareFeet } from '../../values/index.js'

/** Area at which coefficients of small parts of the roof are read, ft2: they are largest at 10 ft2 and below. */
const SMALL_PART_FT2: SquareFeet = 10

/**
 * Suction of wind on a small part of the roof itself (a clip of a panel, the nails at one place), psf, strength level.
 *
 * @returns psf, positive; as on the bare roof, as modules above are not taken to keep the wind off.
 * @source ASCE 7-16 and 7-22 eq. 30.3-1, ASCE 7-10 eq. 30.4-1: p = qh (|GCp| + 0.18), at least 16 psf (secondary)
 */
export function roofSuctionPsf(wind: WindOnPlane, zone: string): PoundsPerSquareFoot {
  return bareRoofPressurePsf(wind, zone, SMALL_PART_FT2, 'uplift')
}
