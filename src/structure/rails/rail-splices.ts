import { beamForcesAt, solveContinuousBeam } from '../beam/index.js'
import { at, type Inches, type PoundInches, type Pounds } from '../../values/index.js'
import type { LoadedRail } from './loaded-rail.js'
import { combinationLoads, railBeam, type SupportedRail } from './rail-loads.js'

/** What a joint between two pieces of rail takes, at allowable stress level. */
export interface SpliceStrength {
  /** Undefined for a hinge, which takes none. */
  readonly momentLbIn: PoundInches | undefined
  /** Undefined when the sheet does not say. */
  readonly shearLb: Pounds | undefined
  /** Least distance from a mount by the sheet, in; none when missing. */
  readonly leastFromMountIn?: Inches
}

/** Largest moment and shear at a place of a rail over all combinations, up and down, as sizes. */
export interface SpliceForces {
  readonly xIn: number
  readonly momentLbIn: PoundInches
  readonly shearLb: Pounds
}

/** Middle part of a span where no joint weaker than the rail may lie, as a share of the span. @source common practice, no source */
const MIDDLE_SHARE = 0.2

/** How far the moment at a hinge may be from nothing in the rail without hinges, as shares of its largest, the best first. */
export const HINGE_SHARES = [0.1, 0.25] as const

/**
 * Largest forces at places of a rail.
 *
 * @source Statics of the continuous rail, with the joints that are hinges
 */
export function spliceForces(rail: LoadedRail, supported: SupportedRail, places: readonly Inches[]): SpliceForces[] {
  const worst = places.map(() => ({ momentLbIn: 0, shearLb: 0 }))
  for (const { loads } of combinationLoads(rail, supported.supportsIn)) {
    const beam = railBeam(rail, supported, loads)
    const solution = solveContinuousBeam(beam)
    for (const [index, xIn] of places.entries()) {
      const { momentLbIn, shearLb } = beamForcesAt(beam, solution, xIn)
      const held = at(worst, index)
      worst[index] = {
        momentLbIn: Math.max(held.momentLbIn, Math.abs(momentLbIn)),
        shearLb: Math.max(held.shearLb, Math.abs(shearLb)),
      }
    }
  }
  return places.map((xIn, index) => ({ xIn, ...at(worst, index) }))
}

/**
 * Whether a place lies over a mount or in the middle of a span, where only a joint as strong as the rail may lie.
 *
 * @param leastFromMountIn Least distance from a mount by the sheet, in. Where it leaves nothing but the middle of a short span,
 *   the sheet has that place in mind.
 */
export function isForStrongOnly(supportsIn: readonly Inches[], xIn: number, leastFromMountIn: Inches = 0): boolean {
  return supportsIn.some((x, index) => {
    const next = supportsIn[index + 1]
    if (Math.abs(x - xIn) < 1e-6) return true
    if (next === undefined) return false
    const middleIn = (MIDDLE_SHARE / 2) * (next - x)
    const nothingElse = leastFromMountIn >= (next - x) / 2 - middleIn - 1e-9
    return !nothingElse && Math.abs(xIn - (x + next) / 2) < middleIn + 1e-9
  })
}

/** Whether a joint of some bending strength may lie at a place. */
export function holdsThere(
  forces: SpliceForces,
  strength: SpliceStrength,
  supportsIn: readonly Inches[],
  railMomentLbIn: PoundInches,
): boolean {
  const { momentLbIn = 0, shearLb = Infinity } = strength
  if (forces.momentLbIn > momentLbIn || forces.shearLb > shearLb) return false
  return momentLbIn >= railMomentLbIn || !isForStrongOnly(supportsIn, forces.xIn, strength.leastFromMountIn)
}
