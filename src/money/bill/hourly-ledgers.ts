import { HOURS_PER_YEAR } from '../calendar/index.js'
import type { HourLayout } from './hour-layout.js'
import { emptySegment, type BillLedger } from './ledger.js'

/**
 * Adds a year of hours up into twelve bills, import and export netted within each hour.
 *
 * @param usageKwh Use of the house, 8760 hours of local standard time, kWh.
 * @param productionKwh Output of the system in the same hours, kWh; undefined for none.
 * @param productionScale Factor on the output (degradation, a good or bad year).
 */
export function hourlyLedgers(
  layout: HourLayout,
  usageKwh: Float64Array,
  productionKwh: Float64Array | undefined,
  productionScale: number,
  withExportHours: boolean,
): BillLedger[] {
  const segments = layout.segments.map(({ season, days }) => emptySegment(season, days, layout.periods))
  const generation = new Float64Array(13)
  const exportHours = Array.from({ length: withExportHours ? 13 : 0 }, () => new Float64Array(12 * 48))
  for (let h = 0; h < HOURS_PER_YEAR; h++) {
    const s = layout.segment[h] ?? 0
    const segment = segments[s]
    if (segment === undefined) continue
    const p = layout.period[h] ?? 0
    const load = Math.round((usageKwh[h] ?? 0) * 1e6)
    const made = productionKwh === undefined ? 0 : Math.round((productionKwh[h] ?? 0) * productionScale * 1e6)
    segment.load[p] = (segment.load[p] ?? 0) + load
    segment.peakLoad[p] = Math.max(segment.peakLoad[p] ?? 0, load)
    const net = load - made
    if (net >= 0) {
      segment.imported[p] = (segment.imported[p] ?? 0) + net
      segment.peakImport[p] = Math.max(segment.peakImport[p] ?? 0, net)
    } else segment.exported[p] = (segment.exported[p] ?? 0) - net
    const bill = layout.segments[s]?.bill ?? 0
    generation[bill] = (generation[bill] ?? 0) + made
    if (withExportHours && net < 0) {
      const cells = exportHours[bill]
      const cell = layout.cell[h] ?? 0
      if (cells !== undefined) cells[cell] = (cells[cell] ?? 0) - net
    }
  }
  return Array.from({ length: 12 }, (_, m) => {
    const own = segments.filter((_, i) => layout.segments[i]?.bill === m + 1)
    return {
      month: m + 1,
      days: own.reduce((days, segment) => days + segment.days, 0),
      segments: own,
      generation: generation[m + 1] ?? 0,
      exportedByHour: exportHours[m + 1],
      hourly: true,
    }
  })
}
