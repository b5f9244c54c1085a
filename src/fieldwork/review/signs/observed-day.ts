import type { Period } from '../count-days.js'
import type { KilowattHours } from '../../../values/index.js'

/** A counted day beside what a clear day would have given: what the signs of trouble are looked for in. */
export interface ObservedDay {
  readonly day: number
  readonly kwh: KilowattHours
  /** Energy over that of the clearest kind of day of the season, or over the modelled energy of that day's weather. */
  readonly ratio: number
}

/** Single days beside the clearest that they could have been. */
export function observedDays(periods: readonly Period[], clearest: (day: number) => number | undefined): ObservedDay[] {
  return periods.flatMap((period): ObservedDay[] => {
    const best = clearest(period.firstDay) ?? 0
    return period.days === 1 && best > 0 ? [{ day: period.firstDay, kwh: period.kwh, ratio: period.kwh / best }] : []
  })
}
