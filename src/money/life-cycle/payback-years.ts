/** When the running sum of flows turns positive, by both conventions. */
export interface PaybackYears {
  /** First whole year in which the sum is zero or above; undefined = never. */
  readonly wholeYear: number | undefined
  /** The same inside the year, flows spread evenly over it. */
  readonly interpolated: number | undefined
  /** Year in which a later cost turns the sum negative again, if one does. */
  readonly dipsAgainYear: number | undefined
  /** Interpolated year from which the sum stays positive; undefined = it ends negative. */
  readonly lasting: number | undefined
}

/**
 * Payback of yearly flows.
 *
 * @param cumulative Running sums, USD, year 0 first (discounted sums give the discounted payback).
 * @source Whole years: 10 CFR 436.18(d) as NIST reports apply it; inside the year: textbook interpolation
 */
export function paybackYears(cumulative: readonly number[]): PaybackYears {
  let wholeYear: number | undefined
  let interpolated: number | undefined
  let dipsAgainYear: number | undefined
  let lasting: number | undefined
  for (const [year, sum] of cumulative.entries()) {
    if (sum < 0) {
      if (wholeYear !== undefined) dipsAgainYear ??= year
      lasting = undefined
      continue
    }
    if (lasting !== undefined) continue
    const before = cumulative[year - 1] ?? 0
    lasting = before < 0 ? year - 1 + -before / (sum - before) : year
    wholeYear ??= year
    interpolated ??= lasting
  }
  return { wholeYear, interpolated, dipsAgainYear, lasting }
}
