import { GOODS_GROUPS } from '../take-off/need.js'
import type { BillGroup, BillLine } from './bill-line.js'
import type { Decimal } from '../../values/decimal/index.js'
import type { Watts } from '../../values/index.js'
import { type UsdRange, sumRanges, toNumber } from '../exact.js'

/** Totals with the names that the JSON has; null where a price is missing. */
export interface TotalValues {
  /** All goods, tools too. */
  readonly materials_usd: number | null
  readonly freight_usd: number | null
  readonly rentals_usd: number | null
  readonly fees_usd: number | null
  readonly labour_usd: number | null
  readonly margin_usd: number | null
  readonly tax_usd: number | null
  /** All lines. */
  readonly gross_usd: number | null
  /** Paid at purchase. */
  readonly incentives_usd: number | null
  readonly net_usd: number | null
  /** Gross cost over the DC rating. */
  readonly usd_per_w: number | null
}

/** Every total at both ends of its range. */
export interface BillTotals {
  readonly gross: UsdRange
  readonly atMost: TotalValues
  readonly atLeast: TotalValues
}

/**
 * Sums of the lines by kind.
 *
 * @param incomplete Whether something is not on the bill at all, so that no total has an upper end.
 * @param incentivesOf Incentives at purchase for a gross cost.
 * @param ratingW DC rating, W.
 */
export function billTotals(
  lines: readonly BillLine[],
  incomplete: boolean,
  incentivesOf: (gross: Decimal) => Decimal,
  ratingW: Watts,
): BillTotals {
  const isGoods = (group: BillGroup): boolean => (GOODS_GROUPS as readonly string[]).includes(group)
  const sumOf = (wanted: (group: BillGroup) => boolean): UsdRange =>
    sumRanges(lines.filter((line) => wanted(line.group)).map((line) => line.cost))
  const open = (range: UsdRange): UsdRange => (incomplete ? { ...range, high: null } : range)
  const gross = open(sumOf(() => true))
  const parts = {
    materials_usd: open(sumOf(isGoods)),
    freight_usd: sumOf((group) => group === 'freight'),
    rentals_usd: sumOf((group) => group === 'rentals'),
    fees_usd: sumOf((group) => group === 'fees'),
    labour_usd: sumOf((group) => group === 'labour'),
    margin_usd: sumOf((group) => group === 'margin'),
    tax_usd: sumOf((group) => group === 'tax'),
  }
  const at = (end: 'low' | 'high'): TotalValues => {
    const number = (range: UsdRange): number | null => {
      const amount = range[end]
      return amount === null ? null : toNumber(amount)
    }
    const total = gross[end]
    const incentives = total === null ? null : incentivesOf(total)
    return {
      materials_usd: number(parts.materials_usd),
      freight_usd: number(parts.freight_usd),
      rentals_usd: number(parts.rentals_usd),
      fees_usd: number(parts.fees_usd),
      labour_usd: number(parts.labour_usd),
      margin_usd: number(parts.margin_usd),
      tax_usd: number(parts.tax_usd),
      gross_usd: number(gross),
      incentives_usd: incentives === null ? null : toNumber(incentives),
      net_usd: total === null || incentives === null ? null : toNumber(total.minus(incentives)),
      usd_per_w: total === null || ratingW <= 0 ? null : total.div(ratingW).roundedTo(4).toNumber(),
    }
  }
  return { gross, atMost: at('high'), atLeast: at('low') }
}
