import type { WatchedOutcome } from '../../fleet/index.js'
import { watchHtml } from '../../papers/index.js'
import { signWords } from './watch-sections.js'

const number = (value: number | null, decimals: number): string => (value === null ? '-' : value.toFixed(decimals))

/** The fleet as one page, what costs most first. */
export function watchPage(outcomes: readonly WatchedOutcome[]): string {
  const lines = outcomes.map(({ line }) => line)
  const lost = lines.reduce((sum, { lost_usd_per_month: usd }) => sum + (usd ?? 0), 0)
  const failed = lines.filter(({ status }) => status !== 'ok').length
  return watchHtml({
    title: `Production of ${lines.length} house${lines.length === 1 ? '' : 's'}`,
    below: `${failed} want${failed === 1 ? 's' : ''} a look; together they lose about ${lost.toFixed(0)} USD a month (where the tariff is known)`,
    columns: [
      'House',
      'Status',
      'Readings to',
      'Output, %',
      'Range, %',
      'Signs',
      'Lost a month, kWh',
      'Lost a month, USD',
    ],
    rows: lines.map((line) => [
      line.house,
      line.status,
      line.to ?? '-',
      number(line.performance_pct, 0),
      line.performance_pct === null
        ? '-'
        : `${number(line.performance_low_pct, 0)} to ${number(line.performance_high_pct, 0)}`,
      signWords(line.signs) || '-',
      number(line.lost_kwh_per_month, 0),
      number(line.lost_usd_per_month, 2),
    ]),
    details: lines.flatMap((line) => [
      ...line.messages.map((message) => `${line.house}: ${message}`),
      ...line.signs.map((sign) => `${line.house}, ${sign.from} to ${sign.to}, ${sign.where}: ${sign.look_at}`),
    ]),
  })
}
