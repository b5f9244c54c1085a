import type { TotalNeed } from '../take-off/need.js'
import { wholeUnits } from '../take-off/need.js'
import type { BillLine } from './bill-line.js'
import { choosePack, packText, type PackChoice } from './choose-pack.js'
import type { PriceBook } from '../price-list/price-book.js'
import { ZERO } from '../../values/decimal/index.js'
import { NOTHING, type UsdRange } from '../exact.js'

const UNKNOWN: UsdRange = { low: ZERO, high: null }

/** Goods with their prices, and what has to be told about them. */
export interface PricedGoods {
  readonly lines: readonly BillLine[]
  /** Items without a price. */
  readonly missing: readonly string[]
  /** Items whose price is only a range. */
  readonly ranges: readonly string[]
  /** Items that are sold in a pack that does not fit their unit. */
  readonly misfits: readonly { readonly id: string; readonly message: string }[]
  /** Entries that were used, with the last day of their price. */
  readonly used: readonly { readonly id: string; readonly validUntil: string | undefined }[]
}

/** Buys every need in whole packs. What comes with another item is not bought again. */
export function priceGoods(needs: readonly TotalNeed[], prices: PriceBook | undefined): PricedGoods {
  const credits = creditsOf(needs, prices)
  const [missing, ranges, used]: [string[], string[], { id: string; validUntil: string | undefined }[]] = [[], [], []]
  const misfits: { id: string; message: string }[] = []
  const lines = needs.map((need): BillLine => {
    const why = whyText(need)
    const credit = credits.get(need.item) ?? { quantity: 0, from: [] }
    const toBuy = Math.max(0, wholeUnits(need.quantity - credit.quantity))
    const comes = credit.quantity > 0 ? `; ${need.quantity - toBuy} come with ${credit.from.join(', ')}` : ''
    const named = (name: string): string => (need.must === undefined ? name : `${name}, ${need.must}`)
    const base = { ...need, name: named(need.name), why: why + comes, part: null, taxable: true }
    const found = prices?.find(need.item, need.general)
    if (toBuy === 0) return { ...lineOf(base), packs: 0, pack: null, leftOver: 0, unitPrice: ZERO, cost: NOTHING }
    if (found === undefined) {
      missing.push(need.item)
      return { ...lineOf(base), packs: null, pack: null, leftOver: null, unitPrice: null, cost: UNKNOWN }
    }
    const { id, entry } = found
    const choice = choosePack(toBuy, need.unit, entry)
    if (choice === undefined) {
      missing.push(need.item)
      misfits.push({ id, message: `${id} is sold by '${entry.pack}', but is needed by '${need.unit}'` })
      return { ...lineOf(base), packs: null, pack: null, leftOver: null, unitPrice: null, cost: UNKNOWN }
    }
    used.push({ id, validUntil: choice.pack.valid_until ?? entry.valid_until ?? prices?.list.valid_until })
    if (choice.cost === undefined) missing.push(need.item)
    else if (choice.cost.high !== null && choice.cost.low.lt(choice.cost.high)) ranges.push(need.item)
    return {
      // The name of a general entry does not say which of its kinds this is.
      ...lineOf({ ...base, name: named(id === need.item ? (entry.name ?? need.name) : need.name) }),
      packs: choice.packs,
      pack: packText(choice, need.unit),
      leftOver: choice.leftOver,
      unitPrice: choice.price?.high ?? null,
      cost: choice.cost ?? UNKNOWN,
      part: choice.pack.part ?? entry.part ?? null,
      taxable: entry.taxable ?? true,
    }
  })
  return { lines, missing, ranges, misfits, used }
}

function lineOf(
  need: Pick<TotalNeed, 'item' | 'name' | 'group' | 'quantity' | 'unit'> & Pick<BillLine, 'why' | 'part' | 'taxable'>,
): Pick<BillLine, 'item' | 'name' | 'group' | 'quantity' | 'unit' | 'why' | 'part' | 'taxable'> {
  const { item, name, group, quantity, unit, why, part, taxable } = need
  return { item, name, group, quantity, unit, why, part, taxable }
}

/** All reasons; of many alike the first ones, as the worksheet has them all. */
export function whyText(need: TotalNeed, most = 6): string {
  const whys = need.parts.map((part) => part.why)
  const more = whys.length - most
  const text = more > 1 ? [...whys.slice(0, most), `and ${more} more like these`].join('; ') : whys.join('; ')
  return need.sparePct > 0 ? `${text}; with ${need.sparePct} % spares` : text
}

interface Credit {
  readonly quantity: number
  readonly from: readonly string[]
}

/** What comes with the items that are bought. */
function creditsOf(needs: readonly TotalNeed[], prices: PriceBook | undefined): Map<string, Credit> {
  const credits = new Map<string, Credit>()
  for (const need of needs) {
    const found = prices?.find(need.item, need.general)
    if (found?.entry.includes === undefined) continue
    const choice: PackChoice | undefined = choosePack(need.quantity, need.unit, found.entry)
    if (choice === undefined) continue
    for (const [item, each] of Object.entries(found.entry.includes)) {
      const before = credits.get(item)
      credits.set(item, {
        quantity: (before?.quantity ?? 0) + each * choice.packs * choice.holds,
        from: [...(before?.from ?? []), found.id],
      })
    }
  }
  return credits
}
