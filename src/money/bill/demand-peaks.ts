import type { HourLayout } from './hour-layout.js'
import type { BillLedger } from './ledger.js'

/** Highest mean power by slot, millionths of a kW. */
export interface SlotPeaks {
  readonly load: Float64Array
  readonly drawn: Float64Array
}

/**
 * Highest mean power over windows of an hour or its parts, from use and output by quarters of an hour. The meter counts what is
 * drawn in each quarter; what is fed in within the same window lowers nothing.
 *
 * @param layout With four entries an hour.
 * @param quarters Quarters of an hour in a window: 1, 2 or 4. A window that reaches into two periods counts in both.
 */
export function peaksOver(
  layout: HourLayout,
  usageKwh: Float64Array,
  productionKwh: Float64Array | undefined,
  scale: number,
  quarters: number,
): SlotPeaks {
  const slots = layout.segments.length * layout.periods
  const load = new Float64Array(slots)
  const drawn = new Float64Array(slots)
  const perHour = 4 / quarters
  for (let from = 0; from < usageKwh.length; from += quarters) {
    let used = 0
    let taken = 0
    for (let i = from; i < from + quarters; i++) {
      const own = Math.floor((usageKwh[i] ?? 0) * 1e6 + 0.5)
      used += own
      taken += Math.max(0, own - Math.floor((productionKwh?.[i] ?? 0) * scale * 1e6 + 0.5))
    }
    for (let i = from; i < from + quarters; i++) {
      const slot = layout.slot[i] ?? 0
      if (used * perHour > (load[slot] ?? 0)) load[slot] = used * perHour
      if (taken * perHour > (drawn[slot] ?? 0)) drawn[slot] = taken * perHour
    }
  }
  return { load, drawn }
}

/** Ledgers with these peaks in the place of their own. */
export function withPeaks(
  ledgers: readonly BillLedger[],
  layout: HourLayout,
  { load, drawn }: SlotPeaks,
): BillLedger[] {
  const of = (peaks: Float64Array, segment: number): Float64Array =>
    peaks.slice(segment * layout.periods, (segment + 1) * layout.periods)
  const byBill = layout.segments.map(({ bill }, segment) => ({ bill, segment }))
  return ledgers.map((ledger) => {
    const own = byBill.filter(({ bill }) => bill === ledger.month)
    return {
      ...ledger,
      segments: ledger.segments.map((part, i) => {
        const segment = own[i]?.segment ?? 0
        return { ...part, peakLoad: of(load, segment), peakImport: of(drawn, segment) }
      }),
    }
  })
}
