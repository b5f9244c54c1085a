import type { TableData } from '../report/index.js'
import type { BomValues } from './price-bom.js'

/** What goes to the shop: goods only, with the supplier's own text. */
export function shoppingList(values: BomValues): TableData {
  return {
    columns: [
      { heading: 'Group', key: 'group' },
      { heading: 'Item', key: 'item' },
      { heading: 'Name', key: 'name' },
      { heading: 'Part', key: 'part' },
      { heading: 'Quantity', key: 'quantity' },
      { heading: 'Unit', key: 'unit' },
      { heading: 'Packs', key: 'packs' },
      { heading: 'Pack', key: 'pack' },
      { heading: 'Price', key: 'unit_price_usd', decimals: 2 },
      { heading: 'Cost', key: 'cost_usd', decimals: 2 },
      { heading: 'Why', key: 'why' },
    ],
    rows: values.lines
      .filter((line) => !NOT_BOUGHT.has(line.group))
      .map((line) => [
        line.group,
        line.item,
        line.name,
        line.part,
        line.quantity,
        line.unit,
        line.packs,
        line.pack,
        line.unit_price_usd,
        line.cost_usd,
        line.why,
      ]),
  }
}

const NOT_BOUGHT = new Set(['freight', 'rentals', 'fees', 'labour', 'margin', 'tax'])
