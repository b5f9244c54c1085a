import type { SizePicks, SizeRow } from './size-types.js'
import type { Percent } from '../../values/index.js'

/** A further kWh counts as expensive while it saves this share of the dearest one. */
const STILL_EXPENSIVE = 0.9

/** Picks sizes from evaluated rows in ascending order. */
export function pickSizes(sizes: readonly SizeRow[], wishedSharePct: Percent | undefined): SizePicks {
  const best = sizes.reduce<SizeRow | undefined>(
    (a, b) => (a === undefined || b.npv_usd > a.npv_usd ? b : a),
    undefined,
  )
  const paid = sizes.filter((row) => row.payback_years !== null)
  const quickest = paid.reduce<SizeRow | undefined>(
    (a, b) => (a === undefined || (b.payback_years ?? Infinity) < (a.payback_years ?? Infinity) ? b : a),
    undefined,
  )
  const wished = wishedSharePct === undefined ? undefined : sizes.find((row) => row.share_of_use_pct >= wishedSharePct)
  const dearest = Math.max(...sizes.map((row) => row.marginal.usd_per_kwh ?? -Infinity))
  const isDear = (row: SizeRow | undefined): boolean =>
    (row?.marginal.usd_per_kwh ?? -Infinity) >= dearest * STILL_EXPENSIVE
  const expensive = sizes.find((row, i) => isDear(row) && !isDear(sizes[i + 1]))
  return {
    best_npv: best !== undefined && best.npv_usd > 0 ? best.modules : null,
    shortest_payback: quickest?.modules ?? null,
    covers_wished_share: wished?.modules ?? null,
    only_expensive_kwh: dearest > 0 ? (expensive?.modules ?? null) : null,
  }
}
