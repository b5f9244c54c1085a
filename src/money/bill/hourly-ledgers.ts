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
  let sunny = 0
  const sunnyOfSlot = new Uint32Array(slots + 1)
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
    sunnyOfSlot[slot + 1] = (sunnyOfSlot[slot + 1] ?? 0) + 1
    sunny += 1
  }
  // Hours with output, packed, those of a slot together: its sums are then four plain numbers.
  for (let slot = 0; slot < slots; slot++) {
    sunnyOfSlot[slot + 1] = (sunnyOfSlot[slot + 1] ?? 0) + (sunnyOfSlot[slot] ?? 0)
  }
  const [sunnyLoad, sunnyKwh, sunnyHour] = [new Float64Array(sunny), new Float64Array(sunny), new Uint16Array(sunny)]
  const next = sunnyOfSlot.slice()
  for (let h = 0; h < HOURS_PER_YEAR && productionKwh !== undefined; h++) {
    const kwh = productionKwh[h] ?? 0
    if (kwh <= 0) continue
    const slot = (layout.segment[h] ?? 0) * periods + (layout.period[h] ?? 0)
    const i = next[slot] ?? 0
    next[slot] = i + 1
    sunnyHour[i] = h
    sunnyLoad[i] = Math.round((usageKwh[h] ?? 0) * 1e6)
    sunnyKwh[i] = kwh
  }
  return (productionScale) => {
    const [imported, peakImport] = [new Float64Array(slots), new Float64Array(slots)]
    const [exported, generation] = [new Float64Array(slots), new Float64Array(slots)]
    for (const { slot, kwh, count, load: used, peak } of dark) {
      const made = Math.floor(kwh * productionScale * 1e6 + 0.5)
      generation[slot] = (generation[slot] ?? 0) + made * count
      imported[slot] = (imported[slot] ?? 0) + used - made * count
      peakImport[slot] = Math.max(peakImport[slot] ?? 0, peak - made)
    }
    const exportHours = Array.from({ length: withExportHours ? 13 : 0 }, () => new Float64Array(CELLS))
    // Math.round and Math.max are several times as slow here.
    const toMicro = productionScale * 1e6
    for (let slot = 0; slot < slots; slot++) {
      const end = sunnyOfSlot[slot + 1] ?? 0
      let made = 0
      let used = 0
      let drawn = 0
      let peak = peakImport[slot] ?? 0
      for (let i = sunnyOfSlot[slot] ?? 0; i < end; i++) {
        const kwh = Math.floor((sunnyKwh[i] ?? 0) * toMicro + 0.5)
        const net = (sunnyLoad[i] ?? 0) - kwh
        made += kwh
        used += sunnyLoad[i] ?? 0
        drawn += net > 0 ? net : 0
        if (net > peak) peak = net
        if (!withExportHours || net >= 0) continue
        const hour = sunnyHour[i] ?? 0
        const cells = exportHours[segments[layout.segment[hour] ?? 0]?.bill ?? 0]
        const cell = layout.cell[hour] ?? 0
        if (cells !== undefined) cells[cell] = (cells[cell] ?? 0) - net
      }
      generation[slot] = (generation[slot] ?? 0) + made
      imported[slot] = (imported[slot] ?? 0) + drawn
      // What was drawn less what was fed in is use less output, whatever the hours.
      exported[slot] = drawn - (used - made)
      peakImport[slot] = peak
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
