import type { GoodsGroup, Unit } from '../take-off/need.js'
import type { Decimal } from '../../values/decimal/index.js'
import { type UsdRange, toNumber } from '../exact.js'

export type BillGroup = GoodsGroup | 'freight' | 'rentals' | 'fees' | 'labour' | 'margin' | 'tax'

/** A line of the bill while it is worked out. */
export interface BillLine {
  readonly item: string
  readonly name: string
  readonly group: BillGroup
  readonly quantity: number
  readonly unit: Unit | 'hour'
  readonly packs: number | null
  readonly pack: string | null
  readonly leftOver: number | null
  readonly unitPrice: Decimal | null
  /** null when no part of it is known. */
  readonly cost: UsdRange
  readonly part: string | null
  readonly taxable: boolean
  readonly why: string
}

/** A line with the names that the JSON has. */
export interface LineValues {
  readonly item: string
  readonly name: string
  readonly group: BillGroup
  readonly quantity: number
  readonly unit: Unit | 'hour'
  /** Whole packs to buy; null when the price list does not say how it is sold. */
  readonly packs: number | null
  readonly pack: string | null
  readonly left_over: number | null
  /** Of one pack; the high end of a range; null when missing. */
  readonly unit_price_usd: number | null
  /** The high end of a range; null when a price is missing. */
  readonly cost_usd: number | null
  readonly cost_at_least_usd: number
  /** The supplier's own text. */
  readonly part: string | null
  readonly why: string
}

export function lineValues(line: BillLine): LineValues {
  const { item, name, group, quantity, unit, packs, pack, part, why } = line
  return {
    item,
    name,
    group,
    quantity,
    unit,
    packs,
    pack,
    left_over: line.leftOver,
    unit_price_usd: line.unitPrice === null ? null : line.unitPrice.toNumber(),
    cost_usd: line.cost.high === null ? null : toNumber(line.cost.high),
    cost_at_least_usd: toNumber(line.cost.low),
    part,
    why,
  }
}

/** A line for an amount that is stated or worked out as a whole. */
export function amountLine(
  line: Pick<BillLine, 'item' | 'name' | 'group' | 'cost' | 'why'> & Partial<BillLine>,
): BillLine {
  return {
    quantity: 1,
    unit: 'each',
    packs: 1,
    pack: 'each',
    leftOver: 0,
    unitPrice: line.cost.high,
    part: null,
    taxable: true,
    ...line,
  }
}
