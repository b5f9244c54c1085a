import { conductorSizes, UNPROTECTED_GROUND_AWG, type ConductorSize } from '../../tables/nec/index.js'
import type { SizedSegment } from '../segments/index.js'
import { polesOf, type Circuit, type Job } from '../system/index.js'

/** A conductor that enters a box, of one circuit or grounding. */
export interface Entering {
  /** Id of the circuit; of grounding conductors that of the segment. */
  readonly circuit: string
  readonly size: ConductorSize
  readonly count: number
  readonly grounding: boolean
  /** What it is made of; another one behind the box means a splice. */
  readonly kind: string
}

/** Conductors of a segment where it meets a box. */
export function entering({ segment, contents, conditions: { method } }: SizedSegment): Entering[] {
  const cable = method.form === 'cable' ? method.method : ''
  return contents.conductors.flatMap(({ circuit, use, count, size_awg: name, material, insulation }) => {
    const size = conductorSizes.find((candidate) => candidate === name)
    const grounding = use === 'grounding'
    return size === undefined
      ? []
      : [
          {
            circuit: grounding ? segment.id : circuit,
            size,
            count,
            grounding,
            kind: `${material} ${insulation} ${cable}`,
          },
        ]
  })
}

/** The trunk cable of a branch, which ends here. */
export function ofTrunk(circuit: Circuit): Entering[] {
  const { id, trunk } = circuit
  if (trunk === undefined) return []
  const wire = { circuit: id, size: trunk.cable.size_awg, kind: 'trunk cable' }
  const conductor = { ...wire, count: polesOf(circuit), grounding: false }
  return trunk.cable.has_egc === true ? [conductor, { ...wire, count: 1, grounding: true }] : [conductor]
}

/** The bare conductor of the array, which ends in the first box. */
export function ofArray({ electrical }: Job, starting: readonly Circuit[]): Entering[] {
  if (!starting.some(({ kind }) => kind === 'ac_branch' || kind === 'dc_string')) return []
  const stated = conductorSizes.find((size) => size === electrical.array_bonding_conductor_awg)
  return [{ circuit: 'array', size: stated ?? UNPROTECTED_GROUND_AWG, count: 1, grounding: true, kind: 'bare copper' }]
}
