import type { PriceItem, PricePack } from '../price-list/price-list-types.generated.js'
import type { Unit } from '../take-off/need.js'
import { decimal, toCents } from '../../values/decimal/index.js'
import type { UsdRange } from '../exact.js'

/** Whole packs that reach a quantity. */
export interface PackChoice {
  readonly pack: PricePack
  readonly holds: number
  readonly packs: number
  /** Units beyond the quantity. */
  readonly leftOver: number
  /** Of one pack; undefined when its price is missing. */
  readonly price: UsdRange | undefined
  /** Of all packs, to the cent. */
  readonly cost: UsdRange | undefined
}

/** Kinds of pack in which a unit can be sold. */
const FITS: Readonly<Record<Unit, readonly PricePack['pack'][]>> = {
  each: ['each', 'box'],
  stick: ['stick', 'each', 'box'],
  ft: ['foot', 'spool'],
}

/**
 * The cheapest way to a quantity with whole packs of one kind; at equal cost the one that leaves less over. A price that is
 * a range counts by its high end.
 *
 * @returns undefined when no pack is sold in this unit.
 */
export function choosePack(quantity: number, unit: Unit, item: PriceItem): PackChoice | undefined {
  const choices = [item, ...(item.also_sold_as ?? [])]
    .filter((pack) => FITS[unit].includes(pack.pack))
    .map((pack) => packsFor(quantity, pack))
  if (choices.length === 0) return undefined
  return choices.reduce((a, b) => (isBetter(b, a) ? b : a))
}

function packsFor(quantity: number, pack: PricePack): PackChoice {
  const holds = pack.holds ?? 1
  const packs = Math.ceil(quantity / holds - 1e-9)
  const price = priceOf(pack)
  const cost =
    price === undefined
      ? undefined
      : { low: toCents(price.low.times(packs)), high: price.high === null ? null : toCents(price.high.times(packs)) }
  return { pack, holds, packs, leftOver: packs * holds - quantity, price, cost }
}

function priceOf(pack: PricePack): UsdRange | undefined {
  const { usd: exact, usd_low: low, usd_high: high } = pack
  if (exact !== undefined) return { low: decimal(exact), high: decimal(exact) }
  return low === undefined || high === undefined ? undefined : { low: decimal(low), high: decimal(high) }
}

function isBetter(a: PackChoice, b: PackChoice): boolean {
  const [costA, costB] = [a.cost?.high, b.cost?.high]
  if (costA == null || costB == null) return costA != null
  return costA.lt(costB) || (costA.eq(costB) && a.leftOver < b.leftOver)
}

/** `spool of 500 ft`, `box of 10`, `stick`. */
export function packText({ pack, holds }: PackChoice, unit: Unit): string {
  if (pack.pack === 'foot') return 'foot'
  return holds === 1 ? pack.pack : `${pack.pack} of ${decimal(holds).toFixed()}${unit === 'ft' ? ' ft' : ''}`
}
