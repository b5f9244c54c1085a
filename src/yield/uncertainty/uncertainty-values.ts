/** Energy that is exceeded in a share of cases, kWh. */
export interface Exceedance {
  readonly p10_kwh: number
  readonly p50_kwh: number
  readonly p90_kwh: number
  readonly p99_kwh: number
}

/** One cause of doubt, as a relative standard deviation of the system's energy. */
export interface UncertaintyTermValue {
  readonly term: string
  readonly percent: number
  /** Document, and how well it is known. */
  readonly source: string
  readonly why: string
  /** Whether it is the same in every year, so that a mean over years does not lessen it. */
  readonly lasts: boolean
  /** Whether it is one and the same for the system, or comes out differently for each array. */
  readonly shared: 'system' | 'array'
}

/** How sure the energy of the system is. */
export interface YieldUncertainty {
  readonly uncertainty: readonly UncertaintyTermValue[]
  readonly exceedance: {
    /** The first year, any year of the system's life, and the mean of years 1 to 10, losing output with age. */
    readonly first_year: Exceedance
    readonly any_year: Exceedance
    readonly ten_year_mean: Exceedance
  }
  /** Energy of all years together. */
  readonly lifetime: Exceedance & { readonly years: number; readonly degradation_pct_per_year: number }
}
