import type { LineValues } from './pricing/bill-line.js'

const OTHER = new Set(['freight', 'rentals', 'fees', 'labour', 'margin', 'tax'])
const PACKS: Readonly<Record<string, string>> = { each: 'each', stick: 'stick', ft: 'foot' }

/** What a price list needs of a line of a bill. */
type Priced = Pick<LineValues, 'item' | 'name' | 'group' | 'quantity' | 'unit'>

/** A price list of all items of a bill, with room for the prices. */
export function blankPriceList(values: { readonly lines: readonly Priced[] }): string {
  const lines = values.lines.filter((line) => !OTHER.has(line.group))
  const width = Math.max(0, ...lines.map((line) => line.item.length)) + 1
  return [
    '# yaml-language-server: $schema=../schemas/price-list.schema.json',
    '# Fill in usd. Packs: each, stick, box (holds: pieces), spool (holds: feet), foot.',
    'format: gablewatt-prices/1',
    'supplier: Name of the supplier',
    '# valid_until: 2026-12-31',
    'items:',
    ...lines.map((line) => {
      const key = `${line.item}:`.padEnd(width)
      return `  ${key} { pack: ${PACKS[line.unit] ?? 'each'} }  # usd: ?  ${line.name.replaceAll(/\s+/g, ' ')}, ${line.quantity} ${line.unit}`
    }),
    '',
  ].join('\n')
}
