import type { PriceItem, PriceList } from './price-list-types.generated.js'
import { own } from '../../values/index.js'

/** A price list that is asked for items. */
export interface PriceBook {
  readonly list: PriceList
  /** The entry of an item, or that of its general id, with the id it was found under. */
  readonly find: (item: string, general?: string) => { readonly id: string; readonly entry: PriceItem } | undefined
}

export function priceBook(list: PriceList): PriceBook {
  return {
    list,
    find: (item, general) => {
      for (const id of [item, general]) {
        const entry = own(list.items, id)
        if (id !== undefined && entry !== undefined) return { id, entry }
      }
      return undefined
    },
  }
}
