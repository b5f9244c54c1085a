import type { StorageSizesValues } from '../../money/index.js'
import type { Cell, Section } from '../../report/index.js'

/** Modules by storage units: what each pair is worth, and when it is paid back. */
export function storageSizeSections({ rows, best }: StorageSizesValues): Section[] {
  const units = [...new Set(rows.map((row) => row.units))]
  const modules = [...new Set(rows.map((row) => row.modules))]
  const table = (
    heading: string,
    cell: (row: StorageSizesValues['rows'][number]) => Cell,
    decimals: number,
  ): Section => ({
    kind: 'table',
    heading,
    columns: [
      { heading: 'Modules' },
      ...units.map((count) => ({ heading: unitWords(count), decimals, align: 'right' as const })),
    ],
    rows: modules.map((size) => [
      size,
      ...units.map((count): Cell => {
        const row = rows.find((one) => one.modules === size && one.units === count)
        return row === undefined ? '' : cell(row)
      }),
    ]),
  })
  return [
    table('Net present value with storage, USD', (row) => row.npv_usd, 0),
    table('Payback with storage, years', (row) => row.payback_years ?? 'none', 1),
    {
      kind: 'paragraph',
      text:
        best === null
          ? 'No pair has a net present value above zero.'
          : `Best net present value of all: ${String(best.modules)} modules with ${unitWords(best.units)}.`,
    },
  ]
}

function unitWords(units: number): string {
  return units === 0 ? 'no storage' : units === 1 ? '1 unit' : `${String(units)} units`
}
