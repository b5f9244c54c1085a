import { MONTHS } from '../../values/index.js'
import type { BillValues, SavingsValues } from '../../money/index.js'
import type { Cell, Section, TableData } from '../../report/index.js'

export interface BothBills {
  readonly month: number
  readonly without: BillValues
  readonly with: BillValues
  readonly saved_usd: number
}

interface BothLines {
  readonly says: string
  readonly unit: string
  readonly price: number
  without?: readonly [quantity: number, usd: number]
  with?: readonly [quantity: number, usd: number]
}

/** The lines of both bills, matched where name and price are the same. */
function matchLines(bills: BothBills): BothLines[] {
  const lines = new Map<string, BothLines>()
  for (const side of ['without', 'with'] as const) {
    for (const line of bills[side].lines) {
      const key = `${line.id} ${String(line.price_usd)}`
      const both = lines.get(key) ?? { says: line.says, unit: line.unit, price: line.price_usd ?? 0 }
      both[side] = [line.quantity, line.amount_usd]
      lines.set(key, both)
    }
  }
  return [...lines.values()]
}

/** A bill line by line, both ways. */
export function billTable(bills: BothBills): TableData {
  const rows = matchLines(bills).map((line): Cell[] => [
    line.says,
    line.unit,
    line.price,
    line.without?.[0] ?? null,
    line.with?.[0] ?? null,
    line.without?.[1] ?? null,
    line.with?.[1] ?? null,
    (line.without?.[1] ?? 0) - (line.with?.[1] ?? 0),
  ])
  return {
    columns: [
      { heading: 'Line' },
      { heading: 'Per' },
      { heading: 'Price', unit: 'USD', decimals: 4, key: 'price_usd' },
      { heading: 'Quantity without', decimals: 2, key: 'quantity_without' },
      { heading: 'Quantity with', decimals: 2, key: 'quantity_with' },
      { heading: 'Without', unit: 'USD', decimals: 2, key: 'without_usd' },
      { heading: 'With', unit: 'USD', decimals: 2, key: 'with_usd' },
      { heading: 'Saved', unit: 'USD', decimals: 2, key: 'saved_usd' },
    ],
    rows,
    total: ['Bill', null, null, null, null, bills.without.total_usd, bills.with.total_usd, bills.saved_usd],
  }
}

export function billSections(
  bills: BothBills,
  tariffs: { readonly without: string; readonly with: string },
): Section[] {
  const { without, with: after } = bills
  const earned = after.earned.map((line) => {
    const price = line.price_usd === undefined ? '' : ` at ${String(line.price_usd)} USD/${line.unit}`
    return `${line.says}: ${line.quantity.toFixed(2)} ${line.unit}${price} = ${line.amount_usd.toFixed(2)} USD`
  })
  const banked = [
    ...(after.bank_kwh === 0 ? [] : [`${after.bank_kwh.toFixed(2)} kWh stay in the bank after this bill`]),
    ...(after.bank_usd === 0 ? [] : [`${after.bank_usd.toFixed(2)} USD of credit stay in the bank after this bill`]),
  ]
  return [
    {
      kind: 'facts',
      facts: [
        { label: 'Month', value: MONTHS[bills.month - 1] ?? '' },
        { label: 'Days of the bill', value: without.days },
        { label: 'Tariff', value: tariffs.without },
        ...(tariffs.with === tariffs.without ? [] : [{ label: 'Tariff with the system', value: tariffs.with }]),
        { label: 'Use of the house', value: without.usage_kwh, unit: 'kWh', decimals: 1 },
        { label: 'Output of the system', value: after.generation_kwh, unit: 'kWh', decimals: 1 },
        { label: 'From the grid, with the system', value: after.import_kwh, unit: 'kWh', decimals: 1 },
        { label: 'To the grid', value: after.export_kwh, unit: 'kWh', decimals: 1 },
        { label: 'Saved', value: { value: bills.saved_usd, tone: 'strong' }, unit: 'USD', decimals: 2 },
      ],
    },
    { kind: 'table', heading: 'Line by line', ...billTable(bills) },
    ...(earned.length === 0 ? [] : [{ kind: 'list' as const, heading: 'Credit earned on this bill', items: earned }]),
    ...(banked.length === 0 ? [] : [{ kind: 'list' as const, items: banked }]),
  ]
}

/** The twelve bills of the first year. */
export function monthlyBillTable(values: SavingsValues): TableData {
  return {
    columns: [
      { heading: 'Month' },
      { heading: 'Use', unit: 'kWh' },
      { heading: 'Output', unit: 'kWh' },
      { heading: 'To the grid', unit: 'kWh' },
      { heading: 'Bill without', unit: 'USD', decimals: 2 },
      { heading: 'Bill with', unit: 'USD', decimals: 2 },
      { heading: 'Saved', unit: 'USD', decimals: 2 },
    ],
    rows: values.without.bills.map((bill, i) => {
      const after = values.with.bills[i]
      return [
        MONTHS[bill.month - 1] ?? '',
        bill.usage_kwh,
        after?.generation_kwh ?? null,
        after?.export_kwh ?? null,
        bill.total_usd,
        after?.total_usd ?? null,
        values.monthly_savings_usd[i] ?? null,
      ]
    }),
    total: [
      'Year',
      values.without.usage_kwh,
      values.with.generation_kwh,
      values.with.export_kwh,
      values.without.total_usd,
      values.with.total_usd,
      values.annual_savings_usd,
    ],
  }
}
