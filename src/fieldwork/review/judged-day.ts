import type { KilowattHours } from '../../values/index.js'

/** A single day that was measured, with what it may have given: what faults are looked for in. */
export interface JudgedDay {
  readonly day: number
  readonly kwh: KilowattHours
  /** Kinds of day of equal probability, kWh, lowest first. */
  readonly kindsKwh: readonly KilowattHours[]
  /** Mean of the kinds, or the energy modelled from this day's own weather. */
  readonly expectedKwh: KilowattHours
  /** Where the weather of the day is known: modelled energy, and how sure one day of it is, relative. */
  readonly modelled?: { readonly kwh: KilowattHours; readonly spread: number } | undefined
}
