import { SNOW_IN_WEIGHT, type LoadEdition } from '../../tables/asce7/index.js'
import type { Percent, Pounds, PoundsPerSquareFoot, SquareFeet } from '../../values/index.js'

/** A part of the house that shakes with the roof. */
export interface WeighedPart {
  readonly name: string
  readonly areaFt2: SquareFeet
  readonly psf: PoundsPerSquareFoot
}

/** Weight that shakes with the roof, lb: roof, ceiling, upper half of walls and partitions, without the array. */
export function shakenWeightLb(parts: readonly WeighedPart[]): Pounds {
  return parts.reduce((sum, { areaFt2, psf }) => sum + areaFt2 * psf, 0)
}

/**
 * Growth of the sideways load of a house, percent: as its base shear goes with its weight, that of the weight.
 *
 * @source two permit calculations of engineers (read)
 */
export function lateralChangePct(arrayLb: Pounds, houseLb: Pounds): Percent {
  return (arrayLb / houseLb) * 100
}

/** Snow that counts as weight of the house in an earthquake, psf. @source ASCE 7 12.7.2 (secondary, one text) */
export function snowInWeightPsf(edition: LoadEdition, flatRoofPsf: PoundsPerSquareFoot): PoundsPerSquareFoot {
  const { overPsf, share } = SNOW_IN_WEIGHT[edition]
  return flatRoofPsf > overPsf ? share * flatRoofPsf : 0
}
