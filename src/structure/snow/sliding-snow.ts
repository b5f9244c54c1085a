import { SLIDING_SNOW } from '../../tables/asce7/index.js'
import {
  pitchIn12Of,
  type Degrees,
  type Feet,
  type PoundsPerFoot,
  type PoundsPerSquareFoot,
} from '../../values/index.js'

/** Whether snow slides off a roof onto a lower one. @source ASCE 7-16 7.9 (secondary) */
export function slidesOff(tiltDeg: Degrees, slippery: boolean): boolean {
  const over = slippery ? SLIDING_SNOW.slipperyOverPitchIn12 : SLIDING_SNOW.otherOverPitchIn12
  return pitchIn12Of(tiltDeg) > over
}

/** Snow that slides from a higher roof, per foot of its eave and spread over the lower roof. */
export interface SlidingSnow {
  readonly perFootPlf: PoundsPerFoot
  readonly psf: PoundsPerSquareFoot
}

/**
 * Sliding snow: 0.4 pf W over 15 ft from the eave of the higher roof; on a narrower roof the rest falls off, the pressure stays.
 *
 * @param flatPsf pf of the higher roof.
 * @param eaveToRidgeFt W of the higher roof, horizontal.
 * @source ASCE 7-16 7.9 (secondary, two texts)
 */
export function slidingSnow(flatPsf: PoundsPerSquareFoot, eaveToRidgeFt: Feet): SlidingSnow {
  const perFootPlf = SLIDING_SNOW.share * flatPsf * eaveToRidgeFt
  return { perFootPlf, psf: perFootPlf / SLIDING_SNOW.overFt }
}

/** A roof with an array of smooth glass and a strip of rougher covering below it. */
export interface StripBelow {
  /** ps on the covering and on the glass, psf. */
  readonly coveringPsf: PoundsPerSquareFoot
  readonly glassPsf: PoundsPerSquareFoot
  /** Up the slope, ft. */
  readonly arrayFt: Feet
  readonly stripFt: Feet
}

/**
 * Most snow on the strip below an array when all that leaves the glass stops there, psf: q = ps + (ps - ps,glass) L array / L strip.
 *
 * @source balance of masses, unverified (common practice, no source); on the safe side
 */
export function stripBelowPsf({ coveringPsf, glassPsf, arrayFt, stripFt }: StripBelow): PoundsPerSquareFoot {
  return coveringPsf + (Math.max(0, coveringPsf - glassPsf) * arrayFt) / stripFt
}
