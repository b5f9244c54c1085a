import { ALUMINIUM_MODULUS_PSI } from '../../tables/aluminium/index.js'
import { beamExtremes, type BeamExtremes, solveContinuousBeam, type LineLoad } from '../beam/index.js'
import type { CombinedLoad } from '../loads/index.js'
import type { LoadedRail } from './loaded-rail.js'
import { LEAST_AREA_FT2, patchLoads } from './rail-patches.js'
import { windPressurePsf } from '../wind/index.js'
import { at, feetOf, type Inches, type SquareFeet } from '../../values/index.js'

export interface RailCheck {
  readonly name: string
  readonly demand: number
  readonly capacity: number
  readonly unit: string
  readonly ratio: number
}

/** Smallest area that a span of the rail carries, ft2. */
function leastSpanAreaFt2(rail: LoadedRail, supports: readonly number[]): SquareFeet {
  const width = Math.max(...rail.patches.map((patch) => patch.totalWidthFt))
  const spans = supports.slice(1).map((x, index) => x - at(supports, index))
  return Math.max(feetOf(Math.min(...spans)) * width, LEAST_AREA_FT2)
}

/** Worst bending, shear and deflection of a rail over all combinations, wind read at the smallest span's area. */
export function railChecks(rail: LoadedRail, supportsIn: readonly Inches[]): RailCheck[] {
  const { line, patches, strength } = rail
  const area = leastSpanAreaFt2(rail, supportsIn)
  const worst = new Map<string, RailCheck>()
  const add = (name: string, demand: number, capacity: number, unit: string): void => {
    const ratio = demand / capacity
    if (ratio > (worst.get(name)?.ratio ?? -1)) worst.set(name, { name, demand, capacity, unit, ratio })
  }
  const extremes = (loads: readonly LineLoad[]): BeamExtremes => {
    const beam = { startIn: line.startIn, endIn: line.endIn, supportsIn, loads }
    return beamExtremes(beam, solveContinuousBeam(beam))
  }
  const onePsf = extremes(patchLoads(patches, (_key, widthFt) => widthFt))
  for (const load of undominated(rail.combinations)) {
    const sign = load.direction === 'uplift' ? 1 : -1
    const loads = patchLoads(patches, (key, widthFt) => {
      const wind = load.windFactor * windPressurePsf(rail.wind, key.zone, area, key.exposed, load.direction)
      return widthFt * (sign * wind - load.normalPsf)
    })
    const shape = extremes(loads)
    add('rail moment', shape.momentLbIn, strength.momentXLbIn, 'lb-in')
    if (strength.shearLb !== undefined) add('rail shear', shape.shearLb, strength.shearLb, 'lb')
    if (strength.momentYLbIn !== undefined) {
      const along = load.alongPsf * onePsf.momentLbIn
      add('rail moment both ways', shape.momentLbIn / strength.momentXLbIn + along / strength.momentYLbIn, 1, '')
    }
    for (const { lengthIn, timesStiffness } of shape.deflections) {
      const deflection = timesStiffness / (ALUMINIUM_MODULUS_PSI * strength.momentOfInertiaXIn4)
      add('rail deflection', deflection, lengthIn / strength.deflectionLimit, 'in')
    }
  }
  return [...worst.values()]
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
