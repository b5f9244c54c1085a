import { kwhDecimal } from '../exact/index.js'
import type { EnergyPrices } from '../tariff/index.js'
import type { BillLines } from './bill-lines.js'
import { thresholdKwh } from './threshold.js'

/** What a season's share of a bill is billed for, by period, millionths of a kWh. */
interface PeriodUse {
  readonly season: string
  readonly billed: Float64Array
  readonly days: number
  readonly billDays: number
}

/**
 * Tiers by period. Shared ones count the kWh of all periods, and each period has of a tier what it has of them; others
 * count each period by itself.
 */
export function addPeriodTiers(
  lines: BillLines,
  periods: readonly string[],
  prices: Extract<EnergyPrices, { kind: 'period tiers' }>,
  use: PeriodUse,
): void {
  const all = use.billed.reduce((a, b) => a + b, 0)
  for (const [p, ladder] of prices.ladders.entries()) {
    const own = use.billed[p] ?? 0
    const counted = prices.shared ? all : own
    const period = periods[p] ?? ''
    let below = 0
    for (const [t, { upTo, usdPerKwh }] of ladder.entries()) {
      const end = upTo === undefined ? Infinity : thresholdKwh(upTo, use.days, use.billDays).toNumber() * 1e6
      const upToOwn = end >= counted ? own : Math.round((own * end) / counted)
      const tier = ladder.length === 1 ? '' : `tier_${String(t + 1)}`
      lines.add({
        id: ['energy', use.season, period, tier].filter((part) => part !== '').join('.'),
        group: 'energy',
        says: `energy ${use.season}, ${period}${tier === '' ? '' : `, tier ${String(t + 1)}`}`,
        quantity: kwhDecimal(upToOwn - below),
        unit: 'kWh',
        price: usdPerKwh,
      })
      below = upToOwn
      if (end >= counted) break
    }
  }
}
