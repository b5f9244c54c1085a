import type { Percent } from '../../values/index.js'

/** Groups of a bill, in the order in which it is printed. */
export const GOODS_GROUPS = [
  'modules',
  'inverters',
  'trunk',
  'racking',
  'roof',
  'grounding',
  'wire',
  'raceway',
  'connection',
  'labels',
  'extra',
  'tools',
] as const
export type GoodsGroup = (typeof GOODS_GROUPS)[number]

export type Unit = 'each' | 'ft' | 'stick'

/** Something that the design needs. */
export interface Need {
  /** Id that a price list uses: `wire.thwn-2.10.copper.black`. */
  readonly item: string
  /** Id under which it may be priced when its own is not in the list: `wire.thwn-2.10.copper`. */
  readonly general?: string
  readonly name: string
  /** What the goods have to be, whatever the price list calls them: `reflective`. */
  readonly must?: string
  readonly group: GoodsGroup
  readonly unit: Unit
  /** May have a fraction; whole units are made of the sum. */
  readonly quantity: number
  /** One clause that names the result it comes from: `one at each of 24 mounts (mounts: values.mounts)`. */
  readonly why: string
  /** Whether spares are added; not where the quantity is already the answer of a cut list. */
  readonly noSpares?: true
}

/** A need with all its reasons, rounded up to whole units. */
export interface TotalNeed extends Omit<Need, 'quantity' | 'why'> {
  readonly quantity: number
  /** Every part of the quantity with its reason. */
  readonly parts: readonly { readonly quantity: number; readonly why: string }[]
  readonly sparePct: Percent
}

/** Rounds up to whole units; a rest that is only noise of floating point is none. */
export const wholeUnits = (quantity: number): number => Math.ceil(quantity - 1e-9)

/**
 * Puts the same items of different places together, adds spares, and rounds up.
 *
 * @param sparesPct Extra quantity by group, percent.
 */
export function totalNeeds(needs: readonly Need[], sparesPct: Partial<Record<GoodsGroup, number>>): TotalNeed[] {
  const byItem = new Map<string, Need[]>()
  for (const need of needs) {
    const key = `${need.item} ${need.unit}`
    if (need.quantity > 0) byItem.set(key, [...(byItem.get(key) ?? []), need])
  }
  const totals = [...byItem.values()].flatMap((same): TotalNeed[] => {
    const [first] = same
    if (first === undefined) return []
    const { quantity: _, why: __, ...item } = first
    const sparePct = first.noSpares === true ? 0 : (sparesPct[first.group] ?? 0)
    const sum = same.reduce((total, need) => total + need.quantity, 0)
    return [
      {
        ...item,
        quantity: wholeUnits(sum * (1 + sparePct / 100)),
        parts: same.map(({ quantity, why }) => ({ quantity, why })),
        sparePct,
      },
    ]
  })
  return GOODS_GROUPS.flatMap((group) => totals.filter((need) => need.group === group))
}
