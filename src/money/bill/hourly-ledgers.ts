import { partsOf, spread } from '../calendar/index.js'
import type { HourLayout } from './hour-layout.js'
import type { BillLedger, BillSegment } from './ledger.js'
import type { KilowattHours } from '../../values/index.js'

const CELLS = 12 * 48
const NONE = new Float64Array(0)

/** Hours with the same output of zero or below in one slot, in columns. */
interface DarkHours {
  readonly slot: number[]
  readonly kwh: KilowattHours[]
  readonly count: number[]
  /** Use, and its highest hour, millionths of a kWh. */
  readonly load: number[]
  readonly peak: number[]
}

/** A year of use and output, added up as far as no factor on the output changes it. Energy is in millionths of a kWh. */
interface PackedHours {
  /** By segment, then by period. */
  readonly load: readonly Float64Array[]
  readonly peakLoad: readonly Float64Array[]
  readonly dark: DarkHours
  /** Where the sunny hours of a slot begin in the columns below; one entry more than slots. */
  readonly sunnyOfSlot: Uint32Array
  /** Use in the sunny hours of a slot. */
  readonly sunnyUse: Float64Array
  readonly sunnyLoad: Float64Array
  /** Output, kWh. */
  readonly sunnyKwh: Float64Array
  readonly sunnyHour: Uint16Array
}

/**
 * Adds a year of hours, or of quarters of them, up into twelve bills, import and export netted within each.
 *
 * @param usageKwh Use of the house, 8760 hours of local standard time or their quarters, kWh, none below zero.
 * @param productionKwh Output of the system in the same steps, kWh; undefined for none.
 * @returns Ledgers for a factor on the output of zero or above (degradation, a good or bad year). The use is added up once,
 * and so are hours without output of one kind: an inverter draws the same power through all nights of a month.
 * @limits Where periods begin within an hour, use and output are spread evenly over its quarters.
 */
export function hourlyLedgers(
  layout: HourLayout,
  usageKwh: Float64Array,
  productionKwh: Float64Array | undefined,
  withExportHours: boolean,
): (productionScale: number) => BillLedger[] {
  const { partsPerHour } = layout
  const packed = packHours(layout, inParts(usageKwh, partsPerHour), inParts(productionKwh, partsPerHour))
  return (productionScale) => ledgersAt(layout, packed, productionScale, withExportHours)
}

/** Hours, each spread evenly over its parts; quarters stay as they are. */
function inParts<Hours extends Float64Array | undefined>(hours: Hours, partsPerHour: number): Hours | Float64Array {
  if (hours === undefined || partsPerHour === partsOf(hours)) return hours
  return spread(hours, partsPerHour)
}

// Rounding is by floor in all of this: Math.round is several times as slow.
function packHours(layout: HourLayout, usageKwh: Float64Array, productionKwh: Float64Array | undefined): PackedHours {
  const slots = layout.segments.length * layout.periods
  const load = new Float64Array(slots)
  const peakLoad = new Float64Array(slots)
  const dark: DarkHours = { slot: [], kwh: [], count: [], load: [], peak: [] }
  const lastDark = new Int32Array(slots).fill(-1)
  const sunnyOfSlot = new Uint32Array(slots + 1)
  for (let h = 0; h < layout.slot.length; h++) {
    const slot = layout.slot[h]!
    const used = Math.floor(usageKwh[h]! * 1e6 + 0.5)
    load[slot] = load[slot]! + used
    if (used > peakLoad[slot]!) peakLoad[slot] = used
    const kwh = productionKwh === undefined ? 0 : productionKwh[h]!
    if (kwh > 0) {
      sunnyOfSlot[slot + 1] = sunnyOfSlot[slot + 1]! + 1
      continue
    }
    let kind = lastDark[slot]!
    if (kind < 0 || dark.kwh[kind] !== kwh) {
      kind = dark.slot.push(slot) - 1
      dark.kwh.push(kwh)
      dark.count.push(0)
      dark.load.push(0)
      dark.peak.push(0)
      lastDark[slot] = kind
    }
    dark.count[kind] = dark.count[kind]! + 1
    dark.load[kind] = dark.load[kind]! + used
    if (used > dark.peak[kind]!) dark.peak[kind] = used
  }
  // Hours with output, those of a slot together: its sums are then four plain numbers.
  for (let slot = 0; slot < slots; slot++) {
    sunnyOfSlot[slot + 1] = sunnyOfSlot[slot + 1]! + sunnyOfSlot[slot]!
  }
  const sunny = sunnyOfSlot[slots] ?? 0
  const sunnyLoad = new Float64Array(sunny)
  const sunnyKwh = new Float64Array(sunny)
  const sunnyHour = new Uint16Array(sunny)
  const sunnyUse = new Float64Array(slots)
  const next = sunnyOfSlot.slice()
  for (let h = 0; h < (productionKwh?.length ?? 0); h++) {
    const kwh = productionKwh![h]!
    if (kwh <= 0) continue
    const slot = layout.slot[h]!
    const i = next[slot]!
    next[slot] = i + 1
    sunnyHour[i] = h
    const used = Math.floor(usageKwh[h]! * 1e6 + 0.5)
    sunnyLoad[i] = used
    sunnyUse[slot] = (sunnyUse[slot] ?? 0) + used
    sunnyKwh[i] = kwh
  }
  const bySegment = (of: Float64Array) => layout.segments.map((_, i) => cut(of, i * layout.periods, layout.periods))
  return {
    load: bySegment(load),
    peakLoad: bySegment(peakLoad),
    dark,
    sunnyOfSlot,
    sunnyUse,
    sunnyLoad,
    sunnyKwh,
    sunnyHour,
  }
}

