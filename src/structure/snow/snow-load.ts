import {
  FLAT_ROOF_SNOW,
  LOW_SLOPE_SNOW,
  SLOPE_LINE_THERMAL,
  SNOW_EXPOSURE,
  SNOW_IMPORTANCE,
  SNOW_SLOPE_LINES,
  type Exposure,
  type LoadEdition,
  type RoofExposure,
  type SlopeFactorLine,
} from '../../tables/asce7/index.js'
import type { Degrees, PoundsPerSquareFoot } from '../../values/index.js'

/** What the snow on a roof depends on. */
export interface SnowOnRoof {
  readonly edition: LoadEdition
  /** At the level at which the person stated it, and so is all snow that comes of it. */
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
export function flatRoofSnowPsf(snow: Omit<SnowOnRoof, 'edition' | 'tiltDeg' | 'minimumPsf'>): PoundsPerSquareFoot {
  const exposureFactor = SNOW_EXPOSURE[snow.exposure][snow.roofExposure]
  return FLAT_ROOF_SNOW * exposureFactor * snow.thermalFactor * SNOW_IMPORTANCE * snow.groundPsf
}

/** What the slope factor depends on besides the slope. */
export interface SlopeSurface {
  readonly edition: LoadEdition
  /** Ct. */
  readonly thermalFactor: number
  /** slippery only where nothing holds the snow and there is room for it below the eave. */
  readonly surface: 'slippery' | 'other'
}

/**
 * Roof slope factor Cs.
 *
 * @param tiltDeg Slope from level, degrees.
 * @returns Pure number from 0 to 1.
 * @source ASCE 7 figure 7.4-1 by edition (secondary)
 * @example snowSlopeFactor(18.435, { edition: 'ASCE 7-16', thermalFactor: 1, surface: 'slippery' }) is 0.7933
 */
export function snowSlopeFactor(tiltDeg: Degrees, { edition, thermalFactor, surface }: SlopeSurface): number {
  const roof = roofOf(edition, thermalFactor)
  const line = SNOW_SLOPE_LINES.find((row) => row.surface === surface && row.roof === roof)
  if (line === undefined) return 1
  const share = (tiltDeg - line.fullToDeg) / (line.noneFromDeg - line.fullToDeg)
  return 1 - Math.min(1, Math.max(0, share))
}

/** Warmth of the roof by Ct, as the lines of the slope factor tell it. */
function roofOf(edition: LoadEdition, thermalFactor: number): SlopeFactorLine['roof'] {
  const { warmUpTo, betweenUpTo, betweenIncluded } = SLOPE_LINE_THERMAL[edition]
  if (thermalFactor <= warmUpTo + 1e-9) return 'warm'
  return thermalFactor <= betweenUpTo + (betweenIncluded ? 1e-9 : -1e-9) ? 'between' : 'cold'
}

/**
 * Balanced snow on a sloped roof, psf of horizontal area: ps = Cs pf, at least the low-slope and the local minimum.
 *
 * @source ASCE 7-16 eq. 7.4-1 and 7.3.4 (secondary)
 * @limits The balanced case alone; the others are of `planeSnowCases`.
 */
export function slopedRoofSnowPsf(snow: SnowOnRoof, surface: 'slippery' | 'other'): PoundsPerSquareFoot {
  const balanced = snowSlopeFactor(snow.tiltDeg, { ...snow, surface }) * flatRoofSnowPsf(snow)
  const lowSlope =
    snow.tiltDeg < LOW_SLOPE_SNOW.belowDeg ? SNOW_IMPORTANCE * Math.min(snow.groundPsf, LOW_SLOPE_SNOW.capPsf) : 0
  return Math.max(balanced, lowSlope, snow.minimumPsf)
}
