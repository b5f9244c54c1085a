import type { KilowattHours } from '../../values/index.js'

/** A day with what it may give, kWh, kinds of equal probability, lowest first. */
export interface DayOdds {
  readonly day: number
  readonly kindsKwh: readonly KilowattHours[]
}

/** Distribution of a sum of energy: probabilities of values that are `stepKwh` apart from `lowestKwh` on. */
export interface SumDistribution {
  readonly lowestKwh: KilowattHours
  readonly stepKwh: KilowattHours
  readonly probability: Float64Array
  readonly meanKwh: KilowattHours
}
