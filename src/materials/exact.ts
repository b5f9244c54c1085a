import { Big } from 'big.js'

/** Exact decimal arithmetic for money: sums and products are exact, quotients are rounded half up at 20 places. */
export const Decimal = Big()
Decimal.DP = 20
Decimal.RM = 1
export type Decimal = Big

/** Half up to the cent. */
export const toCents = (usd: Decimal): Decimal => usd.round(2, 1)

/** A number of cents' worth for JSON: exact to the cent. */
export const toNumber = (usd: Decimal): number => Number(usd.toFixed(2))

/** The decimal that a person typed. */
export const usd = (typed: number): Decimal => new Decimal(typed)

/** An amount between two bounds; `high` is null when a part of it has no price. */
export interface UsdRange {
  readonly low: Decimal
  readonly high: Decimal | null
}

export const exactly = (amount: Decimal): UsdRange => ({ low: amount, high: amount })

export const NOTHING: UsdRange = exactly(new Decimal(0))

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
