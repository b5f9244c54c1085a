import type { BillComparison, BomValues, CutListEntry, TotalValues } from '../../materials/index.js'
import type { Cell, Fact, Section } from '../../report/index.js'

/** The bill for people: totals first, then every line, its reasons, and the cuts. */
export function billSections(values: BomValues): Section[] {
  return [
    { kind: 'facts', facts: totalFacts(values) },
    {
      kind: 'table',
      heading: 'What to buy',
      columns: [
        { heading: 'Item' },
        { heading: 'What' },
        { heading: 'Needed' },
        { heading: 'Buy' },
        { heading: 'Price', unit: 'USD', decimals: 2 },
        { heading: 'Cost', unit: 'USD', decimals: 2 },
      ],
      rows: values.lines.map((line) => [
        line.item,
        line.name,
        neededText(line),
        buyText(line),
        line.unit_price_usd,
        costCell(line.cost_usd),
      ]),
      total: ['', values.complete ? 'Total' : 'Total, at least', '', '', null, totalCell(values)],
    },
    ...cutSections(values),
    {
      kind: 'list',
      heading: 'Where the quantities come from',
      items: values.lines.map((line) => `${line.item}: ${line.why}`),
    },
  ]
}

function neededText({ quantity, unit }: BomValues['lines'][number]): string {
  if (unit === 'each') return String(quantity)
  return unit === 'ft' || quantity === 1 ? `${quantity} ${unit}` : `${quantity} ${unit}s`
}

/** `2 x box of 10`; what comes with another item is not bought. */
function buyText({ packs, pack }: BomValues['lines'][number]): string {
  if (packs === 0) return 'comes along'
  if (packs === null || pack === null) return ''
  if (pack === 'each') return String(packs)
  if (pack === 'foot') return `${packs} ft`
  return pack === 'stick' ? `${packs} stick${packs === 1 ? '' : 's'}` : `${packs} x ${pack}`
}

const costCell = (cost: number | null): Cell => (cost === null ? { value: 'no price', tone: 'warn' } : cost)

const totalCell = (values: BomValues): Cell => values.totals.gross_usd ?? values.totals_at_least.gross_usd

const LABELS: readonly (readonly [key: keyof TotalValues, label: string])[] = [
  ['materials_usd', 'Materials'],
  ['freight_usd', 'Freight'],
  ['rentals_usd', 'Rentals'],
  ['fees_usd', 'Fees'],
  ['labour_usd', 'Labour'],
  ['margin_usd', 'Margin'],
  ['tax_usd', 'Sales tax'],
  ['gross_usd', 'Cost before incentives'],
  ['incentives_usd', 'Incentives at purchase'],
  ['net_usd', 'Cost after incentives'],
]

function totalFacts(values: BomValues): Fact[] {
  const { totals, totals_at_least: least } = values
  if (values.supplier === null) return [{ label: 'Supplier', value: 'none, so nothing has a price' }]
  const facts = LABELS.filter(
    ([key]) => key.endsWith('gross_usd') || key === 'net_usd' || least[key] !== 0 || totals[key] !== 0,
  )
  return [
    { label: 'Supplier', value: values.supplier ?? 'none' },
    ...facts.map(([key, label]): Fact => ({ label, ...amount(totals[key], least[key]), unit: 'USD', decimals: 2 })),
    {
      label: 'Before incentives, per watt of DC rating',
      ...amount(totals.usd_per_w, least.usd_per_w),
      unit: 'USD/W',
      decimals: 2,
    },
  ]
}

/** One amount, a range, or a lower bound. */
function amount(most: number | null, least: number | null): { value: Cell } {
  if (most === null)
    return { value: least === null ? 'unknown' : { value: `at least ${least.toFixed(2)}`, tone: 'warn' } }
  if (least !== null && Math.abs(most - least) >= 0.005) return { value: `${least.toFixed(2)} to ${most.toFixed(2)}` }
  return { value: most }
}

function cutSections(values: BomValues): Section[] {
  if (values.cut_list.length === 0) return []
  const alike = new Map<string, { entry: CutListEntry; count: number }>()
  for (const entry of values.cut_list) {
    const key = `${entry.item} ${entry.cuts.map((cut) => `${cut.for} ${cut.length_in}`).join()}`
    const before = alike.get(key)
    alike.set(key, { entry, count: (before?.count ?? 0) + 1 })
  }
  return [
    {
      kind: 'table',
      heading: 'Cut list',
      columns: [
        { heading: 'Stick' },
        { heading: 'Sticks' },
        { heading: 'Stock', unit: 'in', decimals: 1 },
        { heading: 'Cuts' },
        { heading: 'Off-cut', unit: 'in', decimals: 2 },
      ],
      rows: [...alike.values()].map(({ entry, count }) => [
        entry.item,
        count,
        entry.stock_in,
        entry.cuts.map((cut) => `${cut.length_in.toFixed(2)} ${cut.for}`).join(' | '),
        entry.offcut_in,
      ]),
    },
    {
      kind: 'list',
      items: values.cut_summaries.map(
        (cut) =>
          `${cut.material}: ${cut.sticks} sticks, ${((100 * cut.pieces_in) / cut.stock_in).toFixed(1)} % used; ${cut.proven ? 'no cheaper way exists' : 'best way found'} (chosen by ${cut.by_price ? 'price' : 'length'}, kerf ${cut.kerf_in} in)`,
      ),
    },
  ]
}

/** Two suppliers side by side. */
export function comparisonTable(comparison: BillComparison): Section[] {
  const { first, second } = comparison
  return [
    {
      kind: 'table',
      heading: `${first} against ${second}`,
      columns: [
        { heading: 'Item' },
        { heading: first, unit: 'USD', decimals: 2 },
        { heading: second, unit: 'USD', decimals: 2 },
        { heading: 'Difference', unit: 'USD', decimals: 2 },
        { heading: 'Cheaper' },
      ],
      rows: comparison.lines.map((line) => [
        line.item,
        costCell(line.cost_first_usd),
        costCell(line.cost_second_usd),
        line.difference_usd,
        line.cheaper === null || line.cheaper === 'equal'
          ? (line.cheaper ?? '')
          : line.cheaper === 'first'
            ? first
            : second,
      ]),
      total: ['Total', comparison.gross_first_usd, comparison.gross_second_usd, comparison.difference_usd, ''],
    },
    {
      kind: 'facts',
      facts: [
        {
          label: 'Goods, each item where it is cheaper',
          value: comparison.goods_at_the_cheaper_usd ?? 'unknown, as an item has no price in either list',
          unit: 'USD',
          decimals: 2,
        },
      ],
    },
  ]
}
