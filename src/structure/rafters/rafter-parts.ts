import { at, type Inches } from '../../values/index.js'
import { beamLines, type BeamLines } from '../beam/index.js'
import type { RafterLoad } from './rafter-loads.js'
import type { RafterPlace } from './rafter-place.js'
import type { RafterSpans } from './rafter-spans.js'

/** A stretch of the rafter as a beam. */
export interface RafterPart {
  readonly startIn: Inches
  readonly endIn: Inches
  readonly supportsIn: readonly Inches[]
  /** Number of its first support, 0 at the wall. */
  readonly firstSupport: number
}

/**
 * Beams that a rafter may be: each span by itself, and in one piece over its supports where it may be, and the lowest span with
 * the overhang. Where it is not known whether it runs through, both are taken, and the worse counts.
 */
export function partsOf({ lowIn, supportsIn }: RafterSpans, continuous: boolean | undefined): RafterPart[] {
  const last = supportsIn.length - 1
  const parts: RafterPart[] = []
  if (continuous !== true || last === 1) {
    for (let i = 0; i < last; i++) {
      const ends = [at(supportsIn, i), at(supportsIn, i + 1)] as const
      parts.push({ startIn: ends[0], endIn: ends[1], supportsIn: ends, firstSupport: i })
    }
  }
  if (continuous !== false && last > 1) {
    parts.push({ startIn: at(supportsIn, 0), endIn: at(supportsIn, last), supportsIn, firstSupport: 0 })
  }
  if (at(supportsIn, 0) - lowIn > 1) {
    const ends = [at(supportsIn, 0), at(supportsIn, 1)]
    parts.push({ startIn: lowIn, endIn: at(ends, 1), supportsIn: ends, firstSupport: 0 })
  }
  return parts
}

export const linesOf = (part: RafterPart, { loads }: RafterLoad, stations: Float64Array): BeamLines | undefined =>
  loads.length === 0 ? undefined : beamLines({ ...part, loads }, stations)

/** A beam that a rafter may be, with the lines of each of its loads. */
export interface SolvedPart {
  readonly part: RafterPart
  readonly stations: Float64Array
  readonly loads: readonly RafterLoad[]
  readonly lines: readonly (BeamLines | undefined)[]
  /** Room for one sum at a time. */
  readonly buffer: Float64Array
}

export function placeAt({ supportsIn, firstSupport }: RafterPart, x: number): RafterPlace {
  const on = supportsIn.findIndex((support) => Math.abs(support - x) < 1e-6)
  if (on >= 0) return { kind: 'support', number: firstSupport + on }
  const above = supportsIn.filter((support) => support < x).length
  return above === 0 ? { kind: 'overhang', number: 0 } : { kind: 'span', number: firstSupport + above }
}
