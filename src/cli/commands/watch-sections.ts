import type { WatchedOutcome } from '../../fleet/index.js'
import type { TableData } from '../../report/index.js'
import { SIGN_NAMES } from './sign-section.js'

/** One row a house. */
export function watchTable(outcomes: readonly WatchedOutcome[]): TableData {
  return {
    columns: [
      { heading: 'House' },
      { heading: 'Status' },
      { heading: 'To' },
      { heading: 'Output', unit: '%' },
      { heading: 'Signs' },
      { heading: 'Lost a month', unit: 'kWh' },
      { heading: 'Lost a month', unit: 'USD', decimals: 2 },
    ],
    rows: outcomes.map(({ line }) => [
      line.house,
      line.status,
      line.to,
      line.performance_pct,
      signWords(line.signs),
      line.lost_kwh_per_month,
      line.lost_usd_per_month,
    ]),
  }
}

/** Kinds of the signs, each once, with its chance. */
export function signWords(signs: WatchedOutcome['line']['signs']): string {
  const best = new Map<string, number>()
  for (const { kind, probability } of signs)
    best.set(SIGN_NAMES[kind], Math.max(probability, best.get(SIGN_NAMES[kind]) ?? 0))
  return [...best].map(([name, probability]) => `${name} ${(100 * probability).toFixed(0)} %`).join(', ')
}
