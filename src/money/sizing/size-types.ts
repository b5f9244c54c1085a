import type { Finance, Incentive } from '../../project/index.js'
import type { BillingCalendar } from '../calendar/index.js'
import type { RateSheet } from '../tariff/index.js'
import type { UseOfYear } from '../usage/index.js'
import type { LineChange } from './what-changes.js'
import type { Dollars, KilowattHours, Percent, Watts } from '../../values/index.js'

/** One size that could be bought. */
export interface SizeCandidate {
  readonly modules: number
  /** 8760 hours of local standard time, kWh. */
  readonly productionKwh: Float64Array
  /** Before incentives, USD. */
  readonly grossCostUsd: Dollars
  readonly dcRatingW: Watts
  /** Branch circuits of module-level inverters, where they are known. */
  readonly branches?: number
}

export interface ChooseSizeInput {
  readonly sheet: RateSheet
  readonly sheetWithSystem?: RateSheet
  /** Use of the first year. */
  readonly usageKwh: Float64Array
  /** Use of each year, where it grows or loads come. */
  readonly usageOf?: UseOfYear
  readonly calendar: BillingCalendar
  /** In ascending order of modules. */
  readonly candidates: readonly SizeCandidate[]
  /** What forbids more modules than the last candidate: `the roof`, `the busbar of the panel`. */
  readonly stoppedBy: string
  readonly finance: Finance
  readonly incentives: Readonly<Record<string, Incentive>>
  readonly degradationPct?: Percent
  /** Share of the year's use that the person wants to cover, percent. */
  readonly wishedSharePct?: Percent
}

/** One size and what it is worth. */
export interface SizeRow {
  readonly modules: number
  /** Branch circuits of module-level inverters; null when there are none or their number is not known. */
  readonly branches: number | null
  readonly annual_kwh: number
  /** Generation over use, percent. */
  readonly share_of_use_pct: number
  readonly net_cost_usd: number
  readonly first_year_savings_usd: number
  /** Simple payback for good, years; null = not within the study. */
  readonly payback_years: number | null
  readonly npv_usd: number
  /** Text bar of the net present value: # above zero, - below, 30 characters for the largest. */
  readonly npv_bar: string
  /** What the modules beyond the row before add; the first row against no system. */
  readonly marginal: {
    readonly modules: number
    readonly kwh: KilowattHours
    readonly savings_usd: number
    /** Saved in the first year per further kWh. */
    readonly usd_per_kwh: number | null
    readonly cost_usd: number
    readonly npv_usd: number
    readonly replaces: readonly LineChange[]
  }
}

/** Number of modules by yardstick; null = no size meets it. */
export interface SizePicks {
  /** Null when no size has a net present value above zero. */
  readonly best_npv: number | null
  readonly shortest_payback: number | null
  /** Smallest size that covers the wished share of the use. */
  readonly covers_wished_share: number | null
  /** Last size before a further module saves less than nine tenths of what the dearest kWh of all sizes saves. */
  readonly only_expensive_kwh: number | null
}

export interface ChooseSizeValues {
  readonly sizes: readonly SizeRow[]
  readonly picks: SizePicks
  /** What a time of payback counts, in words. */
  readonly payback_means: string
  readonly stopped_by: string
  readonly wished_share_pct: number | null
}
