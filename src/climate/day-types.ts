/** One kind of day: its clearness, and the share of the month's days that are of this kind. */
export interface DayType {
  /** Daily clearness index of the kind. */
  readonly clearness: number
  /** Share of the days, 0 to 1. */
  readonly share: number
}

const LOWEST_CLEARNESS = 0.05

/**
 * Largest daily clearness index of a month.
 *
 * @param meanClearness Monthly mean clearness index.
 * @source Herzog 1985 (Duffie & Beckman, eq. 2.9.8; from memory, unverified).
 * @example highestClearness(0.5) // 0.7646
 */
export function highestClearness(meanClearness: number): number {
  return 0.6313 + 0.267 * meanClearness - 11.9 * (meanClearness - 0.75) ** 8
}

/**
 * Mean of a stretch [low, high] of an exponential density exp(g K). Written with the distance from `high`, so that it
 * neither overflows for large g nor loses digits for small g.
 */
function meanBetween(low: number, high: number, g: number): number {
  const width = high - low
  const x = g * width
  if (Math.abs(x) < 1e-4) return (low + high) / 2 + (x * width) / 12
  return high - width * (1 / x - 1 / Math.expm1(x))
}

/**
 * Exponent of the distribution of daily clearness whose mean is exactly the month's.
 *
 * @param meanClearness Monthly mean clearness index, 0.15 to 0.80.
 * @returns The exponent g, found by bisection of the mean equation.
 * @throws RangeError outside 0.15 to 0.80, where the distribution is not meant to be used.
 * @source Bendt, Collares-Pereira & Rabl 1981 (Duffie & Beckman, eq. 2.9.5).
 * @example clearnessExponent(0.5) // 2.272
 */
export function clearnessExponent(meanClearness: number): number {
  if (!(meanClearness >= 0.15 && meanClearness <= 0.8)) {
    throw new RangeError(`monthly clearness index ${meanClearness} is outside 0.15 to 0.80`)
  }
  const top = highestClearness(meanClearness)
  let low = -400
  let high = 400
  for (let round = 0; round < 100; round += 1) {
    const middle = (low + high) / 2
    if (meanBetween(LOWEST_CLEARNESS, top, middle) < meanClearness) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/**
 * Clearness below which a share of the days lie.
 *
 * @param share 0 to 1.
 * @source Bendt, Collares-Pereira & Rabl 1981, inverted.
 */
export function clearnessQuantile(share: number, meanClearness: number, exponent: number): number {
  const top = highestClearness(meanClearness)
  const x = exponent * (top - LOWEST_CLEARNESS)
  if (Math.abs(x) < 1e-9) return LOWEST_CLEARNESS + share * (top - LOWEST_CLEARNESS)
  // ln[(1-a) e^(g low) + a e^(g top)] / g, with the larger power taken out.
  if (x > 0) return top + Math.log(share + (1 - share) * Math.exp(-x)) / exponent
  return LOWEST_CLEARNESS + Math.log1p(share * Math.expm1(x)) / exponent
}

/**
 * A month's days as kinds of equal probability, each with the mean clearness of its share of the distribution, so that
 * their mean is the month's.
 *
 * @param meanClearness Monthly mean clearness index, 0.15 to 0.80.
 * @param count Number of kinds.
 * @source Bendt, Collares-Pereira & Rabl 1981, conditional means of equal-probability bins.
 * @limits Fitted to North American stations; unrealistic in the tropics at high clearness.
 */
export function dayTypes(meanClearness: number, count = 10): DayType[] {
  const exponent = clearnessExponent(meanClearness)
  return Array.from({ length: count }, (_, index) => {
    const low = clearnessQuantile(index / count, meanClearness, exponent)
    const high = clearnessQuantile((index + 1) / count, meanClearness, exponent)
    return { clearness: meanBetween(low, high, exponent), share: 1 / count }
  })
}
