import { conductorSizes, type ConductorSize } from '../tables/nec/index.js'
import { StageError } from '../worksheet/index.js'
import { circularMils } from './conductor-area.js'
import {
  judgeConductor,
  selectConductor,
  type ConductorDemand,
  type ConductorTest,
  type ConductorVerdict,
} from './select-conductor.js'

/** The conductor of one circuit in one segment. */
export interface SizedConductor {
  readonly size: ConductorSize
  readonly verdict: ConductorVerdict
  readonly smallest: ConductorSize
  readonly smallestByAmpacity: ConductorSize
  /** How much larger in area voltage rise or the person's wish makes it than the size without any factor; 1 when they do not. */
  readonly increase: number
  readonly governs: string
  readonly named:
    | {
        readonly size: ConductorSize
        readonly complies: boolean
        readonly reason: string
        readonly verdict: ConductorVerdict
      }
    | undefined
}

const REASONS: Readonly<Record<ConductorTest, string>> = {
  terminal: '125 percent of the current at the terminals',
  conditions_of_use: 'current under the conditions of use',
  overcurrent_device: 'overcurrent device above the ampacity',
  small_conductor: 'limit for small conductors',
  end_device: 'ampacity below the overcurrent device at its end',
  least_service: 'ampacity below that of the smallest service',
  least_size: 'smallest size that the edition names',
  voltage_rise: 'voltage rise',
}

/** A test in words for tables. */
export const reasonOf = (test: ConductorTest): string => REASONS[test]

/**
 * The smallest conductor that passes, or the named one when it is at least as large.
 *
 * @param named Size that the person named; a smaller one than needed is never used.
 * @param sizeWhere Path of the key that names it.
 * @throws StageError when no size of the tables passes.
 */
export function sizeConductor(
  demand: ConductorDemand,
  named: ConductorSize | undefined,
  where: string,
  sizeWhere: string,
): SizedConductor {
  const choice = selectConductor(demand)
  if (choice === undefined)
    throw new StageError(
      where,
      `no conductor up to 500 kcmil carries ${Math.max(demand.continuousA, demand.service?.endDeviceA ?? 0).toFixed(1)} A here (factor ${(demand.correction * demand.adjustment).toFixed(3)})`,
      'Divide the circuits between raceways, shorten the run, or ask an electrical engineer',
    )
  const smallest = choice.verdict.conductor.size
  const common = { smallest, smallestByAmpacity: choice.smallestByAmpacity }
  const plain = selectConductor({ ...demand, correction: 1, adjustment: 1, voltageFloor: undefined })
  const increaseTo = (size: ConductorSize): number =>
    Math.max(1, circularMils(size) / circularMils(plain?.verdict.conductor.size ?? size))
  const increase = demand.voltageFloor === undefined ? 1 : increaseTo(demand.voltageFloor)
  if (named === undefined)
    return { ...common, increase, size: smallest, verdict: choice.verdict, governs: choice.governs, named: undefined }
  const own = judgeConductor(named, demand)
  if (own === undefined)
    throw new StageError(sizeWhere, `${named} AWG is not made in ${demand.material}`, 'Name another size')
  const failed = own.fails[0]
  const complies = failed === undefined
  const reason = complies ? 'passes every test' : `fails: ${reasonOf(failed)}`
  const larger = complies && conductorSizes.indexOf(named) > conductorSizes.indexOf(smallest)
  return {
    ...common,
    increase: larger ? increaseTo(named) : increase,
    size: complies ? named : smallest,
    verdict: complies ? own : choice.verdict,
    governs: larger ? 'named' : choice.governs,
    named: { size: named, complies, reason, verdict: own },
  }
}
