import type { BeamModel, BeamSolution } from './continuous-beam.js'

/** Extreme values along a beam. */
export interface BeamExtremes {
  /** Largest bending moment of either sign, lb-in. */
  readonly momentLbIn: number
  /** Largest positive (sagging under the load) and largest hogging moment, lb-in, both as sizes. */
  readonly saggingLbIn: number
  readonly hoggingLbIn: number
  readonly shearLb: number
  /** Largest deflection over its length (span, or twice a free end), and times EI in lb-in3 for each span. */
  readonly deflections: readonly { readonly lengthIn: number; readonly timesStiffness: number }[]
}

interface Station {
  readonly x: number
  readonly shear: number
  readonly moment: number
}

const PIECES_PER_SPAN = 24

/** Places where the shear jumps or its slope changes, and a fine net between them. */
function stationsOf(beam: BeamModel): number[] {
  const marks = new Set([beam.startIn, beam.endIn, ...beam.supportsIn])
  for (const load of beam.loads) {
    for (const x of [load.fromIn, load.toIn]) if (x > beam.startIn && x < beam.endIn) marks.add(x)
  }
  const bounds = [beam.startIn, ...beam.supportsIn, beam.endIn]
  for (const [index, from] of bounds.entries()) {
    const to = bounds[index + 1] ?? from
    for (let k = 1; k < PIECES_PER_SPAN; k++) marks.add(from + ((to - from) * k) / PIECES_PER_SPAN)
  }
  const sorted = [...marks].sort((a, b) => a - b)
  return sorted.filter((x, index) => index === 0 || x - (sorted[index - 1] ?? 0) > 1e-7)
}

/** Shear just right of x and moment at x, from the loads and reactions to the left. */
function sectionAt(beam: BeamModel, solution: BeamSolution, x: number): Station {
  let [shear, moment] = [0, 0]
  for (const load of beam.loads) {
    const to = Math.min(load.toIn, x)
    if (to <= load.fromIn) continue
    const force = load.lbPerIn * (to - load.fromIn)
    shear -= force
    moment -= force * (x - (load.fromIn + to) / 2)
  }
  for (const [index, support] of beam.supportsIn.entries()) {
    if (support > x + 1e-9) continue
    shear += solution.reactionsLb[index] ?? 0
    moment += (solution.reactionsLb[index] ?? 0) * (x - support)
  }
  return { x, shear, moment }
}

/**
 * Largest moments, shear and deflections of a solved beam.
 *
 * @source statics for shear and moment; deflection by twice integrating M / EI, exact within each piece (M is a parabola)
 */
export function beamExtremes(beam: BeamModel, solution: BeamSolution): BeamExtremes {
  const xs = stationsOf(beam)
  const stations = xs.map((x) => sectionAt(beam, solution, x))
  let [sagging, hogging, shear] = [0, 0, 0]
  for (const [index, station] of stations.entries()) {
    sagging = Math.max(sagging, station.moment)
    hogging = Math.max(hogging, -station.moment)
    const before = stations[index - 1]
    // Just left of a support the shear still lacks its reaction.
    const jump = beam.supportsIn.findIndex((s) => Math.abs(s - station.x) < 1e-7)
    const left = jump < 0 || before === undefined ? station.shear : station.shear - (solution.reactionsLb[jump] ?? 0)
    shear = Math.max(shear, Math.abs(station.shear), Math.abs(left))
  }
  return {
    momentLbIn: Math.max(sagging, hogging),
    saggingLbIn: sagging,
    hoggingLbIn: hogging,
    shearLb: shear,
    deflections: deflectionsOf(beam, solution, stations),
  }
}

function deflectionsOf(
  beam: BeamModel,
  solution: BeamSolution,
  stations: readonly Station[],
): BeamExtremes['deflections'] {
  const sags = integrateTwice(beam, solution, stations)
  const at = (x: number): number => stations.findIndex((s) => Math.abs(s.x - x) < 1e-7)
  const bounds = [beam.startIn, ...beam.supportsIn, beam.endIn]
  const result: { lengthIn: number; timesStiffness: number }[] = []
  const [s0, s1] = [at(beam.supportsIn[0] ?? 0), at(beam.supportsIn[1] ?? 0)]
  const [x0, x1] = [stations[s0]?.x ?? 0, stations[s1]?.x ?? 1]
  // A straight line is added so that the first two supports do not move; then no other support moves either.
  const tilt = ((sags[s1] ?? 0) - (sags[s0] ?? 0)) / (x1 - x0)
  for (const [index, from] of bounds.entries()) {
    const to = bounds[index + 1]
    if (to === undefined || to - from < 1e-7) continue
    let largest = 0
    for (let k = at(from); k <= at(to); k++) {
      const line = (sags[s0] ?? 0) + tilt * ((stations[k]?.x ?? 0) - x0)
      largest = Math.max(largest, Math.abs((sags[k] ?? 0) - line))
    }
    const free = index === 0 || index === bounds.length - 2
    result.push({ lengthIn: free ? 2 * (to - from) : to - from, timesStiffness: largest })
  }
  return result
}

/** Integrates the moment twice from the left end, exactly for a parabola through both ends and the middle of each piece. */
function integrateTwice(beam: BeamModel, solution: BeamSolution, stations: readonly Station[]): number[] {
  let slope = 0
  const sags = [0]
  for (let k = 1; k < stations.length; k++) {
    const [a, b] = [stations[k - 1], stations[k]]
    if (a === undefined || b === undefined) break
    const h = b.x - a.x
    const middle = sectionAt(beam, solution, (a.x + b.x) / 2).moment
    sags.push((sags[k - 1] ?? 0) + slope * h + (h * h * (a.moment + 2 * middle)) / 6)
    slope += (h * (a.moment + 4 * middle + b.moment)) / 6
  }
  return sags
}
