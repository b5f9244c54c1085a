/**
 * Net present value of yearly flows.
 *
 * @param flows USD, the first one now (year 0), then one at the end of each year.
 * @param rate Discount rate, fraction per year.
 */
export function netPresentValue(flows: ArrayLike<number>, rate: number): number {
  let value = 0
  for (let t = flows.length - 1; t >= 0; t--) value = value / (1 + rate) + (flows[t] ?? 0)
  return value
}

/** Running sums of the flows, each discounted to year 0. */
export function cumulativePresentValues(flows: readonly number[], rate: number): number[] {
  let total = 0
  return flows.map((flow, t) => (total += flow / (1 + rate) ** t))
}
