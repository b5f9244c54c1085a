import { ALUMINIUM_MODULUS_PSI } from '../../tables/aluminium/index.js'
import { beamExtremes, type BeamExtremes, solveContinuousBeam, type LineLoad } from '../beam/index.js'
import type { LoadedRail } from './loaded-rail.js'
import { combinationLoads, railBeam, type SupportedRail } from './rail-loads.js'
import { patchLoads } from './rail-patches.js'

export interface RailCheck {
  readonly name: string
  readonly demand: number
  readonly capacity: number
  readonly unit: string
  readonly ratio: number
}

/** Worst bending, shear and deflection of a rail over all combinations, wind read at the smallest span's area. */
export function railChecks(rail: LoadedRail, supported: SupportedRail): RailCheck[] {
  const { patches, strength } = rail
  const worst = new Map<string, RailCheck>()
  const add = (name: string, demand: number, capacity: number, unit: string): void => {
    const ratio = demand / capacity
    if (ratio > (worst.get(name)?.ratio ?? -1)) worst.set(name, { name, demand, capacity, unit, ratio })
  }
  const extremes = (loads: readonly LineLoad[]): BeamExtremes => {
    const beam = railBeam(rail, supported, loads)
    return beamExtremes(beam, solveContinuousBeam(beam))
  }
  const onePsf = extremes(patchLoads(patches, (_key, widthFt) => widthFt))
  for (const { combination, loads } of combinationLoads(rail, supported.supportsIn)) {
    const shape = extremes(loads)
    add('rail moment', shape.momentLbIn, strength.momentXLbIn, 'lb-in')
    if (strength.shearLb !== undefined) add('rail shear', shape.shearLb, strength.shearLb, 'lb')
    if (strength.momentYLbIn !== undefined) {
      const along = combination.alongPsf * onePsf.momentLbIn
      add('rail moment both ways', shape.momentLbIn / strength.momentXLbIn + along / strength.momentYLbIn, 1, '')
    }
    for (const { lengthIn, timesStiffness } of shape.deflections) {
      const deflection = timesStiffness / (ALUMINIUM_MODULUS_PSI * strength.momentOfInertiaXIn4)
      add('rail deflection', deflection, lengthIn / strength.deflectionLimit, 'in')
    }
  }
  return [...worst.values()]
}
