import { beamExtremes, solveContinuousBeam, type LineLoad } from '../beam/index.js'
import { at, type Inches, type PoundInches, type PoundsPerInch } from '../../values/index.js'

/** A load case on one rafter, horizontal distances in from the plane's lowest eave. */
export interface RafterLoad {
  readonly deadLbPerIn: PoundsPerInch
  /** On the parts that no module covers. */
  readonly variableLbPerIn: PoundsPerInch
  readonly covered: readonly { readonly fromIn: Inches; readonly toIn: Inches }[]
  readonly mounts: readonly { readonly atIn: Inches; readonly lb: number }[]
}

/** Where a rafter bends: in a span (sagging) or over a support between two spans (hogging). */
export interface RafterPlace {
  readonly kind: 'span' | 'support'
  /** Counted from the eave, 1 first: span 1, or the support between spans 1 and 2. */
  readonly number: number
}

/** `south rafter 7`, with the span or support where the rafter has more than the first span. */
export function placeOf(plane: string, rafter: number, { kind, number }: RafterPlace): string {
  const where = kind === 'support' ? ` over support ${number + 1}` : number > 1 ? ` in span ${number}` : ''
  return `${plane} rafter ${rafter}${where}`
}

/** Half the length over which a mount presses, in. */
const HALF_FOOT_IN = 0.5

/**
 * Bending moment of a rafter at a place, lb-in, positive.
 *
 * A span is taken as if it ended at its supports, a support as if the rafter ran through, since a splice over the support cannot
 * be seen: each is the worse of the two.
 */
export function rafterMoment(load: RafterLoad, supportsIn: readonly Inches[], place: RafterPlace): PoundInches {
  if (place.kind === 'span') {
    const [a, b] = [at(supportsIn, place.number - 1), at(supportsIn, place.number)]
    const beam = { startIn: a, endIn: b, supportsIn: [a, b], loads: lineLoads(load, a, b) }
    return beamExtremes(beam, solveContinuousBeam(beam)).saggingLbIn
  }
  const [startIn, endIn] = [at(supportsIn, 0), at(supportsIn, supportsIn.length - 1)]
  const beam = { startIn, endIn, supportsIn, loads: lineLoads(load, startIn, endIn) }
  return Math.abs(at(solveContinuousBeam(beam).supportMomentsLbIn, place.number))
}

function lineLoads(load: RafterLoad, startIn: Inches, endIn: Inches): LineLoad[] {
  const loads: LineLoad[] = [{ fromIn: startIn, toIn: endIn, lbPerIn: load.deadLbPerIn }]
  let free = startIn
  for (const { fromIn, toIn } of load.covered.toSorted((a, b) => a.fromIn - b.fromIn)) {
    if (fromIn > free) loads.push({ fromIn: free, toIn: Math.min(fromIn, endIn), lbPerIn: load.variableLbPerIn })
    free = Math.max(free, toIn)
  }
  if (free < endIn) loads.push({ fromIn: free, toIn: endIn, lbPerIn: load.variableLbPerIn })
  for (const { atIn, lb } of load.mounts) {
    if (atIn <= startIn + HALF_FOOT_IN || atIn >= endIn - HALF_FOOT_IN) continue
    loads.push({ fromIn: atIn - HALF_FOOT_IN, toIn: atIn + HALF_FOOT_IN, lbPerIn: lb / (2 * HALF_FOOT_IN) })
  }
  return loads
}
