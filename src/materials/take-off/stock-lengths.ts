import type { CutStock } from '../cut/cutting-problem.js'
import type { PriceBook } from '../price-list/price-book.js'
import { decimal, toCents } from '../../values/decimal/index.js'
import type { Inches } from '../../values/index.js'

/** A stock length with the id of its item. */
export interface StockItem extends CutStock {
  readonly item: string
}

/**
 * Stock lengths to cut from: those that the price list sells, when the longest piece comes from one of them; otherwise
 * all, because a joint that nobody planned is no way to save a stick.
 *
 * @param itemOf Id of the item of a length.
 */
export function stockItems(
  lengthsIn: readonly Inches[],
  itemOf: (lengthIn: Inches) => string,
  prices: PriceBook | undefined,
  longestPieceIn: Inches,
): StockItem[] {
  const all = lengthsIn.map((lengthIn): StockItem => {
    const item = itemOf(lengthIn)
    const cents = unitCents(prices, item)
    return { item, lengthIn, ...(cents === undefined ? {} : { cents }) }
  })
  const sold = all.filter((stock) => stock.cents !== undefined)
  return sold.some((stock) => stock.lengthIn >= longestPieceIn - 1e-6) ? sold : all
}

/** What one stick costs, whole cents; of a bundle, its share. */
function unitCents(prices: PriceBook | undefined, item: string): number | undefined {
  const entry = prices?.find(item)?.entry
  const usd = entry?.usd ?? entry?.usd_high
  if (entry === undefined || usd === undefined || usd <= 0) return undefined
  const cents = toCents(decimal(usd).div(entry.holds ?? 1))
    .times(100)
    .toNumber()
  return cents > 0 ? cents : undefined
}
