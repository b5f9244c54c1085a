import { SNOW_RULES, UNBALANCED_SNOW } from '../../tables/asce7/index.js'
import { pitchIn12Of, radiansOf, type Degrees, type Feet, type PoundsPerSquareFoot } from '../../values/index.js'
import { driftHeightFt, snowDensityPcf, type DriftingSnow } from './drift-height.js'

/** Whether wind may carry the snow of a gable or hip roof of this slope over the ridge. @source ASCE 7-16 7.6.1 (secondary) */
export function isUnbalancedSlope(tiltDeg: Degrees): boolean {
  return tiltDeg > UNBALANCED_SNOW.overDeg && pitchIn12Of(tiltDeg) <= UNBALANCED_SNOW.upToPitchIn12 + 1e-9
}

/** Which forms of unbalanced snow a plane takes: the whole ground snow, or a heap behind the ridge. */
export interface UnbalancedForms {
  readonly whole: boolean
  readonly heap: boolean
}

/**
 * Forms of unbalanced snow: whole ground snow for rafters from eave to ridge up to 20 ft; a heap behind the ridge for trusses and
 * longer planes; both for rafters that run through over a purlin, which are neither.
 *
 * @param eaveToRidgeFt Horizontal.
 * @source ASCE 7-16 and 7-22 7.6.1 (secondary)
 */
export function unbalancedForms(
  eaveToRidgeFt: Feet,
  framing: 'rafter' | 'continuous rafter' | 'truss',
): UnbalancedForms {
  const short = eaveToRidgeFt <= UNBALANCED_SNOW.shortFt + 1e-9 && framing !== 'truss'
  return { whole: short, heap: !short || framing !== 'rafter' }
}

/** Balanced snow that is blown over a ridge. */
export interface RidgeSnow extends DriftingSnow {
  /** ps. */
  readonly balancedPsf: PoundsPerSquareFoot
  readonly tiltDeg: Degrees
  /** Eave to ridge of the windward side, horizontal, ft. */
  readonly windwardFt: Feet
}

/** Snow on both sides of a ridge. */
export interface UnbalancedSnow {
  readonly windwardPsf: PoundsPerSquareFoot
  /** Fetch lu, with the least that the edition asks for. */
  readonly fetchFt: Feet
  readonly heightFt: Feet
  readonly densityPcf: number
  /** S: run for a rise of one. */
  readonly run: number
  /** On top of the balanced snow of the leeward side, from the ridge down over the extent, even. */
  readonly surchargePsf: PoundsPerSquareFoot
  readonly extentFt: Feet
}

/**
 * The heap behind the ridge: hd gamma / sqrt(S) over 8 sqrt(S) hd / 3 from the ridge; 0.3 ps stays on the windward side.
 *
 * @returns undefined when the edition needs W2 and it is not stated.
 * @source ASCE 7-16 and 7-22 7.6.1 and figure 7.6-2 (secondary, checked against the commentary example)
 */
export function unbalancedSnow(snow: RidgeSnow): UnbalancedSnow | undefined {
  const fetchFt = Math.max(SNOW_RULES[snow.edition].leastRidgeFetchFt, snow.windwardFt)
  const heightFt = driftHeightFt(snow, fetchFt)
  if (heightFt === undefined) return undefined
  const run = 1 / Math.tan(radiansOf(snow.tiltDeg))
  const densityPcf = snowDensityPcf(snow.groundPsf)
  return {
    windwardPsf: UNBALANCED_SNOW.windwardShare * snow.balancedPsf,
    fetchFt,
    heightFt,
    densityPcf,
    run,
    surchargePsf: (heightFt * densityPcf) / Math.sqrt(run),
    extentFt: (8 * Math.sqrt(run) * heightFt) / 3,
  }
}
