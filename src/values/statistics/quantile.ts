/**
 * Quantile of sorted samples, straight lines between them.
 *
 * @param sorted Ascending; infinities allowed at the end.
 * @param share 0 to 1.
 */
export function quantile(sorted: Float64Array, share: number): number {
  const place = share * (sorted.length - 1)
  const low = sorted[Math.floor(place)] ?? Number.NaN
  const high = sorted[Math.ceil(place)] ?? low
  return low === high ? low : low + (high - low) * (place - Math.floor(place))
}
