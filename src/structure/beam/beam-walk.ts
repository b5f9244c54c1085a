import type { BeamKink, BeamModel, BeamSolution } from './continuous-beam.js'

/** Short lengths of beam with one load on each, from left to right: shear and moment at their left ends, just right of a support. */
export interface BeamPieces {
  readonly x: Float64Array
  /** Length; 0 of the last. */
  readonly h: Float64Array
  readonly w: Float64Array
  readonly shear: Float64Array
  readonly moment: Float64Array
}

/** Pieces of a span for a beam whose largest values are read at the stations themselves. */
const FINE = 24
export const SAME_PLACE_IN = 1e-7

type Loads = Pick<BeamModel, 'loads'>

/**
 * Places where the shear jumps or its slope changes, and a fine net between them, in.
 *
 * @param others Loads whose places are wanted too, so that the pieces of several load cases lie side by side.
 * @param perSpan Pieces of each span.
 */
export function stationsOf(beam: BeamModel, others: readonly Loads[] = [], perSpan = FINE): Float64Array {
  const marks = [beam.startIn, beam.endIn, ...beam.supportsIn, ...(beam.kinks ?? []).map((kink) => kink.xIn)]
  for (const { loads } of [beam, ...others]) {
    for (const load of loads) {
      if (load.fromIn > beam.startIn && load.fromIn < beam.endIn) marks.push(load.fromIn)
      if (load.toIn > beam.startIn && load.toIn < beam.endIn) marks.push(load.toIn)
    }
  }
  const bounds = [beam.startIn, ...beam.supportsIn, beam.endIn]
  for (const [index, from] of bounds.entries()) {
    const to = bounds[index + 1] ?? from
    for (let k = 1; k < perSpan; k++) marks.push(from + ((to - from) * k) / perSpan)
  }
  const sorted = Float64Array.from(marks).sort()
  return sorted.filter((x, index) => index === 0 || x - sorted[index - 1]! > SAME_PLACE_IN)
}

/** Walks along the beam and sums loads and reactions; one piece a station. */
export function piecesOf(beam: BeamModel, solution: BeamSolution, xs: Float64Array): BeamPieces {
  const n = xs.length
  const pieces = {
    x: xs,
    h: new Float64Array(n),
    w: loadsAlong(beam, xs),
    shear: new Float64Array(n),
    moment: new Float64Array(n),
  }
  let [shear, moment, support] = [0, 0, 0]
  for (let index = 0; index < n; index++) {
    const x = xs[index]!
    while (support < beam.supportsIn.length && beam.supportsIn[support]! <= x + SAME_PLACE_IN) {
      shear += solution.reactionsLb[support]!
      support += 1
    }
    const h = index + 1 < n ? xs[index + 1]! - x : 0
    const w = pieces.w[index]!
    pieces.h[index] = h
    pieces.shear[index] = shear
    pieces.moment[index] = moment
    moment += shear * h - (w * h * h) / 2
    shear -= w * h
  }
  return pieces
}

/** Load on each piece, lb per in. */
function loadsAlong({ loads }: Loads, xs: Float64Array): Float64Array {
  const sums = new Float64Array(xs.length)
  for (const { fromIn, toIn, lbPerIn } of loads) {
    for (let k = firstAfter(xs, fromIn); k + 1 < xs.length; k++) {
      const middle = (xs[k]! + xs[k + 1]!) / 2
      if (middle >= toIn) break
      if (middle > fromIn) sums[k]! += lbPerIn
    }
  }
  return sums
}

/** The piece that holds a place, or the one before it. */
function firstAfter(xs: Float64Array, x: number): number {
  let [low, high] = [0, xs.length - 1]
  while (low < high) {
    const middle = (low + high) >> 1
    if (xs[middle]! < x) low = middle + 1
    else high = middle
  }
  return Math.max(0, low - 1)
}

/**
 * Deflection at the left end of every piece times EI, positive down, lb-in3: the second integral of M / EI below the straight line
 * through the first two supports; then no other support moves either.
 *
 * @source statics; exact within each piece, where M is a parabola
 */
export function sagsOf(beam: BeamModel, pieces: BeamPieces): Float64Array {
  const sags = integrateTwice(pieces, beam.kinks ?? [])
  const [first, second] = beam.supportsIn
  const [s0, s1] = [stationAt(pieces.x, first!), stationAt(pieces.x, second!)]
  const [x0, sag0] = [pieces.x[s0]!, sags[s0]!]
  const chord = (sags[s1]! - sag0) / (pieces.x[s1]! - x0)
  for (let k = 0; k < sags.length; k++) sags[k] = sag0 + chord * (pieces.x[k]! - x0) - sags[k]!
  return sags
}

/** Index of a station at a place, from an index on, or -1. */
export function stationAt(xs: Float64Array, x: number, from = 0): number {
  for (let k = from; k < xs.length; k++) if (Math.abs(xs[k]! - x) < 2 * SAME_PLACE_IN) return k
  return -1
}

/** Second integral of M at the left end of every piece, from the left end of the beam on. */
function integrateTwice(pieces: BeamPieces, kinks: readonly BeamKink[]): Float64Array {
  const n = pieces.x.length
  const sags = new Float64Array(n)
  let [slope, sag] = [0, 0]
  for (let k = 0; k < n; k++) {
    const [h, w, shear, moment] = [pieces.h[k]!, pieces.w[k]!, pieces.shear[k]!, pieces.moment[k]!]
    // Deflections are taken with the sign of the moment, so that a kink turns the slope as the moment does.
    for (const kink of kinks) if (Math.abs(kink.xIn - pieces.x[k]!) < SAME_PLACE_IN) slope += kink.timesStiffness
    // Powers by multiplication: this runs for each piece of each layout that is tried.
    const h2 = h * h
    sag += slope * h + (moment * h2) / 2 + (shear * h2 * h) / 6 - (w * h2 * h2) / 24
    slope += moment * h + (shear * h2) / 2 - (w * h2 * h) / 6
    if (k + 1 < n) sags[k + 1] = sag
  }
  return sags
}
