import type { DayCount, StatedLine } from './paid-bill.js'

/** A stated line of a bill against that of the tariff. */
export interface BillLineCheck {
  readonly line: StatedLine
  readonly computed_usd: number
  readonly stated_usd: number
  readonly difference_usd: number
}

/** A printed bill against what the tariff gives for its days and kWh. */
export interface CheckedBill {
  readonly from: string
  readonly to: string
  readonly days: number
  readonly computed_usd: number
  readonly stated_usd: number
  /** Computed less stated. */
  readonly difference_usd: number
  /** Those that the table states. */
  readonly lines: readonly BillLineCheck[]
  /** The stated line that is off the most; null when none is, or none is stated. */
  readonly wrong_line: StatedLine | null
  readonly computed_lines: readonly { readonly id: string; readonly says: string; readonly amount_usd: number }[]
  /** The key that most likely is wrong, `--days` for the days of the bill; null for a bill that is right, or when none explains all. */
  readonly suspect: string | null
}

/** One change that explains every bill to the cent. */
export interface ExplanationValues {
  readonly key: string
  /** What the tariff says, null when it says nothing. */
  readonly found: string | number | null
  readonly fits: string | number
  /** First and last of the values that fit as well. */
  readonly also_fits?: readonly (string | number)[]
}

/** All printed bills of a table against a tariff, and what explains their differences. */
export interface CheckedBillsValues {
  readonly tariff: string
  readonly days_counted: DayCount
  /** Whether the rules for solar customers were taken, as the table states exports or generation. */
  readonly with_system: boolean
  readonly bills: readonly CheckedBill[]
  /** Bills that are not those of the tariff. */
  readonly differing: number
  readonly computed_usd: number
  readonly stated_usd: number
  readonly difference_usd: number
  /** Single changes that explain all bills, the likeliest first. */
  readonly explanations: readonly ExplanationValues[]
}
