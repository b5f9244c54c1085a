import type { Source, Worksheet } from '../worksheet/index.js'
import type { BillTotals } from './pricing/bill-totals.js'
import type { TotalNeed } from './take-off/need.js'
import type { Watts } from '../values/index.js'
import { toNumber } from './exact.js'

const COUNTED: Source = { document: 'Counted from the results of this project', standing: 'project file' }

/** Every quantity with all the parts that it is the sum of. */
export function recordNeeds(needs: readonly TotalNeed[], worksheet: Worksheet): void {
  for (const need of needs) {
    worksheet.step({
      id: `materials.${need.item}.${need.unit}`,
      says: `${need.name}: quantity, rounded up to whole units`,
      formula: need.sparePct > 0 ? 'sum of the parts (1 + spares / 100)' : 'sum of the parts',
      inputs: [
        ...need.parts.map((part, i) => ({
          symbol: `q${i + 1}`,
          value: part.quantity,
          unit: need.unit,
          from: part.why,
        })),
        ...(need.sparePct > 0
          ? [{ symbol: 'spares', value: need.sparePct, unit: '%', from: `materials.spares_pct.${need.group}` }]
          : []),
      ],
      result: { symbol: 'q', value: need.quantity, unit: need.unit },
      source: COUNTED,
    })
  }
}

/** The totals; what has no upper end is told as a lower bound. */
export function recordTotals(totals: BillTotals, ratingW: Watts, worksheet: Worksheet): void {
  const open = totals.gross.high === null
  const end = open ? totals.atLeast : totals.atMost
  const parts = Object.entries(end).filter(
    ([key]) => !['gross_usd', 'incentives_usd', 'net_usd', 'usd_per_w'].includes(key),
  )
  worksheet.step({
    id: 'materials.gross',
    says: open ? 'Cost before incentives, at least: prices are missing' : 'Cost before incentives',
    formula: 'sum of all lines, each to the cent',
    inputs: parts.map(([key, value]) => ({
      symbol: key.replace('_usd', ''),
      value: (value as number | null) ?? 0,
      unit: 'USD',
      from: 'lines of the bill',
    })),
    result: { symbol: 'gross', value: toNumber(totals.gross.high ?? totals.gross.low), unit: 'USD' },
    source: COUNTED,
  })
  worksheet.step({
    id: 'materials.net',
    says: open
      ? 'Cost after the incentives that are paid at purchase, at least'
      : 'Cost after the incentives that are paid at purchase',
    formula: 'net = gross - incentives',
    inputs: [
      { symbol: 'gross', value: end.gross_usd ?? 0, unit: 'USD', from: 'materials.gross' },
      { symbol: 'incentives', value: end.incentives_usd ?? 0, unit: 'USD', from: 'incentives' },
      { symbol: 'rating', value: ratingW, unit: 'W', from: 'arrays' },
    ],
    result: { symbol: 'net', value: end.net_usd ?? 0, unit: 'USD' },
    source: COUNTED,
  })
}
