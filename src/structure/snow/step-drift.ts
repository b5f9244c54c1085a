import { DRIFT_RULES, NO_DRIFTS_7_22, SNOW_RULES, type LoadEdition } from '../../tables/asce7/index.js'
import type { Feet, PoundsPerSquareFoot } from '../../values/index.js'
import { driftHeightFt, snowDensityPcf, type DriftingSnow } from './drift-height.js'

/** A roof below a higher one, with its balanced snow. */
export interface RoofStep extends DriftingSnow {
  /** ps of the lower roof. */
  readonly balancedPsf: PoundsPerSquareFoot
  /** From the lower to the higher roof at the step, ft. */
  readonly stepFt: Feet
  readonly upperLengthFt: Feet
  readonly lowerLengthFt: Feet
  /** Clear distance in plan between the two roofs, ft; 0 where they meet. */
  readonly gapFt: Feet
}

/** A wall or parapet that stands above the roof. */
export interface RoofWall extends DriftingSnow {
  readonly balancedPsf: PoundsPerSquareFoot
  readonly heightFt: Feet
  /** Length of roof up- or downwind of it, the longer one, ft. */
  readonly fetchFt: Feet
  /** Length of the wall itself, ft. */
  readonly lengthFt: Feet
}

/** A triangle of snow against a wall. */
export interface SnowDrift {
  readonly wind: 'leeward' | 'windward'
  readonly fetchFt: Feet
  /** Before it is cut off at the top of the wall, ft. */
  readonly fullHeightFt: Feet
  readonly heightFt: Feet
  readonly widthFt: Feet
  /** On top of the balanced snow at the wall, pd, psf. */
  readonly peakPsf: PoundsPerSquareFoot
}

/** Drifts of a step or wall: those that count, or why there is none; undefined drifts where W2 is needed and not stated. */
export interface DriftsAtWall {
  readonly drifts: readonly SnowDrift[] | undefined
  readonly none?: string
  /** hb: height of the balanced snow, and hc: what is left of the wall above it, ft. */
  readonly balancedHeightFt: Feet
  readonly clearFt: Feet
  readonly densityPcf: number
}

/**
 * Drifts on a roof below a step: leeward with the fetch of the higher roof, windward 0.75 hd with that of the lower one.
 *
 * @returns Up to 7-16 the higher of the two where the roofs meet; each of them in 7-22 and across a gap.
 * @source ASCE 7-10, 7-16, 7-22 7.7.1 and 7.7.2 (secondary)
 * @limits A windward drift behind a gap is not cut off at the edge of the lower roof, which is the safe side.
 */
export function stepDrifts(step: RoofStep): DriftsAtWall {
  const base = wallBase(step, step.stepFt)
  if (base.clearFt <= 0 || base.clearFt < DRIFT_RULES.leastClearShare * base.balancedHeightFt)
    return { ...base, drifts: [], none: 'the balanced snow nearly fills the step (hc / hb < 0.2)' }
  if (isExempt(step, Math.max(step.upperLengthFt, step.lowerLengthFt)))
    return { ...base, drifts: [], none: 'ground snow and fetch are below those of drifts in 7-22' }
  const leeward = leewardDrift(step, base)
  const windward = windwardDrift(step, step.lowerLengthFt, base)
  if (leeward === undefined || windward === undefined) return { ...base, drifts: undefined }
  const both = [leeward, windward].filter((drift) => drift.heightFt > 0)
  if (SNOW_RULES[step.edition].eachDrift || step.gapFt > 0) return { ...base, drifts: both }
  return { ...base, drifts: both.toSorted((a, b) => b.heightFt - a.heightFt).slice(0, 1) }
}

/**
 * Drift at a parapet or another wall above the roof: 0.75 hd; none where it is shorter than 15 ft.
 *
 * @source ASCE 7-10, 7-16, 7-22 7.8 (secondary)
 */
