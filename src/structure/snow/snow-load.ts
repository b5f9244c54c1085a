import {
  FLAT_ROOF_SNOW,
  LOW_SLOPE_SNOW,
  SNOW_EXPOSURE,
  SNOW_IMPORTANCE,
  SNOW_SLOPE_LINES,
  type Exposure,
  type RoofExposure,
} from '../../tables/asce7/index.js'
import type { Degrees, PoundsPerSquareFoot } from '../../values/index.js'

/** What the snow on a roof depends on. */
export interface SnowOnRoof {
  readonly groundPsf: PoundsPerSquareFoot
  readonly exposure: Exposure
  readonly roofExposure: RoofExposure
  /** Ct. */
  readonly thermalFactor: number
  readonly tiltDeg: Degrees
  /** Least roof snow that the authority prescribes, psf on the horizontal. */
  readonly minimumPsf: PoundsPerSquareFoot
}

/**
 * Snow on a flat roof, psf: pf = 0.7 Ce Ct Is pg.
 *
 * @source ASCE 7-16 eq. 7.3-1 (secondary); Risk Category II, Is = 1
 */
export function flatRoofSnowPsf(snow: Omit<SnowOnRoof, 'tiltDeg' | 'minimumPsf'>): PoundsPerSquareFoot {
  const exposureFactor = SNOW_EXPOSURE[snow.exposure][snow.roofExposure]
  return FLAT_ROOF_SNOW * exposureFactor * snow.thermalFactor * SNOW_IMPORTANCE * snow.groundPsf
}

/**
 * Roof slope factor Cs.
 *
 * @param tiltDeg Slope from level, degrees.
 * @param thermalFactor Ct.
 * @param surface slippery only where nothing holds the snow and there is room for it below the eave.
 * @returns Pure number from 0 to 1.
 * @source ASCE 7-16 figure 7.4-1 (secondary)
 * @example snowSlopeFactor(18.435, 1, 'slippery') is 0.7933
 */
export function snowSlopeFactor(tiltDeg: Degrees, thermalFactor: number, surface: 'slippery' | 'other'): number {
  const line = SNOW_SLOPE_LINES.find((row) => row.surface === surface && thermalFactor <= row.thermalUpTo + 1e-9)
  if (line === undefined) return 1
  const share = (tiltDeg - line.fullToDeg) / (line.noneFromDeg - line.fullToDeg)
  return 1 - Math.min(1, Math.max(0, share))
}

/**
 * Balanced snow on a sloped roof, psf of horizontal area: ps = Cs pf, at least the low-slope and the local minimum.
 *
 * @source ASCE 7-16 eq. 7.4-1 and 7.3.4 (secondary)
 * @limits No drifts, no snow that slides from a higher roof or is held above the array.
 */
export function slopedRoofSnowPsf(snow: SnowOnRoof, surface: 'slippery' | 'other'): PoundsPerSquareFoot {
  const balanced = snowSlopeFactor(snow.tiltDeg, snow.thermalFactor, surface) * flatRoofSnowPsf(snow)
  const lowSlope =
    snow.tiltDeg < LOW_SLOPE_SNOW.belowDeg ? SNOW_IMPORTANCE * Math.min(snow.groundPsf, LOW_SLOPE_SNOW.capPsf) : 0
  return Math.max(balanced, lowSlope, snow.minimumPsf)
}
