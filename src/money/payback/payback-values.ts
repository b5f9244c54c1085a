import type { SavingsValues } from '../bill/index.js'
import type { YearValues } from '../years/index.js'
import type { StorageValues } from '../storage/index.js'

/** Payback of one kind, years after purchase; null = not within the study. */
export interface PaybackYearsValues {
  /** First whole year with a running sum of zero or above. */
  readonly whole_year: number | null
  /** Interpolated inside the year. */
  readonly years: number | null
  /** Interpolated year from which the running sum stays positive. */
  readonly lasting_years: number | null
  /** Year in which a later cost turns the running sum negative again. */
  readonly dips_again_year: number | null
}

export interface CashFlowRowValues {
  readonly year: number
  readonly output_kwh: number
  readonly bill_savings_usd: number
  readonly performance_usd: number
  readonly other_income_usd: number
  readonly maintenance_usd: number
  readonly insurance_usd: number
  readonly purchase_usd: number
  readonly incentives_usd: number
  readonly replacement_usd: number
  /** Costs that fall once, where there are any. */
  readonly one_off_usd?: number
  /** Payments under a lease or a power purchase, its end included. */
  readonly contract_usd?: number
  /** Credited for output below the guarantee, where one is stated. */
  readonly guarantee_usd?: number
  readonly residual_usd: number
  readonly loan_received_usd: number
  readonly loan_payment_usd: number
  /** What a loan that outlives the study still asks for, paid in its last year. */
  readonly loan_payoff_usd: number
  /** Still owed at the end of the year. */
  readonly loan_owed_usd: number
  readonly net_usd: number
  readonly cumulative_usd: number
  readonly discounted_cumulative_usd: number
  /** The running sums less what is still owed; payback is when they stay above zero. */
  readonly cumulative_less_owed_usd: number
  readonly discounted_cumulative_less_owed_usd: number
}

/** P10 is reached or exceeded in 10 % of the samples, P90 in 90 %: P90 is the cautious one. */
export interface ExceedanceValues {
  readonly p10: number | null
  readonly p50: number | null
  readonly p90: number | null
}

export interface UncertaintyValues {
  readonly seed: number
  readonly samples: number
  readonly yield_sigma_pct: number
  readonly weather_sigma_pct: number
  readonly escalation_sigma_pct: number
  readonly cost_sigma_pct: number
  readonly npv_usd: ExceedanceValues
  /** P90 is the LONGER payback: 9 of 10 samples are paid back for good by then; null = not within the study. */
  readonly payback_years: ExceedanceValues
  /** Null under a lease or a power purchase, where nothing is paid back. */
  readonly never_paid_back_pct: number | null
  readonly npv_below_zero_pct: number
  /** Running sums of the cash flow by year from 0, not discounted, where they were asked for. */
  readonly cumulative_usd?: readonly ExceedanceValues[]
}

export interface SensitivityValues {
  readonly id: string
  readonly says: string
  readonly unit: string
  readonly central: number
  readonly low: number
  readonly high: number
  readonly npv_at_low_usd: number
  readonly npv_at_high_usd: number
  readonly swing_usd: number
  readonly break_even: number | null
  readonly bar: string
}

/** What a lease or a power purchase comes to, in the money of the cash flow; payback is not defined for it. */
export interface ContractValues {
  readonly kind: 'lease' | 'power_purchase'
  readonly term_years: number
  readonly first_year_payment_usd: number
  readonly payments_usd: number
  /** Bill savings of the first year less payments and upkeep. */
  readonly first_year_saving_usd: number
  /** First year in which the payments are more than the savings; null when there is none. */
  readonly first_negative_year: number | null
  readonly saving_usd: number
  readonly saving_present_value_usd: number
  /** Output that the owner guarantees, where stated. */
  readonly guarantee?: {
    readonly first_year_kwh: number
    /** First year whose estimated output is below it; null when there is none. */
    readonly first_short_year: number | null
    readonly credits_usd: number
  }
  /** Prices of buying the system during the term, USD of that year, where stated; not counted. */
  readonly buyout?: readonly { readonly after_year: number; readonly usd: number }[]
}

export interface PaybackValues {
  readonly money: 'real' | 'nominal'
  readonly years: number
  readonly discount_rate_pct: number
  readonly real_discount_rate_pct: number
  readonly inflation_pct: number
  /** Null when a published index is used, or the prices of each year. */
  readonly real_escalation_pct: number | null
  readonly gross_cost_usd: number
  /** One-time incentives and tax credits, nominal USD. */
  readonly incentives_usd: number
  readonly net_cost_usd: number
  readonly first_year_kwh: number
  readonly first_year_savings_usd: number
  readonly bills: SavingsValues
  readonly cash_flow: readonly CashFlowRowValues[]
  /** What a time of payback counts, in words. */
  readonly payback_means: string
  readonly simple_payback: PaybackYearsValues
  readonly discounted_payback: PaybackYearsValues
  readonly npv_usd: number
  /** At the real rates that are always shown. */
  readonly npv_at: readonly { readonly real_discount_rate_pct: number; readonly npv_usd: number }[]
  readonly irr: {
    readonly kind: 'one' | 'none' | 'several'
    readonly rates_pct: readonly number[]
    readonly says: string
  }
  readonly sir: number | null
  readonly airr_pct: number | null
  readonly lcoe_usd_per_kwh: number | null
  /** The same costs per kWh that lower the bill. */
  readonly cost_per_kwh_saved_usd: number | null
  /** Under a lease or a power purchase: payback, rates of return and cost per kWh are null then. */
  readonly contract?: ContractValues
  /** Where use, rate sheets, prices or promised export prices differ from year to year. */
  readonly years_ahead?: readonly YearValues[]
  readonly uncertainty: UncertaintyValues
  readonly sensitivity: readonly SensitivityValues[]
  /** The battery, where the project has one. */
  readonly storage?: StorageValues
}
