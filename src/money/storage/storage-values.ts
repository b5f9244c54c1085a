import type { KilowattHours } from '../../values/index.js'

/** Hours that the essential loads last in an outage, over the hours of a month at which it may begin. */
export interface OutageMonthValues {
  /** 1 = January. */
  readonly month: number
  /** Reached or exceeded from 10, 50 and 90 % of the hours: P90 is the cautious one. A week is the longest looked at. */
  readonly p10_h: number
  readonly p50_h: number
  readonly p90_h: number
}

/** One year of the battery in the study. */
export interface StorageYearValues {
  readonly year: number
  /** Usable energy left at the end of the year, percent of new; the whole year is worked out with it. */
  readonly capacity_pct: number
  readonly discharged_kwh: number
  readonly full_cycles: number
  /** Saved less than with a battery as new, USD at base prices; where years differ, at the prices of the year in money of the purchase. */
  readonly fade_usd: number
  readonly replaced: boolean
}

/** The battery of a project: first year when new, the years of the study, and outages. */
export interface StorageValues {
  readonly count: number
  readonly usable_kwh: number
  readonly reserve_kwh: number
  readonly annual: {
    readonly charged_kwh: number
    readonly discharged_kwh: number
    /** Lost on the way in and out, and standby. */
    readonly losses_kwh: number
    readonly standby_kwh: number
    readonly import_kwh: number
    readonly export_kwh: number
    /** Output that could not be used, stored or exported. */
    readonly curtailed_kwh: number
    /** Output that was neither exported nor curtailed, percent. */
    readonly self_use_pct: number
    /** Energy taken from the store over its usable energy when new. */
    readonly full_cycles: number
    /** Discharged over charged and standby, percent; null when nothing was charged. */
    readonly round_trip_pct: number | null
    /** In the store at the end beyond what was there at the start; counted as nothing. */
    readonly left_kwh: number
  }
  /** The same house and modules without the battery. */
  readonly without: {
    readonly import_kwh: number
    readonly export_kwh: number
    readonly self_use_pct: number
    readonly first_year_savings_usd: number
    /** Null where the price of the battery is not stated apart (storage.cost_usd_per_unit). */
    readonly npv_usd: number | null
    /** Null where that price is not stated, or when it is not within the study. */
    readonly payback_years: number | null
  }
  /** Saved in the first year by the battery beside the modules alone, USD. */
  readonly first_year_savings_usd: number
  readonly fade: string
  readonly years: readonly StorageYearValues[]
  /** Null when it outlives the study or none is stated. */
  readonly warranty_end: { readonly after_years: number; readonly by: 'years' | 'throughput' | 'full cycles' } | null
  /** What the control reaches of what perfect foresight would save on energy, percent; only when asked for. */
  readonly optimum_share_pct?: number | null
  /** Cost of energy of the first year by prices per kWh alone, USD: without battery, as controlled, and at best. */
  readonly optimum?: { readonly without_usd: number; readonly control_usd: number; readonly least_usd: number } | null
  readonly outage?: readonly OutageMonthValues[]
}

/** Sums of a year as the report rounds them. */
export const roundKwh = (kwh: KilowattHours): number => Number(kwh.toFixed(1)) + 0
