import { conductorSizes, type ConductorSize } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import { circularMils } from './conductor-area.js'
import { largerOf } from './equipment-ground-size.js'
import {
  judgeConductor,
  selectConductor,
  type ConductorDemand,
  type ConductorTest,
  type ConductorVerdict,
} from './select-conductor.js'

/** One piece of a conductor that runs whole from splice to splice: the part in one segment. */
export interface ConductorPiece {
  /** Id of the segment. */
  readonly id: string
  readonly where: string
  /** Path of the key that names its size. */
  readonly sizeWhere: string
  readonly demand: ConductorDemand
  /** Size that the person named for this piece. */
  readonly named: ConductorSize | undefined
}

/** The conductor of one circuit in one segment. */
export interface SizedConductor {
  readonly size: ConductorSize
  readonly verdict: ConductorVerdict
  /** The smallest size that passes in every piece of the conductor. */
  readonly smallest: ConductorSize
  readonly smallestByAmpacity: ConductorSize
  /** How much larger in area voltage rise or the person's wish makes it than the size without any factor; 1 when they do not. */
  readonly increase: number
  /** The sizes behind the increase; undefined where there is none. */
  readonly increased: { readonly used: ConductorSize; readonly needed: ConductorSize } | undefined
  /** A test, `named`, or `same_conductor` where another piece asks for more. */
  readonly governs: ConductorTest | 'named' | 'same_conductor'
  readonly named:
    | {
        readonly size: ConductorSize
        readonly complies: boolean
        readonly reason: string
        /** The named size by the tests of its own piece. */
        readonly verdict: ConductorVerdict
      }
    | undefined
}

const REASONS: Readonly<Record<SizedConductor['governs'], string>> = {
  terminal: '125 percent of the current at the terminals',
  conditions_of_use: 'current under the conditions of use',
  overcurrent_device: 'overcurrent device above the ampacity',
  small_conductor: 'limit for small conductors',
  end_device: 'ampacity below the overcurrent device at its end',
  least_service: 'ampacity below that of the smallest service',
  least_size: 'smallest size that the edition names',
  voltage_rise: 'voltage rise',
  named: 'size named in the project',
  same_conductor: 'another piece of the same conductor',
}

/** What governs a size, in words. */
export const reasonOf = (governs: SizedConductor['governs']): string => REASONS[governs]

const rank = (size: ConductorSize): number => conductorSizes.indexOf(size)

/**
 * One size for a conductor that is whole over all its pieces: the largest that any of them needs, or a named one when it
 * is at least as large.
 *
 * @param pieces From splice to splice, of one circuit, metal and insulation; a named size that is too small is never used.
 * @returns One entry for each piece, in order; all of one size.
 * @throws StageError when no size of the tables passes.
 */
export function sizeConductor(pieces: readonly ConductorPiece[]): SizedConductor[] {
  const choices = pieces.map((piece) => ({ piece, choice: choiceOf(piece), own: ownVerdict(piece) }))
  const smallest = choices.map(({ choice }) => choice.verdict.conductor.size).reduce(largerOf)
  const smallestByAmpacity = choices.map(({ choice }) => choice.smallestByAmpacity).reduce(largerOf)
  const size = pieces.map(({ named }) => named ?? smallest).reduce(largerOf, smallest)
  const increases = pieces.map(({ demand }) => increaseOf(demand, rank(size) > rank(smallest), size))
  const increase = Math.max(...increases.map(({ ratio }) => ratio))
  const increased = increases.find(({ ratio }) => ratio === increase)?.sizes
  const ruling = choices.find(({ piece, choice }) => piece.named === size || choice.verdict.conductor.size === size)
  return choices.map(({ piece, choice, own }): SizedConductor => {
    const verdict = judgeConductor(size, piece.demand)
    if (verdict === undefined) throw new Error(`${size} is not in the table`)
    const needed = choice.verdict.conductor.size
    const wished = piece.named === size && rank(size) > rank(needed)
    return {
      size,
      verdict,
      smallest,
      smallestByAmpacity,
      increase,
      increased,
      governs: wished ? 'named' : needed === size ? choice.governs : 'same_conductor',
      named:
        piece.named === undefined || own === undefined
          ? undefined
          : judgeNamed(piece.named, own, size, smallest, ruling?.piece.id),
    }
  })
}

function choiceOf({ demand, where }: ConductorPiece) {
  const choice = selectConductor(demand)
  if (choice !== undefined) return choice
  throw new StageError(
    where,
    `no conductor up to 500 kcmil carries ${Math.max(demand.continuousA, demand.service?.endDeviceA ?? 0).toFixed(1)} A here (factor ${(demand.correction * demand.adjustment).toFixed(3)})`,
    'Divide the circuits between raceways, shorten the run, or ask an electrical engineer',
  )
}

function ownVerdict({ named, demand, sizeWhere }: ConductorPiece): ConductorVerdict | undefined {
  if (named === undefined) return undefined
  const own = judgeConductor(named, demand)
  if (own !== undefined) return own
  throw new StageError(sizeWhere, `${named} AWG is not made in ${demand.material}`, 'Name another size')
}

function increaseOf(
  demand: ConductorDemand,
  wished: boolean,
  size: ConductorSize,
): { readonly ratio: number; readonly sizes: SizedConductor['increased'] } {
  const used = wished ? size : demand.voltageFloor
  if (used === undefined) return { ratio: 1, sizes: undefined }
  const plain = selectConductor({ ...demand, correction: 1, adjustment: 1, voltageFloor: undefined })
  const needed = plain?.verdict.conductor.size ?? used
  const ratio = circularMils(used) / circularMils(needed)
  return ratio > 1 ? { ratio, sizes: { used, needed } } : { ratio: 1, sizes: undefined }
}

function judgeNamed(
  named: ConductorSize,
  own: ConductorVerdict,
  size: ConductorSize,
  smallest: ConductorSize,
  ruling: string | undefined,
): NonNullable<SizedConductor['named']> {
  const failed = own.fails[0]
  if (failed !== undefined) return { size: named, verdict: own, complies: false, reason: `fails: ${reasonOf(failed)}` }
  if (named === size) return { size: named, verdict: own, complies: true, reason: 'passes every test' }
  const verb = size === smallest ? 'needs' : 'names'
  return {
    size: named,
    verdict: own,
    complies: false,
    reason: `is one conductor with ${ruling ?? 'another piece'}, which ${verb} ${size}`,
  }
}
