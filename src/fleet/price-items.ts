import type { House } from '../house/index.js'
import { blankPriceList, priceBom } from '../materials/index.js'
import { roundForMachines } from '../report/index.js'
import type { FleetItem, FleetOutcome } from './types.js'

/** Name of the price list of a whole fleet, in its output folder. */
export const PRICE_LIST_FILE = 'price-list.yaml'

/**
 * What a house needs bought, whatever its own price list says.
 *
 * @throws StageError when it cannot be known.
 */
export async function itemsOf(house: House): Promise<FleetItem[]> {
  const { values } = priceBom(await house.takeOff())
  return values.lines.map(({ item, name, group, quantity, unit }) => ({ item, name, group, quantity, unit }))
}

/** The items of all houses of a fleet, each once, with what all of them need together. */
export class FleetItems {
  houses = 0
  readonly #items = new Map<string, FleetItem>()

  add({ items }: FleetOutcome): void {
    if (items === undefined) return
    this.houses += 1
    for (const one of items) {
      // An item that is bought by another measure is another item to whoever fills in prices.
      const key = `${one.item}\n${one.unit}`
      const before = this.#items.get(key)
      const quantity = roundForMachines((before?.quantity ?? 0) + one.quantity)
      this.#items.set(key, { ...(before ?? one), quantity })
    }
  }

  get count(): number {
    return this.#items.size
  }

  /** A price list to fill in, sorted by item within a group, the groups in the order of a bill. */
  text(): string {
    const lines = [...this.#items.values()]
    const groups = [...new Set(lines.map(({ group }) => group))]
    const rank = ({ group, item }: FleetItem): string => `${String(groups.indexOf(group)).padStart(3, '0')} ${item}`
    return blankPriceList({ lines: lines.toSorted((a, b) => (rank(a) < rank(b) ? -1 : 1)) })
  }
}
