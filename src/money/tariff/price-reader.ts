import { tariffError } from './tariff-error.js'
import { decimal, type Decimal } from '../../values/decimal/index.js'
import type { Dollars } from '../../values/index.js'

/** Turns prices into exact decimals; a price below zero passes only when the tariff says that it is meant. */
export type PriceReader = (place: string, usd: Dollars) => Decimal

/** @param negativeMeant `tariff.negative_prices`. */
export function priceReader(negativeMeant: boolean): PriceReader {
  return (place, usd) => {
    if (!Number.isFinite(usd)) {
      throw tariffError(place, `${String(usd)} is not a price`, 'Write the number from the rate sheet.')
    }
    if (usd < 0 && !negativeMeant) {
      throw tariffError(
        place,
        `the price ${String(usd)} is below zero`,
        'Correct the sign, or state tariff.negative_prices: true when it is meant.',
      )
    }
    return decimal(usd)
  }
}
