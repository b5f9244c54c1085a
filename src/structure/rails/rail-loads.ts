import { hingedBeam, type BeamModel, type LineLoad } from '../beam/index.js'
import type { CombinedLoad } from '../loads/index.js'
import { windPressurePsf } from '../wind/index.js'
import { at, feetOf, type Inches, type SquareFeet } from '../../values/index.js'
import type { LoadedRail } from './loaded-rail.js'
import { LEAST_AREA_FT2, patchLoads } from './rail-patches.js'

/** A rail on its mounts, in places. */
export interface SupportedRail {
  readonly supportsIn: readonly Inches[]
  /** Joints without bending strength; none when missing. */
  readonly hingesIn?: readonly Inches[]
}

/** A rail as a beam under loads, with its hinges. */
export function railBeam(
  { line }: Pick<LoadedRail, 'line'>,
  { supportsIn, hingesIn = [] }: SupportedRail,
  loads: readonly LineLoad[],
): BeamModel {
  return hingedBeam({ startIn: line.startIn, endIn: line.endIn, supportsIn, loads }, hingesIn)
}

/** Smallest area that a span of the rail carries, ft2, at which the wind on the rail is read: the safe side. */
function leastSpanAreaFt2(rail: LoadedRail, supports: readonly number[]): SquareFeet {
  const width = Math.max(...rail.patches.map((patch) => patch.totalWidthFt))
  const spans = supports.slice(1).map((x, index) => x - at(supports, index))
  return Math.max(feetOf(Math.min(...spans)) * width, LEAST_AREA_FT2)
}

/** Line loads of each combination that another does not exceed, upwards positive, lb per in. */
export function combinationLoads(
  rail: LoadedRail,
  supportsIn: readonly Inches[],
): { readonly combination: CombinedLoad; readonly loads: readonly LineLoad[] }[] {
  const area = leastSpanAreaFt2(rail, supportsIn)
  return undominated(rail.combinations).map((combination) => {
    const sign = combination.direction === 'uplift' ? 1 : -1
    const loads = patchLoads(rail.patches, (key, widthFt) => {
      const psf = windPressurePsf(rail.wind, key.zone, area, key.exposed, combination.direction)
      return widthFt * (sign * combination.windFactor * psf - combination.normalPsf)
    })
    return { combination, loads }
  })
}

/** Leaves out a combination that another one of the same direction exceeds in every part, such as D beside D + S. */
function undominated(combinations: readonly CombinedLoad[]): CombinedLoad[] {
  return combinations.filter((c, index) => {
    if (c.direction === 'uplift') return true
    return !combinations.some((other, at) => {
      if (at === index || other.direction !== 'down') return false
      const difference = [other.normalPsf - c.normalPsf, other.windFactor - c.windFactor, other.alongPsf - c.alongPsf]
      return difference.every((d) => d >= 0) && (at < index || difference.some((d) => d > 0))
    })
  })
}
