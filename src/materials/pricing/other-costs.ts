import type { Materials } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import type { PriceList } from '../price-list/price-list-types.generated.js'
import { amountLine, type BillLine } from './bill-line.js'
import { ZERO, decimal, toCents, type Decimal } from '../../values/decimal/index.js'
import { exactly, mapRange, sumRanges, type UsdRange } from '../exact.js'

/** Freight, rentals, fees, labour, margin and sales tax, in that order, after the goods. */
export function otherCosts(materials: Materials, goods: readonly BillLine[], list: PriceList | undefined): BillLine[] {
  const before = [
    ...freight(materials, goods, list),
    ...named(materials.rentals, 'rentals', 'rental'),
    ...named(materials.fees, 'fees', 'fee'),
    ...labour(materials),
  ]
  const withMargin = [...before, ...margin(materials, [...goods, ...before])]
  return [...withMargin, ...salesTax(materials, goods, withMargin)]
}

export const costOf = (lines: readonly BillLine[]): UsdRange => sumRanges(lines.map((line) => line.cost))

function freight(materials: Materials, goods: readonly BillLine[], list: PriceList | undefined): BillLine[] {
  const stated = materials.freight_usd
  if (stated !== undefined)
    return [
      amountLine({
        item: 'freight',
        name: 'Freight',
        group: 'freight',
        cost: exactly(toCents(decimal(stated))),
        why: 'as stated (materials.freight_usd)',
      }),
    ]
  if (list?.freight_usd === undefined) return []
  const amount = toCents(decimal(list.freight_usd))
  const free = list.freight_free_from_usd
  const value = costOf(goods)
  const nothing = ZERO
  // The dearer order may be the one that is sent free, so each bound is looked at by itself.
  const isFree = (goodsUsd: Decimal | null): boolean => free !== undefined && goodsUsd !== null && goodsUsd.gte(free)
  return [
    amountLine({
      item: 'freight',
      name: 'Freight',
      group: 'freight',
      cost: {
        low: isFree(value.high) || (free !== undefined && value.high === null) ? nothing : amount,
        high: isFree(value.low) ? nothing : amount,
      },
      why:
        free === undefined
          ? 'one order (price list: freight_usd)'
          : `one order, free from ${free} USD of goods (price list: freight_usd, freight_free_from_usd)`,
    }),
  ]
}

function named(costs: Materials['rentals'], group: 'rentals' | 'fees', prefix: string): BillLine[] {
  return Object.entries(costs ?? {}).map(([id, { name, usd: amount }]) =>
    amountLine({
      item: `${prefix}.${id}`,
      name,
      group,
      cost: exactly(toCents(decimal(amount))),
      why: `as stated (materials.${group}.${id})`,
    }),
  )
}

function labour({ labour: stated }: Materials): BillLine[] {
  if (stated === undefined) return []
  const { hours, usd_per_hour: rate, usd: amount } = stated
  const line = { item: 'labour', name: 'Labour', group: 'labour' } as const
  if (amount !== undefined && hours === undefined && rate === undefined)
    return [amountLine({ ...line, cost: exactly(toCents(decimal(amount))), why: 'as stated (materials.labour.usd)' })]
  if (amount === undefined && hours !== undefined && rate !== undefined)
    return [
      amountLine({
        ...line,
        quantity: hours,
        unit: 'hour',
        packs: null,
        pack: null,
        leftOver: null,
        unitPrice: decimal(rate),
        cost: exactly(toCents(decimal(hours).times(decimal(rate)))),
        why: 'hours times rate (materials.labour)',
      }),
    ]
  throw new StageError(
    'materials.labour',
    'labour is stated by halves or twice',
    'State usd, or hours together with usd_per_hour.',
  )
}

const percentOf =
  (percent: number) =>
  (amount: Decimal): Decimal =>
    toCents(amount.times(decimal(percent)).div(100))

function margin({ margin_pct: percent }: Materials, lines: readonly BillLine[]): BillLine[] {
  if (percent === undefined || percent === 0) return []
  return [
    amountLine({
      item: 'margin',
      name: `Margin ${percent} %`,
      group: 'margin',
      cost: mapRange(costOf(lines), percentOf(percent)),
      why: `${percent} % of all lines above (materials.margin_pct)`,
    }),
  ]
}

function salesTax(materials: Materials, goods: readonly BillLine[], others: readonly BillLine[]): BillLine[] {
  const { sales_tax_pct: percent, sales_tax_on: parts = ['materials'] } = materials
  if (percent === undefined) return []
  const taxed = [
    ...(parts.includes('materials') ? goods.filter((line) => line.taxable) : []),
    ...others.filter((line) => (parts as readonly string[]).includes(line.group)),
  ]
  return [
    amountLine({
      item: 'sales-tax',
      name: `Sales tax ${percent} %`,
      group: 'tax',
      cost: mapRange(costOf(taxed), percentOf(percent)),
      why: `${percent} % of ${parts.join(', ')} (materials.sales_tax_pct, materials.sales_tax_on)`,
    }),
  ]
}
