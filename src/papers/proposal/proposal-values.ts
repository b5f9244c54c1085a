import type { RuleSet, Supplier } from '../../tables/papers/index.js'

/** What `write-proposal` tells of an offer; rounded as the customer reads it, never to the seller's favour. */
export interface ProposalValues {
  readonly rule_set: RuleSet
  readonly language: 'en' | 'es'
  readonly size: SizeValues
  readonly energy: EnergyValues
  readonly bills: BillsValues
  readonly cost: CostValues
  readonly savings: SavingsLines
  readonly cash: readonly CashYear[]
  readonly payback: PaybackLine
  /** What changes the present value most, the largest first. */
  readonly changes: readonly ChangeValues[]
  /** Null without a loan. */
  readonly loan: LoanValues | null
  /** Null where no right to cancel follows from what is stated. */
  readonly cancellation: Cancellation | null
  /** Scenarios of --versus, this project first; none without. */
  readonly options: readonly OptionValues[]
  readonly disclosures: readonly DisclosureValues[]
}

export interface SizeValues {
  readonly dc_kw: number
  readonly ac_kw: number
  readonly modules: number
  readonly equipment: readonly {
    readonly kind: 'module' | 'inverter' | 'storage'
    readonly name: string
    readonly count: number
  }[]
}

/** kWh. P90 is exceeded in nine cases of ten. */
export interface RangeValues {
  readonly p90_kwh: number
  readonly p50_kwh: number
  readonly p10_kwh: number
}

export interface EnergyValues {
  readonly first_year: RangeValues
  readonly monthly: readonly ({ readonly month: number } & RangeValues)[]
  readonly degradation_pct_per_year: number
  readonly years: readonly { readonly year: number; readonly kwh: number }[]
  readonly use_kwh: number
  /** Energy of the first year over use, percent, not above 100 and more where more is made than used. */
  readonly offset_pct: number
  readonly own_use_kwh: number
  readonly export_kwh: number
  readonly import_kwh: number
  readonly weather: string
}

export interface BillsValues {
  readonly tariff: string
  readonly tariff_with_system: string
  readonly monthly: readonly { readonly month: number; readonly without_usd: number; readonly with_usd: number }[]
  readonly without_usd: number
  readonly with_usd: number
  readonly saved_usd: number
}

export interface CostLine {
  readonly name: string
  readonly quantity: string
  readonly usd: number
}

export interface CostValues {
  readonly gross_usd: number
  readonly detail: 'total' | 'groups' | 'lines'
  /** Of the bill of materials; they add up to its own total, which is not the price where one is stated. */
  readonly lines: readonly CostLine[]
  /** What the price holds beside the lines; null where there are no lines. */
  readonly rest_usd: number | null
  readonly incentives: readonly { readonly name: string; readonly source: string; readonly checked: string }[]
  readonly incentives_usd: number
  readonly net_usd: number
}

export interface SavingsLines {
  readonly years: number
  readonly money: 'real' | 'nominal'
  readonly lines: readonly SavingsLine[]
}

/** What the bills save in all years less upkeep, replacements and what a loan costs, at one assumed rise of prices. */
export interface SavingsLine {
  readonly kind: 'unchanged' | 'lower' | 'assumed' | 'higher'
  /** Rise of the price of electricity, nominal, percent a year; null for a published index. */
  readonly rise_pct: number | null
  readonly saved_usd: number
  readonly payback_years: number | null
}

/** Running sum after a year, USD. */
export interface CashYear {
  readonly year: number
  readonly p90_usd: number
  readonly p50_usd: number
  readonly p10_usd: number
}

export interface PaybackLine {
  /** Null: not within the study. */
  readonly years: number | null
  readonly p90_years: number | null
  readonly p10_years: number | null
  readonly study_years: number
  readonly npv_usd: number
  readonly discount_pct: number
  readonly irr_pct: number | null
}

/** Present value at the low and the high end of something that is not known, USD. */
export interface ChangeValues {
  readonly id: string
  readonly unit: string
  readonly low: number
  readonly high: number
  readonly npv_at_low_usd: number
  readonly npv_at_high_usd: number
}

export interface LoanValues {
  readonly principal_usd: number
  readonly apr_pct: number
  readonly term_years: number
  readonly fee_usd: number
  readonly payment_usd_per_month: number
  readonly total_of_payments_usd: number
  /** Paid beside the loan at purchase. */
  readonly down_usd: number
  readonly cash_price_usd: number
  readonly financed_price_usd: number
}

export interface Cancellation {
  readonly business_days: number
  readonly last_day: string | null
  readonly source: string
}

export interface OptionValues {
  readonly name: string
  readonly cost_usd: number
  readonly first_year_kwh: number
  readonly saved_first_year_usd: number
  readonly payback_years: number | null
  readonly npv_usd: number
}

export interface DisclosureValues {
  readonly id: string
  readonly says: string
  readonly ask: 'must' | 'should'
  readonly rule: string
  readonly state: 'there' | 'missing' | 'does_not_apply'
  /** Heading of the paper under which it stands; null when it is missing. */
  readonly stands_under: string | null
  readonly supplied_by: Supplier
}
