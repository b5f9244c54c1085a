import type { KilowattHours } from '../../../values/index.js'

/** A counted day beside what a clear day would have given: what the signs of trouble are looked for in. */
export interface ObservedDay {
  readonly day: number
  readonly kwh: KilowattHours
  /** Energy over that of the clearest kind of day of the season, or over the modelled energy of that day's weather. */
  readonly ratio: number
}
