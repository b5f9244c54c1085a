import type { PartsValues } from '../../house/index.js'
import type { Section, TableData } from '../../report/index.js'

const RANKED: Readonly<Record<PartsValues['by'], string>> = {
  npv: 'the highest net present value first',
  payback: 'the shortest payback first',
  energy: 'the most energy first',
  price: 'the lowest price first',
}

/** @param own Ids of the equipment that the project has, which are marked. */
export function partsSections(values: PartsValues, own: ReadonlySet<string>): Section[] {
  const { options, dropped, combinations, break_even: breakEven } = values
  return [
    {
      kind: 'facts',
      facts: [
        { label: 'Combinations', value: combinations },
        { label: 'Of these hold', value: options.length },
        { label: 'Priced with the list of', value: values.supplier },
        { label: 'Ranked', value: RANKED[values.by] },
        { label: 'Money', value: values.money ?? 'none' },
      ],
    },
    ...(options.length === 0
      ? []
      : [
          {
            kind: 'table' as const,
            heading: 'What holds (* = of the project as it stands)',
            ...partsTable(values, 'text', own),
          },
          {
            kind: 'paragraph' as const,
            text: 'The price is that of the bill of materials before incentives; warnings of each are told by the stages of that project.',
          },
        ]),
    ...(breakEven.length === 0
      ? []
      : [
          {
            kind: 'list' as const,
            heading: 'What the next one would have to cost',
            items: breakEven.map(({ says }) => says),
          },
        ]),
    ...(dropped.length === 0 ? [] : [droppedTable(values)]),
  ]
}

/** The options, for a screen of 80 columns or with all that a script wants. */
export function partsTable(
  { options }: PartsValues,
  which: 'text' | 'all',
  own: ReadonlySet<string> = new Set(),
): TableData {
  const marked = (id: string | null): string => (id === null ? 'own' : own.has(id) ? `${id}*` : id)
  const withStores = options.some((one) => one.storage_units !== null)
  if (which === 'text') {
    return {
      columns: [
        { heading: '#' },
        { heading: 'Module' },
        { heading: 'Inverter' },
        { heading: 'Count' },
        ...(withStores ? [{ heading: 'Storage' }] : []),
        { heading: 'Price', unit: 'USD' },
        { heading: 'Year 1', unit: 'kWh' },
        { heading: 'Payback', unit: 'years', decimals: 1 },
        { heading: 'NPV', unit: 'USD' },
      ],
      rows: options.map((one) => [
        one.place,
        marked(one.module),
        marked(one.inverter),
        one.modules,
        ...(withStores ? [storeOf(one, own)] : []),
        one.price_usd,
        one.first_year_kwh,
        one.payback_years ?? 'never',
        one.npv_usd,
      ]),
    }
  }
  return {
    columns: [
      { heading: 'Place' },
      { heading: 'Module' },
      { heading: 'Inverter' },
      { heading: 'Storage' },
      { heading: 'Storage units' },
      { heading: 'Modules' },
      { heading: 'Power', unit: 'W' },
      { heading: 'Price', unit: 'USD', decimals: 2 },
      { heading: 'Output', unit: 'kWh' },
      { heading: 'Saved in year 1', unit: 'USD', decimals: 2 },
      { heading: 'Payback', unit: 'years', decimals: 2 },
      { heading: 'NPV', unit: 'USD', decimals: 2 },
      { heading: 'Warnings' },
    ],
    rows: options.map((one) => [
      one.place,
      one.module,
      one.inverter,
      one.storage,
      one.storage_units,
      one.modules,
      one.power_w,
      one.price_usd,
      one.first_year_kwh,
      one.first_year_savings_usd,
      one.payback_years,
      one.npv_usd,
      one.warnings,
    ]),
  }
}

/** Units of storage in words: `2 x battery10`. */
function storeOf(
  { storage, storage_units: units }: Pick<PartsValues['dropped'][number], 'storage' | 'storage_units'>,
  own: ReadonlySet<string> = new Set(),
): string {
  if (units === null) return 'own'
  return units === 0 || storage === null ? 'none' : `${String(units)} x ${storage}${own.has(storage) ? '*' : ''}`
}

function droppedTable({ dropped }: PartsValues): Section {
  const withStores = dropped.some((one) => one.storage_units !== null)
  return {
    kind: 'table',
    heading: 'What does not hold, and why',
    columns: [
      { heading: 'Module' },
      { heading: 'Inverter' },
      { heading: 'Size' },
      ...(withStores ? [{ heading: 'Storage' }] : []),
      { heading: 'First reason' },
    ],
    rows: dropped.map(({ module, inverter, size, reasons, ...store }) => {
      const [first] = reasons
      const more = reasons.length > 1 ? ` (and ${String(reasons.length - 1)} more)` : ''
      return [
        module,
        inverter ?? 'own',
        size ?? 'own',
        ...(withStores ? [storeOf(store)] : []),
        first === undefined ? '' : `${first.message} [${first.id}]${more}`,
      ]
    }),
  }
}
