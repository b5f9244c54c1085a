import { piecesOf, SAME_PLACE_IN, sagsOf, stationAt, stationsOf, type BeamPieces } from './beam-walk.js'
import type { BeamModel, BeamSolution } from './continuous-beam.js'
import { at, type Inches, type PoundInches, type Pounds } from '../../values/index.js'

/** Extreme values along a beam. */
export interface BeamExtremes {
  /** Largest bending moment of either sign, lb-in. */
  readonly momentLbIn: PoundInches
  /** Largest positive (sagging under the load) and largest hogging moment, lb-in, both as sizes. */
  readonly saggingLbIn: PoundInches
  readonly hoggingLbIn: PoundInches
  readonly shearLb: Pounds
  /** Largest deflection of every span and free end times EI, lb-in3, and the length it is judged by (a free end counts twice). */
  readonly deflections: readonly { readonly lengthIn: Inches; readonly timesStiffness: number }[]
}

/**
 * Largest moments, shear and deflections of a solved beam.
 *
 * @source statics for shear and moment; deflection by twice integrating M / EI, exact within each piece (M is a parabola)
 */
export function beamExtremes(beam: BeamModel, solution: BeamSolution): BeamExtremes {
  const pieces = piecesOf(beam, solution, stationsOf(beam))
  let [sagging, hogging, shear] = [0, 0, 0]
  for (let k = 0; k < pieces.x.length; k++) {
    const [moment, before, w] = [pieces.moment[k]!, pieces.shear[k]!, pieces.w[k]!]
    sagging = Math.max(sagging, moment)
    hogging = Math.max(hogging, -moment)
    shear = Math.max(shear, Math.abs(before), Math.abs(before - w * pieces.h[k]!))
  }
  return {
    momentLbIn: Math.max(sagging, hogging),
    saggingLbIn: sagging,
    hoggingLbIn: hogging,
    shearLb: shear,
    deflections: deflectionsOf(beam, pieces),
  }
}

/** Moment and shear at a place of a solved beam; over a support the shear of the side where it is larger. */
export function beamForcesAt(
  beam: BeamModel,
  solution: BeamSolution,
  xIn: number,
): { readonly momentLbIn: PoundInches; readonly shearLb: Pounds } {
  let [moment, left, right] = [0, 0, 0]
  for (const load of beam.loads) {
    const length = Math.min(load.toIn, xIn) - load.fromIn
    if (length <= 0) continue
    moment -= load.lbPerIn * length * (xIn - load.fromIn - length / 2)
    left -= load.lbPerIn * length
    right -= load.lbPerIn * length
  }
  for (const [index, support] of beam.supportsIn.entries()) {
    const reaction = at(solution.reactionsLb, index)
    if (support > xIn + SAME_PLACE_IN) break
    moment += reaction * (xIn - support)
    right += reaction
    if (support < xIn - SAME_PLACE_IN) left += reaction
  }
  return { momentLbIn: moment, shearLb: Math.abs(left) > Math.abs(right) ? left : right }
}

function deflectionsOf(beam: BeamModel, pieces: BeamPieces): BeamExtremes['deflections'] {
  const sags = sagsOf(beam, pieces)
  const bounds = [beam.startIn, ...beam.supportsIn, beam.endIn]
  let reached = 0
  const result: { lengthIn: Inches; timesStiffness: number }[] = []
  for (const [index, from] of bounds.entries()) {
    const to = bounds[index + 1]
    if (to === undefined || to - from < SAME_PLACE_IN) continue
    // Bounds ascend as the pieces do.
    const first = stationAt(pieces.x, from, reached)
    const last = stationAt(pieces.x, to, first)
    reached = last
    let largest = 0
    for (let k = first; k <= last; k++) largest = Math.max(largest, Math.abs(sags[k]!))
    const free = index === 0 || index === bounds.length - 2
    result.push({ lengthIn: free ? 2 * (to - from) : to - from, timesStiffness: largest })
  }
  return result
}
