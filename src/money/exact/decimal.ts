import { Big } from 'big.js'

/** Exact decimal arithmetic: sums and products are exact, quotients are rounded half up at 20 places. */
export const Decimal = Big()
Decimal.DP = 20
Decimal.RM = 1
export type Decimal = Big

export const ZERO: Decimal = new Decimal(0)

/** The decimal that a person typed: 0.0475 becomes 0.0475, not the nearest binary number. */
export function decimal(typed: number): Decimal {
  return new Decimal(typed)
}

export function sum(amounts: Iterable<Decimal>): Decimal {
  let total = ZERO
  for (const amount of amounts) total = total.plus(amount)
  return total
}

export function smaller(a: Decimal, b: Decimal): Decimal {
  return a.lt(b) ? a : b
}

/** Half up to the cent, away from zero for credits: 26.125 becomes 26.13. */
export function toCents(usd: Decimal): Decimal {
  return usd.round(2, 1)
}