/** Sums by slot, millionths of a kWh. */
interface SlotSums {
  readonly imported: Float64Array
  readonly exported: Float64Array
  readonly generation: Float64Array
  readonly peakImport: Float64Array
}

function ledgersAt(layout: HourLayout, packed: PackedHours, scale: number, withExportHours: boolean): BillLedger[] {
  const { periods, segments, partsPerHour } = layout
  const toKw = (peak: Float64Array): Float64Array => (partsPerHour === 1 ? peak : peak.map((kwh) => kwh * partsPerHour))
  const exportHours = Array.from({ length: withExportHours ? 13 : 0 }, () => new Float64Array(CELLS))
  const sums = sumSlots(packed, scale)
  if (withExportHours) addExportHours(layout, packed, scale, exportHours)
  return Array.from({ length: 12 }, (_, m): BillLedger => {
    const own: BillSegment[] = []
    let [days, made] = [0, 0]
    for (const [i, segment] of segments.entries()) {
      if (segment.bill !== m + 1) continue
      days += segment.days
      const from = i * periods
      for (let p = from; p < from + periods; p++) made += sums.generation[p] ?? 0
      own.push({
        season: segment.season,
        days: segment.days,
        load: packed.load[i] ?? NONE,
        imported: cut(sums.imported, from, periods),
        exported: cut(sums.exported, from, periods),
        peakLoad: toKw(packed.peakLoad[i] ?? NONE),
        peakImport: toKw(cut(sums.peakImport, from, periods)),
      })
    }
    return { month: m + 1, days, segments: own, generation: made, exportedByHour: exportHours[m + 1], hourly: true }
  })
}

/** `slice`, which takes longer than the copy for a few numbers. */
function cut(of: Float64Array, from: number, length: number): Float64Array {
  const part = new Float64Array(length)
  for (let i = 0; i < length; i++) part[i] = of[from + i] ?? 0
  return part
}

function sumSlots(packed: PackedHours, scale: number): SlotSums {
  const { dark, sunnyOfSlot, sunnyUse, sunnyLoad, sunnyKwh } = packed
  const slots = sunnyOfSlot.length - 1
  const imported = new Float64Array(slots)
  const exported = new Float64Array(slots)
  const generation = new Float64Array(slots)
  const peakImport = new Float64Array(slots)
  const toMicro = scale * 1e6
  for (const [kind, slot] of dark.slot.entries()) {
    const made = Math.floor((dark.kwh[kind] ?? 0) * toMicro + 0.5)
    const count = dark.count[kind] ?? 0
    generation[slot] = (generation[slot] ?? 0) + made * count
    imported[slot] = (imported[slot] ?? 0) + (dark.load[kind] ?? 0) - made * count
    peakImport[slot] = Math.max(peakImport[slot] ?? 0, (dark.peak[kind] ?? 0) - made)
  }
  for (let slot = 0; slot < slots; slot++) {
    addHours(sunnyLoad, sunnyKwh, sunnyOfSlot[slot]!, sunnyOfSlot[slot + 1]!, toMicro, peakImport[slot]!)
    const { made, exchanged, peak } = added
    generation[slot] = generation[slot]! + made
    // What was drawn less what was fed in is use less output, whatever the hours, so that both follow from their sum.
    const net = sunnyUse[slot]! - made
    imported[slot] = imported[slot]! + (exchanged + net) / 2
    exported[slot] = (exchanged - net) / 2
    peakImport[slot] = peak
  }
  return { imported, exported, generation, peakImport }
}

/** What `addHours` found last. */
const added = { made: 0.5, exchanged: 0.5, peak: 0.5 }

/**
 * Sums of the sunny hours of one slot: output, and what went over the meter either way. A function with nothing but numbers and their
 * arrays runs three times as fast as a loop among others, and without a question in each hour faster still.
 */
function addHours(
  load: Float64Array,
  kwh: Float64Array,
  from: number,
  end: number,
  toMicro: number,
  highest: number,
): void {
  let made = 0
  let exchanged = 0
  let peak = highest
  for (let i = from; i < end; i++) {
    const micro = Math.floor(kwh[i]! * toMicro + 0.5)
    const net = load[i]! - micro
    made += micro
    exchanged += Math.abs(net)
    if (net > peak) peak = net
  }
  added.made = made
  added.exchanged = exchanged
  added.peak = peak
}

/** Adds what each hour feeds in to the cell of its bill and clock hour. */
function addExportHours(layout: HourLayout, packed: PackedHours, scale: number, exportHours: Float64Array[]): void {
  const { sunnyLoad, sunnyKwh, sunnyHour } = packed
  const toMicro = scale * 1e6
  for (let i = 0; i < sunnyHour.length; i++) {
    const net = (sunnyLoad[i] ?? 0) - Math.floor((sunnyKwh[i] ?? 0) * toMicro + 0.5)
    if (net >= 0) continue
    const hour = sunnyHour[i] ?? 0
    const cells = exportHours[layout.segments[layout.segment[hour] ?? 0]?.bill ?? 0]
    const cell = layout.cell[hour] ?? 0
    if (cells !== undefined) cells[cell] = (cells[cell] ?? 0) - net
  }
}
