import type { Dollars, KilowattHours } from '../../../values/index.js'

/** What may be wrong. */
export type SignKind =
  | 'outage'
  | 'snow'
  | 'string_or_inverter'
  | 'module'
  | 'level_drop'
  | 'low_level'
  | 'shade'
  | 'soiling'
  | 'degradation'
  | 'clipping'
  | 'trips'
  | 'clock'
  | 'daylight_saving'
  | 'unit'
  | 'meter_reset'

/** A sign of trouble in measured production. */
export interface Sign {
  readonly kind: SignKind
  /** First and last day on which it shows, `2026-05-01`. */
  readonly from: string
  readonly to: string
  /** Whether it lasts to the end of the table. */
  readonly lasts: boolean
  /** Chance that something is wrong, 0 to 1; see the worksheet for what it rests on. */
  readonly probability: number
  /** What it has cost so far. */
  readonly lost_kwh: KilowattHours
  /** By the tariff; null where the bill of the project is not known. */
  readonly lost_usd: Dollars | null
  /** Part, module or hours of the day, in words. */
  readonly where: string
  readonly look_at: string
}

/** A sign before its days and its worth are written out. */
export interface FoundSign {
  readonly kind: SignKind
  /** Number of the first and of the last day. */
  readonly fromDay: number
  readonly toDay: number
  readonly probability: number
  readonly lostKwh: KilowattHours
  readonly where: string
  readonly says: string
  readonly lookAt: string
}