export function wallDrifts(wall: RoofWall): DriftsAtWall {
  const base = wallBase(wall, wall.heightFt)
  if (wall.lengthFt < DRIFT_RULES.leastProjectionFt)
    return { ...base, drifts: [], none: `it is shorter than ${DRIFT_RULES.leastProjectionFt} ft` }
  if (base.clearFt <= 0 || base.clearFt < DRIFT_RULES.leastClearShare * base.balancedHeightFt)
    return { ...base, drifts: [], none: 'the balanced snow nearly covers it (hc / hb < 0.2)' }
  if (isExempt(wall, wall.fetchFt))
    return { ...base, drifts: [], none: 'ground snow and fetch are below those of drifts in 7-22' }
  const drift = windwardDrift(wall, wall.fetchFt, base)
  return { ...base, drifts: drift === undefined ? undefined : [drift].filter(({ heightFt }) => heightFt > 0) }
}

type WallBase = Omit<DriftsAtWall, 'drifts' | 'none'>

function wallBase({ groundPsf, balancedPsf }: RoofStep | RoofWall, heightFt: Feet): WallBase {
  const densityPcf = snowDensityPcf(groundPsf)
  const balancedHeightFt = balancedPsf / densityPcf
  return { balancedHeightFt, clearFt: heightFt - balancedHeightFt, densityPcf }
}

function isExempt({ edition, groundPsf }: { edition: LoadEdition; groundPsf: number }, fetchFt: Feet): boolean {
  if (groundPsf <= 0) return true
  return (
    edition === 'ASCE 7-22' && NO_DRIFTS_7_22.some((none) => groundPsf <= none.groundPsf && fetchFt <= none.fetchFt)
  )
}

function leewardDrift(step: RoofStep, base: WallBase): SnowDrift | undefined {
  const rules = SNOW_RULES[step.edition]
  const fetchFt = Math.max(rules.leastFetchFt, step.upperLengthFt)
  const height = driftHeightFt(step, fetchFt)
  if (height === undefined) return undefined
  const capped = rules.capsByLowerRoof ? Math.min(height, DRIFT_RULES.lowerRoofShare * step.lowerLengthFt) : height
  const wind = 'leeward' as const
  if (step.gapFt <= 0) return cutOff({ wind, fetchFt, fullHeightFt: capped, widths: DRIFT_RULES.widths }, base)
  const reach = DRIFT_RULES.gapSteps * step.stepFt - step.gapFt
  const far = step.gapFt >= DRIFT_RULES.gapFt || reach <= 0
  const across = far ? 0 : Math.min(capped, reach / DRIFT_RULES.gapSteps)
  const heightFt = Math.min(across, base.clearFt)
  return {
    wind,
    fetchFt,
    fullHeightFt: across,
    heightFt,
    widthFt: far ? 0 : Math.min(DRIFT_RULES.gapSteps * capped, reach),
    peakPsf: heightFt * base.densityPcf,
  }
}

function windwardDrift(snow: RoofStep | RoofWall, lengthFt: Feet, base: WallBase): SnowDrift | undefined {
  const rules = SNOW_RULES[snow.edition]
  const fetchFt = Math.max(rules.leastFetchFt, lengthFt)
  const height = driftHeightFt(snow, fetchFt)
  if (height === undefined) return undefined
  const fullHeightFt = DRIFT_RULES.windwardShare * height
  return cutOff({ wind: 'windward', fetchFt, fullHeightFt, widths: rules.windwardWidths }, base)
}

interface FullDrift extends Pick<SnowDrift, 'wind' | 'fetchFt' | 'fullHeightFt'> {
  /** Width over height. */
  readonly widths: number
}

/** A drift that is cut off at the top of the wall gets wider instead. */
function cutOff({ wind, fetchFt, fullHeightFt, widths }: FullDrift, base: WallBase): SnowDrift {
  const heightFt = Math.min(fullHeightFt, base.clearFt)
  const wider = (widths * fullHeightFt ** 2) / base.clearFt
  // A drift that is 8 heights wide to begin with keeps at least that.
  const most = Math.max(
    DRIFT_RULES.mostClearWidths * base.clearFt,
    widths > DRIFT_RULES.widths ? widths * fullHeightFt : 0,
  )
  return {
    wind,
    fetchFt,
    fullHeightFt,
    heightFt,
    widthFt: fullHeightFt <= base.clearFt ? widths * fullHeightFt : Math.min(wider, most),
    peakPsf: heightFt * base.densityPcf,
  }
}
