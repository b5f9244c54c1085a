import { isAc } from '../../electrical/index.js'
import type { LabelFacts } from './label-facts.js'
import type { Feet } from '../../values/index.js'

/** Where labels go along one section of raceway, from its end at the array, ft. */
export interface RacewayPieces {
  readonly raceway: string
  readonly lengthFt: Feet
  readonly atFt: readonly Feet[]
}

/**
 * Labels along every section of raceway with direct current in it: at both ends and no farther apart than the code
 * allows. A section is a piece between boxes, walls or floors. What lies in the ground is not exposed.
 */
export function racewayPieces(facts: LabelFacts, spacingFt: Feet): RacewayPieces[] {
  const strings = new Set(facts.wiring.circuits.filter((circuit) => !isAc(circuit)).map((circuit) => circuit.id))
  return facts.wiring.raceways
    .filter(
      (raceway) =>
        raceway.type !== 'none' && raceway.location !== 'buried' && raceway.circuits.some((id) => strings.has(id)),
    )
    .map(({ id, length_ft: lengthFt }) => {
      const gaps = Math.ceil(lengthFt / spacingFt - 1e-9)
      const atFt = Array.from({ length: gaps + 1 }, (_, index) => Math.min(index * spacingFt, lengthFt))
      return { raceway: id, lengthFt, atFt }
    })
}
