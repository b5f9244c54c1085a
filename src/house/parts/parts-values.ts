/** What combinations are ranked by. */
export const RANKS = ['npv', 'payback', 'energy', 'price'] as const
export type PartsRank = (typeof RANKS)[number]

/** What a combination is made of. */
export interface Combination {
  /** Id of the module. */
  readonly module: string
  /** Id of the inverter; null where the modules bring theirs. */
  readonly inverter: string | null
  /** Id of the storage unit; null where there is none, or where the project keeps its own. */
  readonly storage: string | null
  /** Number of storage units, 0 = none; null where the project says. */
  readonly storage_units: number | null
  /** Modules in all that were asked for; null where the project says how many, or the roof. */
  readonly size: number | null
}

/** A combination that holds, with what it costs and gives. */
export interface OptionValue extends Combination {
  readonly place: number
  readonly modules: number
  readonly power_w: number
  /** Bill of materials with the price list, before incentives. */
  readonly price_usd: number
  readonly first_year_kwh: number
  readonly first_year_savings_usd: number
  /** Simple payback for good; null = not within the study. */
  readonly payback_years: number | null
  readonly npv_usd: number
  /** Warnings of the stages; each may matter more than the rank. */
  readonly warnings: number
}

/** A combination that does not hold. */
export interface DroppedValue extends Combination {
  readonly reasons: readonly { readonly id: string; readonly where: string; readonly message: string }[]
}

/** What the next one would have to cost to be at least as good. */
export interface BreakEvenValue {
  readonly place: number
  /** The highest price at which the option of the next place is no worse, by the payback worked out again; null when no price is. */
  readonly next_price_usd: number | null
  /** The same as a change of its price, percent. */
  readonly change_pct: number | null
  readonly says: string
}

export interface PartsValues {
  readonly by: PartsRank
  readonly supplier: string
  readonly combinations: number
  /** Real or nominal, as the net present values are. */
  readonly money: 'real' | 'nominal' | null
  readonly options: readonly OptionValue[]
  readonly break_even: readonly BreakEvenValue[]
  readonly dropped: readonly DroppedValue[]
}
