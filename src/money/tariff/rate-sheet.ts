import type { Observance } from '../calendar/index.js'
import type { Assumption, Source } from '../../worksheet/index.js'
import type { Decimal } from '../../values/decimal/index.js'

/** A tariff that was checked and whose prices are exact decimals. Seasons and periods are addressed by index. */
export interface RateSheet {
  readonly name: string
  readonly source: Source
  readonly assumptions: readonly Assumption[]
  readonly seasons: readonly string[]
  /** Season of each day of a 365-day year. */
  readonly seasonOfDay: Uint8Array
  readonly periods: readonly string[]
  /** Parts of an hour that periods tell apart: 4 when one begins or ends at a quarter of an hour. */
  readonly partsPerHour: 1 | 4
  /** Period of season x kind of day x part of the clock day: index `(season * 4 + kind) * 24 * partsPerHour + part`. */
  readonly periodOfHour: Uint8Array
  readonly holidays: readonly string[]
  readonly observed: Observance
  readonly fixed: readonly FixedCharges[]
  readonly minimum: MinimumCharges | undefined
  /** By season. */
  readonly energy: readonly EnergyPrices[]
  readonly tierAdders: readonly TierAdders[]
  readonly riders: readonly Riders[]
  readonly demand: readonly DemandCharges[]
  /** Time over which demand is averaged, minutes; undefined when the tariff does not state it. */
  readonly demandIntervalMin: number | undefined
  readonly taxes: readonly Taxes[]
  readonly rounding: 'line' | 'total'
  readonly readDay: number | undefined
  readonly solarFixed: readonly FixedCharges[] | undefined
  /** With a contract, at the price of its first year. */
  readonly solar: SolarTerms
  readonly exportContract: ExportContractTerms | undefined
  /** Sheets that replace this one, oldest first. */
  readonly later: readonly LaterSheets[]
}

/** A later sheet and the first day on which it holds, `YYYY-MM-DD`. */
export interface LaterSheets {
  readonly from: string
  readonly sheet: RateSheet
}

/** Promised export prices in money of each year. */
export interface ExportContractTerms {
  /** By year from permission to operate, the first year first. */
  readonly usdOfYear: readonly Decimal[]
  readonly afterwards: 'tariff' | 'unpaid'
  /** What the tariff itself pays. */
  readonly ofTariff: SolarTerms
}

/** Kinds of day, in the order of `RateSheet.periodOfHour`. */
export const DAY_KINDS = ['weekday', 'saturday', 'sunday', 'holiday'] as const

export interface FixedCharges {
  readonly id: string
  readonly usd: Decimal
  readonly per: 'month' | 'day' | 'month by days'
}

export interface MinimumCharges {
  readonly usd: Decimal
  readonly per: 'month' | 'day'
  readonly of: 'energy' | 'bill'
}

/** Amount of energy per bill, or per day of a bill. */
export interface Threshold {
  readonly kwh: Decimal
  readonly per: 'month' | 'day'
}

export interface Tier {
  /** Undefined for the last tier. */
  readonly upTo: Threshold | undefined
  readonly usdPerKwh: Decimal
}

export type EnergyPrices =
  | { readonly kind: 'tiers'; readonly tiers: readonly Tier[] }
  /** By period; 0 for a period without hours in the season. */
  | { readonly kind: 'periods'; readonly usdPerKwh: readonly Decimal[] }
  /** By period; no tier for a period without hours in the season. `shared`: each tier counts the whole bill. */
  | { readonly kind: 'period tiers'; readonly ladders: readonly (readonly Tier[])[]; readonly shared: boolean }

export interface TierAdders {
  readonly id: string
  readonly above: Threshold
  readonly usdPerKwh: Decimal
  readonly seasons: readonly number[]
}

export interface Riders {
  readonly id: string
  /** By month, January first. */
  readonly usdPerKwh: readonly Decimal[]
  readonly nonBypassable: boolean
}

export interface DemandCharges {
  readonly id: string
  /** One without upper end for a single price. */
  readonly tiers: readonly DemandTiers[]
  readonly periods: readonly number[]
  readonly seasons: readonly number[]
  /** Months of the bill, 1 to 12; undefined for all. */
  readonly months: readonly number[] | undefined
}

export interface DemandTiers {
  /** kW counted from zero; undefined for the last tier. */
  readonly upToKw: Decimal | undefined
  readonly usdPerKw: Decimal
}

export interface Taxes {
  readonly id: string
  readonly percent: Decimal | undefined
  readonly usdPerKwh: Decimal | undefined
  /** Groups or ids; undefined = everything before taxes. */
  readonly of: readonly string[] | undefined
  readonly beforeCredits: boolean
}

export interface MoneyCreditTerms {
  readonly offsets: 'energy' | 'all'
  readonly settle: 'never' | 'monthly' | 'annual'
  /** Month of the true-up bill, 1 to 12; 12 unless annual. */
  readonly trueUpMonth: number
  readonly paidOut: Decimal
}

export type ExportPrices =
  | { readonly kind: 'monthly'; readonly usdPerKwh: readonly Decimal[] }
  | { readonly kind: 'periods'; readonly usdPerKwh: readonly Decimal[] }
  /** Month x (weekday, other) x hour: index `(month - 1) * 48 + other * 24 + hour`. */
  | { readonly kind: 'hours'; readonly usdPerKwh: readonly Decimal[] }

export type SolarTerms =
  | { readonly rule: 'unpaid' }
  | {
      readonly rule: 'net metering'
      readonly settle: 'monthly' | 'annual'
      readonly trueUpMonth: number
      readonly surplusUsdPerKwh: Decimal
      readonly trueUpFeeUsd: Decimal
      readonly bank: 'by_period' | 'any_period' | 'money'
      readonly credit: MoneyCreditTerms | undefined
    }
  | {
      readonly rule: 'net billing'
      readonly netting: 'instant' | '15_min' | 'hour' | 'bill'
      readonly prices: ExportPrices
      readonly credit: MoneyCreditTerms
    }
  | { readonly rule: 'buy all, sell all'; readonly usdPerKwh: Decimal; readonly credit: MoneyCreditTerms }
