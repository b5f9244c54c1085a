import type { LayoutValue } from '../../house/index.js'
import type { Cell, Section } from '../../report/index.js'

/** The layouts of fitted arrays beside each other. */
export function layoutSections(layouts: readonly LayoutValue[]): Section[] {
  if (layouts.length === 0) return []
  return [
    {
      kind: 'table',
      heading:
        'Layouts of fitted arrays, the chosen one first (energy by modules and their power alone, cost without wiring)',
      columns: [
        { heading: 'Array', key: 'array' },
        { heading: 'Rows', key: 'orientation' },
        { heading: 'Modules', key: 'modules' },
        { heading: 'Energy', unit: '%', decimals: 0, key: 'energy_pct' },
        { heading: 'Mounts', key: 'mounts' },
        { heading: 'Rails', key: 'rails' },
        { heading: 'Rail', unit: 'ft', decimals: 1, key: 'rail_ft' },
        { heading: 'Ratio', decimals: 2, key: 'highest_ratio' },
        { heading: 'Cost', unit: 'USD', decimals: 2, key: 'cost_usd' },
      ],
      rows: layouts.map((layout): Cell[] => [
        layout.chosen ? `${layout.array} (chosen)` : layout.array,
        layout.orientation,
        layout.modules,
        layout.energy_pct,
        layout.mounts ?? 'refused',
        layout.rails,
        layout.rail_ft,
        layout.highest_ratio === null
          ? null
          : { value: layout.highest_ratio, tone: layout.highest_ratio > 1 ? 'bad' : 'good' },
        layout.cost_usd ?? 'not priced',
      ]),
    },
  ]
}
