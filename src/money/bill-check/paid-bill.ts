import type { Decimal } from '../../values/decimal/index.js'
import type { StatedKwh } from '../bill/index.js'

/** Groups of lines that a table of bills may state, in the order of a bill. */
export const STATED_LINES = ['energy', 'riders', 'fixed', 'demand', 'minimum', 'credit', 'surplus', 'taxes'] as const

/** A column of a table of bills that is held against lines of the tariff. */
export type StatedLine = (typeof STATED_LINES)[number]

/** A bill as it was printed. */
export interface PaidBill {
  /** `bills.csv:4` */
  readonly place: string
  /** First and last day as printed, `YYYY-MM-DD`. */
  readonly from: string
  readonly to: string
  readonly importKwh: StatedKwh
  readonly exportKwh: StatedKwh | undefined
  readonly generationKwh: number | undefined
  readonly demandKw: StatedKwh | undefined
  readonly amountUsd: Decimal
  readonly lines: ReadonlyMap<StatedLine, Decimal>
}

/** Which of the printed days are days of the bill: both, or the later of two readings alone. */
export type DayCount = 'both' | 'last'
