/** A cause of doubt before the measurement. */
export interface PriorTerm {
  readonly term: string
  /** Relative standard deviation of the energy of a year. */
  readonly prior: number
  /** What an error of 1 % in the year makes of the energy of the measured days, in per cent; 0 where they tell nothing of it. */
  readonly loading: number
}

export interface PosteriorTerm extends PriorTerm {
  readonly posterior: number
  /** Mean of the error after the measurement, relative to the energy of a year. */
  readonly shift: number
}

/** What is known after the measurement. */
export interface Posterior {
  readonly terms: readonly PosteriorTerm[]
  /** Energy of a year over that of the estimate, and its standard deviation before and after. */
  readonly factor: number
  readonly priorSpread: number
  readonly spread: number
  /** Variance that the terms give the measured days, and covariance of the days with the year. */
  readonly variance: number
  readonly covariance: number
}

/**
 * Normal prior, normal measurement: measured over expected less 1 is the sum of the errors, each times its loading, and noise.
 *
 * After it the errors of the terms hang together (one that is larger leaves less for the others), so that the spread of their sum is
 * less than the root of the sum of their squares.
 *
 * @param deviation Measured over expected energy, less 1. @param noise Standard deviation of it when the estimate is exact.
 * @source Bayes' rule for normal variables, textbooks (from memory): shift = h s^2 d / (V + r^2), s'^2 = s^2 (1 - h^2 s^2 / (V + r^2))
 */
export function updateTerms(priors: readonly PriorTerm[], deviation: number, noise: number): Posterior {
  const sum = (of: (term: PriorTerm) => number): number => priors.reduce((total, term) => total + of(term), 0)
  const variance = sum(({ prior, loading }) => (loading * prior) ** 2)
  const covariance = sum(({ prior, loading }) => loading * prior ** 2)
  const priorVariance = sum(({ prior }) => prior ** 2)
  const whole = variance + noise ** 2
  const share = (value: number): number => (whole > 0 ? value / whole : 0)
  return {
    terms: priors.map((term) => {
      const { prior, loading } = term
      return {
        ...term,
        posterior: prior * Math.sqrt(Math.max(0, 1 - share((loading * prior) ** 2))),
        shift: loading * prior > 0 ? share(loading * prior ** 2) * deviation : 0,
      }
    }),
    factor: 1 + share(covariance) * deviation,
    priorSpread: Math.sqrt(priorVariance),
    spread: Math.sqrt(Math.max(0, priorVariance - share(covariance ** 2))),
    variance,
    covariance,
  }
}

/** The energy that nine years in ten exceed. */
export interface YearRange {
  readonly p50Kwh: number
  readonly p90Kwh: number
}

/**
 * The range of a year after the measurement. The weather of a year is as unsure as before, relative to its energy; P90 lies as many
 * standard deviations below P50 as in the estimate, where losses that cannot become gains bend the law.
 *
 * @param yearly Relative standard deviation of the weather of a year.
 */
export function updatedRange(
  before: YearRange,
  { factor, priorSpread, spread }: Posterior,
  yearly: number,
): YearRange & { readonly deviations: number } {
  const total = Math.hypot(priorSpread, yearly)
  const deviations = total > 0 ? (1 - before.p90Kwh / before.p50Kwh) / total : 0
  return {
    deviations,
    p50Kwh: before.p50Kwh * factor,
    p90Kwh: before.p50Kwh * Math.max(0, factor - deviations * Math.hypot(spread, factor * yearly)),
  }
}
