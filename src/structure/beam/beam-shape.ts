import type { BeamKink, BeamModel, BeamSolution } from './continuous-beam.js'
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

/** A short length of beam with one load on it: shear and moment at its left end, just right of a support. */
interface Piece {
  readonly x: number
  readonly h: number
  readonly w: number
  readonly shear: number
  readonly moment: number
}

const PIECES_PER_SPAN = 24
const SAME_PLACE_IN = 1e-7

/** Places where the shear jumps or its slope changes, and a fine net between them. */
function stationsOf(beam: BeamModel): Float64Array {
  const marks = [beam.startIn, beam.endIn, ...beam.supportsIn, ...(beam.kinks ?? []).map((kink) => kink.xIn)]
  for (const load of beam.loads) {
    if (load.fromIn > beam.startIn && load.fromIn < beam.endIn) marks.push(load.fromIn)
    if (load.toIn > beam.startIn && load.toIn < beam.endIn) marks.push(load.toIn)
  }
  const bounds = [beam.startIn, ...beam.supportsIn, beam.endIn]
  for (const [index, from] of bounds.entries()) {
    const to = bounds[index + 1] ?? from
    for (let k = 1; k < PIECES_PER_SPAN; k++) marks.push(from + ((to - from) * k) / PIECES_PER_SPAN)
  }
  const sorted = Float64Array.from(marks).sort()
  return sorted.filter((x, index) => index === 0 || x - at(sorted, index - 1) > SAME_PLACE_IN)
}

/** Walks along the beam and sums loads and reactions. */
function piecesOf(beam: BeamModel, solution: BeamSolution): Piece[] {
  const xs = stationsOf(beam)
  const pieces: Piece[] = []
  let [shear, moment, support] = [0, 0, 0]
  for (let index = 0; index < xs.length; index++) {
    const x = at(xs, index)
    while (support < beam.supportsIn.length && at(beam.supportsIn, support) <= x + SAME_PLACE_IN) {
      shear += at(solution.reactionsLb, support)
      support += 1
    }
    const h = (xs[index + 1] ?? x) - x
    const middle = x + h / 2
    let w = 0
    for (const load of beam.loads) if (load.fromIn < middle && middle < load.toIn) w += load.lbPerIn
    pieces.push({ x, h, w, shear, moment })
    moment += shear * h - (w * h * h) / 2
    shear -= w * h
  }
  return pieces
}

/**
 * Largest moments, shear and deflections of a solved beam.
 *
 * @source statics for shear and moment; deflection by twice integrating M / EI, exact within each piece (M is a parabola)
 */
export function beamExtremes(beam: BeamModel, solution: BeamSolution): BeamExtremes {
  const pieces = piecesOf(beam, solution)
  let [sagging, hogging, shear] = [0, 0, 0]
  for (const piece of pieces) {
    sagging = Math.max(sagging, piece.moment)
    hogging = Math.max(hogging, -piece.moment)
    shear = Math.max(shear, Math.abs(piece.shear), Math.abs(piece.shear - piece.w * piece.h))
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

/** Deflection at the left end of every piece, from the left end of the beam on, but for a straight line. */
function integrateTwice(pieces: readonly Piece[], kinks: readonly BeamKink[]): number[] {
  const sags = [0]
  let [slope, sag] = [0, 0]
  for (const { x, h, w, shear, moment } of pieces) {
    // Deflections are taken with the sign of the moment, so that a kink turns the slope as the moment does.
    for (const kink of kinks) if (Math.abs(kink.xIn - x) < SAME_PLACE_IN) slope += kink.timesStiffness
    // Powers by multiplication: this runs for each piece of each layout that is tried.
    const h2 = h * h
    sag += slope * h + (moment * h2) / 2 + (shear * h2 * h) / 6 - (w * h2 * h2) / 24
    slope += moment * h + (shear * h2) / 2 - (w * h2 * h) / 6
    sags.push(sag)
  }
  return sags
}

function deflectionsOf(beam: BeamModel, pieces: readonly Piece[]): BeamExtremes['deflections'] {
  const sags = integrateTwice(pieces, beam.kinks ?? [])
  const pieceAt = (x: number, from = 0): number => {
    for (let k = from; k < pieces.length; k++) if (Math.abs((pieces[k]?.x ?? NaN) - x) < 2 * SAME_PLACE_IN) return k
    return -1
  }
  const [s0, s1] = [pieceAt(at(beam.supportsIn, 0)), pieceAt(at(beam.supportsIn, 1))]
  const [x0, x1] = [at(pieces, s0).x, at(pieces, s1).x]
  const sag0 = at(sags, s0)
  // A straight line is added so that the first two supports do not move; then no other support moves either.
  const tilt = (at(sags, s1) - sag0) / (x1 - x0)
  const bounds = [beam.startIn, ...beam.supportsIn, beam.endIn]
  let reached = 0
  const result: { lengthIn: Inches; timesStiffness: number }[] = []
  for (const [index, from] of bounds.entries()) {
    const to = bounds[index + 1]
    if (to === undefined || to - from < SAME_PLACE_IN) continue
    // Bounds ascend as the pieces do.
    const first = pieceAt(from, Math.max(0, reached))
    const last = pieceAt(to, Math.max(0, first))
    reached = last
    let largest = 0
    for (let k = first; k <= last; k++) {
      const line = sag0 + tilt * (at(pieces, k).x - x0)
      largest = Math.max(largest, Math.abs(at(sags, k) - line))
    }
    const free = index === 0 || index === bounds.length - 2
    result.push({ lengthIn: free ? 2 * (to - from) : to - from, timesStiffness: largest })
  }
  return result
}
