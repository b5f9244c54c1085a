import { CABLES_WITHOUT_ADJUSTMENT } from '../../tables/nec/index.js'
import { countedConductors, type Job } from '../system/index.js'
import type { RacewaySegment } from './raceway-segment.js'
import { isCable } from './wiring-method.js'

/** Current-carrying conductors of a foreign cable: the most that a cable of three wires and ground has. */
const OF_A_FOREIGN_CABLE = 3

/** What lies close together in a segment. */
export interface Bundle {
  readonly currentCarrying: number
  readonly tenFootRule: boolean
}

/**
 * Current-carrying conductors that count together: all of a raceway; of cables all, unless they are kept apart.
 *
 * The 10 ft rule is not used for a cable in insulation, or for more than two cables together. Not every edition forbids
 * it, so this is on the safe side.
 *
 * @source NEC 310.15(C)(1), 334.80
 */
export function bundleOf(job: Job, { stated, circuits, neutral }: RacewaySegment): Bundle {
  const own = circuits.map((circuit) => countedConductors(job, circuit, neutral))
  const sum = own.reduce((total, count) => total + count, 0)
  if (!isCable(stated.raceway))
    return { currentCarrying: sum + (stated.other_conductors?.current_carrying ?? 0), tenFootRule: true }
  const foreign = stated.bundled_cables ?? 0
  const together = stated.cables_spaced === true ? 1 : circuits.length + foreign
  return {
    currentCarrying: stated.cables_spaced === true ? Math.max(...own) : sum + OF_A_FOREIGN_CABLE * foreign,
    tenFootRule: stated.in_insulation !== true && together <= CABLES_WITHOUT_ADJUSTMENT,
  }
}
