import { electrodeConductor, type ConductorSize } from '../../tables/nec/index.js'
import { type Conductor, circularMils } from '../conductors/index.js'

/**
 * Copper grounding electrode conductor (or supply-side bonding jumper) by the largest ungrounded service conductor.
 *
 * @source NEC Table 250.66
 */
export function electrodeConductorSize(service: Conductor): ConductorSize {
  const kcmil = circularMils(service.size) / 1000
  const row = electrodeConductor.find((candidate) =>
    service.material === 'copper' ? kcmil <= candidate.toCopperKcmil : kcmil <= candidate.toAluminumKcmil,
  )
  return (row?.copper ?? '3/0') as ConductorSize
}
