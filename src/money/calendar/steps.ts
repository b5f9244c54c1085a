import { HOURS_PER_YEAR } from './billing-calendar.js'

/** Steps of an hour in a series of a year: hours, or quarters of them. */
export function partsOf(series: { readonly length: number }): 1 | 4 {
  return series.length === 4 * HOURS_PER_YEAR ? 4 : 1
}

/** Hours spread evenly over as many steps as another series has; the same array where it has hours too. */
export function inStepsOf(other: { readonly length: number }, hoursKwh: Float64Array): Float64Array {
  const parts = partsOf(other) / partsOf(hoursKwh)
  return parts <= 1 ? hoursKwh : spread(hoursKwh, parts)
}

/** Each hour spread evenly over parts of it. */
export function spread(hoursKwh: Float64Array, parts: number): Float64Array {
  return Float64Array.from(
    { length: hoursKwh.length * parts },
    (_, i) => (hoursKwh[Math.floor(i / parts)] ?? 0) / parts,
  )
}

/** Sums by hour; the same array where it has hours already. */
export function hoursOf(kwh: Float64Array): Float64Array {
  const parts = partsOf(kwh)
  if (parts === 1) return kwh
  const hours = new Float64Array(HOURS_PER_YEAR)
  for (let i = 0; i < kwh.length; i++) {
    const h = Math.floor(i / parts)
    hours[h] = (hours[h] ?? 0) + (kwh[i] ?? 0)
  }
  return hours
}
