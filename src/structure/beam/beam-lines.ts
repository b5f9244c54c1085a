import { piecesOf, sagsOf } from './beam-walk.js'
import { solveContinuousBeam, type BeamModel } from './continuous-beam.js'
import type { Pounds } from '../../values/index.js'

/** Shear, moment and deflection of one load case at given places of a beam; cases of one beam may be added place by place. */
export interface BeamLines {
  /** Just right of each place, lb. */
  readonly shearLb: Float64Array
  /** Just left of each place, lb. */
  readonly shearBeforeLb: Float64Array
  /** Positive sags, lb-in. */
  readonly momentLbIn: Float64Array
  /** Deflection times EI from the chord through the first two supports, positive down, lb-in3. */
  readonly sagTimesStiffness: Float64Array
  readonly reactionsLb: readonly Pounds[]
}

/**
 * Solves one load case of a beam.
 *
 * @param stationsIn Places from `stationsOf` of a beam with the same ends and supports and all loads of this case.
 * @source three-moment equation; statics; deflection by twice integrating M / EI, exact within each piece
 */
export function beamLines(beam: BeamModel, stationsIn: Float64Array): BeamLines {
  const solution = solveContinuousBeam(beam)
  const pieces = piecesOf(beam, solution, stationsIn)
  const shearBeforeLb = new Float64Array(stationsIn.length)
  for (let k = 1; k < shearBeforeLb.length; k++) {
    shearBeforeLb[k] = pieces.shear[k - 1]! - pieces.w[k - 1]! * pieces.h[k - 1]!
  }
  return {
    shearLb: pieces.shear,
    shearBeforeLb,
    momentLbIn: pieces.moment,
    sagTimesStiffness: sagsOf(beam, pieces),
    reactionsLb: solution.reactionsLb,
  }
}
