import type { BomValues } from './price-bom.js'
import { ZERO, decimal, type Decimal } from '../values/decimal/index.js'
import { toNumber } from './exact.js'

/** One item at two suppliers. */
export interface ComparedLine {
  readonly item: string
  readonly name: string
  readonly quantity_first: number | null
  readonly quantity_second: number | null
  readonly cost_first_usd: number | null
  readonly cost_second_usd: number | null
  /** Second less first; null when a price is missing. */
  readonly difference_usd: number | null
  readonly cheaper: 'first' | 'second' | 'equal' | null
}

export interface BillComparison {
  readonly first: string
  readonly second: string
  readonly lines: readonly ComparedLine[]
  readonly gross_first_usd: number | null
  readonly gross_second_usd: number | null
  readonly difference_usd: number | null
  /** Goods when every item is bought where it is cheaper, before freight and tax; null when an item has no price anywhere. */
  readonly goods_at_the_cheaper_usd: number | null
}

/** Two bills of the same job with prices of two suppliers, side by side. Rails may be cut from other stock lengths. */
export function compareBills(first: BomValues, second: BomValues): BillComparison {
  const items = [...new Set([...first.lines, ...second.lines].map((line) => line.item))]
  const find = (bill: BomValues, item: string) => bill.lines.find((line) => line.item === item)
  const lines = items.map((item): ComparedLine => {
    const [a, b] = [find(first, item), find(second, item)]
    // An item that one bill does not need costs nothing there: another stock length is cut instead.
    const costs = [a === undefined ? 0 : a.cost_usd, b === undefined ? 0 : b.cost_usd] as const
    const difference = subtract(costs[1], costs[0])
    return {
      item,
      name: a?.name ?? b?.name ?? item,
      quantity_first: a?.quantity ?? null,
      quantity_second: b?.quantity ?? null,
      cost_first_usd: costs[0],
      cost_second_usd: costs[1],
      difference_usd: difference,
      cheaper: difference === null ? null : difference < 0 ? 'second' : difference > 0 ? 'first' : 'equal',
    }
  })
  const [grossA, grossB] = [first.totals.gross_usd, second.totals.gross_usd]
  return {
    first: first.supplier ?? 'first list',
    second: second.supplier ?? 'second list',
    lines,
    gross_first_usd: grossA,
    gross_second_usd: grossB,
    difference_usd: subtract(grossB, grossA),
    goods_at_the_cheaper_usd: cheaperGoods(first, second),
  }
}

function subtract(a: number | null, b: number | null): number | null {
  return a === null || b === null ? null : toNumber(decimal(a).minus(decimal(b)))
}

const OTHER = new Set(['freight', 'rentals', 'fees', 'labour', 'margin', 'tax'])

/** Rails of both bills go together, because each list cuts its own set of stock lengths. */
function cheaperGoods(first: BomValues, second: BomValues): number | null {
  const costs = (bill: BomValues): Map<string, Decimal | null> => {
    const sums = new Map<string, Decimal | null>()
    for (const { item, group, cost_usd: cost } of bill.lines) {
      if (OTHER.has(group)) continue
      const key = item.startsWith('rail.') ? item.slice(0, item.lastIndexOf('.')) : item
      const before = sums.has(key) ? (sums.get(key) ?? null) : ZERO
      sums.set(key, before === null || cost === null ? null : before.plus(decimal(cost)))
    }
    return sums
  }
  const [a, b] = [costs(first), costs(second)]
  let total = ZERO
  for (const key of new Set([...a.keys(), ...b.keys()])) {
    const known = [a.get(key), b.get(key)].filter((cost) => cost !== null && cost !== undefined)
    const [one, other] = known
    if (one === undefined) return null
    total = total.plus(other !== undefined && other.lt(one) ? other : one)
  }
  return toNumber(total)
}
