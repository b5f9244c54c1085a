import { HOURS_PER_YEAR } from '../calendar/index.js'
import type { HourLayout } from './hour-layout.js'
import type { BillLedger, BillSegment } from './ledger.js'

const CELLS = 12 * 48

/** Hours of one slot with the same output of zero or below, kWh; use in millionths of a kWh. */
interface DarkHours {
  readonly slot: number
  readonly kwh: number
  count: number
  load: number
  peak: number
}

/**
 * Adds a year of hours up into twelve bills, import and export netted within each hour.
 *
 * @param usageKwh Use of the house, 8760 hours of local standard time, kWh, none below zero.
 * @param productionKwh Output of the system in the same hours, kWh; undefined for none.
 * @returns Ledgers for a factor on the output of zero or above (degradation, a good or bad year). The use is added up once,
 * and so are hours without output of one kind: an inverter draws the same power through all nights of a month.
 */
export function hourlyLedgers(
  layout: HourLayout,
  usageKwh: Float64Array,
  productionKwh: Float64Array | undefined,
  withExportHours: boolean,
): (productionScale: number) => BillLedger[] {
  const { periods, segments } = layout
  const slots = segments.length * periods
  const [load, peakLoad] = [new Float64Array(slots), new Float64Array(slots)]
  const dark: DarkHours[] = []
  const lastDark: (DarkHours | undefined)[] = []
  // Hours with output, packed.
  const [sunnySlot, sunnyHour] = [new Uint16Array(HOURS_PER_YEAR), new Uint16Array(HOURS_PER_YEAR)]
  const [sunnyLoad, sunnyKwh] = [new Float64Array(HOURS_PER_YEAR), new Float64Array(HOURS_PER_YEAR)]
  let sunny = 0
  for (let h = 0; h < HOURS_PER_YEAR; h++) {
    const slot = (layout.segment[h] ?? 0) * periods + (layout.period[h] ?? 0)
    const used = Math.round((usageKwh[h] ?? 0) * 1e6)
    load[slot] = (load[slot] ?? 0) + used
    if (used > (peakLoad[slot] ?? 0)) peakLoad[slot] = used
    const kwh = productionKwh === undefined ? 0 : (productionKwh[h] ?? 0)
    if (kwh <= 0) {
      let alike = lastDark[slot]
      if (alike?.kwh !== kwh) dark.push((alike = lastDark[slot] = { slot, kwh, count: 0, load: 0, peak: 0 }))
      alike.count += 1
      alike.load += used
      if (used > alike.peak) alike.peak = used
      continue
    }
    sunnySlot[sunny] = slot
    sunnyHour[sunny] = h
    sunnyLoad[sunny] = used
    sunnyKwh[sunny] = kwh
    sunny += 1
  }
  return (productionScale) => {
    const [imported, peakImport] = [new Float64Array(slots), new Float64Array(slots)]
    const [exported, generation] = [new Float64Array(slots), new Float64Array(slots)]
    for (const { slot, kwh, count, load: used, peak } of dark) {
      const made = Math.round(kwh * productionScale * 1e6)
      generation[slot] = (generation[slot] ?? 0) + made * count
      imported[slot] = (imported[slot] ?? 0) + used - made * count
      peakImport[slot] = Math.max(peakImport[slot] ?? 0, peak - made)
    }
    const exportHours = Array.from({ length: withExportHours ? 13 : 0 }, () => new Float64Array(CELLS))
    for (let i = 0; i < sunny; i++) {
      const slot = sunnySlot[i] ?? 0
      const made = Math.round((sunnyKwh[i] ?? 0) * productionScale * 1e6)
      const net = (sunnyLoad[i] ?? 0) - made
      generation[slot] = (generation[slot] ?? 0) + made
      if (net >= 0) {
        imported[slot] = (imported[slot] ?? 0) + net
        if (net > (peakImport[slot] ?? 0)) peakImport[slot] = net
        continue
      }
      exported[slot] = (exported[slot] ?? 0) - net
      if (!withExportHours) continue
      const hour = sunnyHour[i] ?? 0
      const cells = exportHours[segments[layout.segment[hour] ?? 0]?.bill ?? 0]
      const cell = layout.cell[hour] ?? 0
      if (cells !== undefined) cells[cell] = (cells[cell] ?? 0) - net
    }
    const slotsOf = (i: number, of: Float64Array): Float64Array => of.slice(i * periods, (i + 1) * periods)
    return Array.from({ length: 12 }, (_, m): BillLedger => {
      const own: BillSegment[] = []
      let [days, made] = [0, 0]
      for (const [i, segment] of segments.entries()) {
        if (segment.bill !== m + 1) continue
        days += segment.days
        for (let p = i * periods; p < (i + 1) * periods; p++) made += generation[p] ?? 0
        own.push({
          season: segment.season,
          days: segment.days,
          load: slotsOf(i, load),
          imported: slotsOf(i, imported),
          exported: slotsOf(i, exported),
          peakLoad: slotsOf(i, peakLoad),
          peakImport: slotsOf(i, peakImport),
        })
      }
      return { month: m + 1, days, segments: own, generation: made, exportedByHour: exportHours[m + 1], hourly: true }
    })
  }
}
