import { toCents, ZERO, type Decimal } from '../values/decimal/index.js'

/** A number of cents' worth for JSON, USD: exact to the cent. */
export const toNumber = (usd: Decimal): number => toCents(usd).toNumber()

/** An amount between two bounds; `high` is null when a part of it has no price. */
export interface UsdRange {
  readonly low: Decimal
  readonly high: Decimal | null
}

export const exactly = (amount: Decimal): UsdRange => ({ low: amount, high: amount })

export const NOTHING: UsdRange = exactly(ZERO)

export function sumRanges(ranges: Iterable<UsdRange>): UsdRange {
  let { low, high }: UsdRange = NOTHING
  for (const range of ranges) {
    low = low.plus(range.low)
    high = high === null || range.high === null ? null : high.plus(range.high)
  }
  return { low, high }
}

/** Both bounds through one function that never falls. */
export function mapRange({ low, high }: UsdRange, change: (amount: Decimal) => Decimal): UsdRange {
  return { low: change(low), high: high === null ? null : change(high) }
}
