import { holidayDays, HOURS_PER_YEAR, type BillingCalendar } from '../calendar/index.js'
import type { RateSheet } from '../tariff/index.js'

/** Where each of the 8760 hours of a calendar, or each part of one, falls in a tariff. */
export interface HourLayout {
  /** 4 when periods begin or end at quarters of an hour, or energy is told by them; the columns below then have four entries an hour. */
  readonly partsPerHour: 1 | 4
  readonly periods: number
  /** Per hour: segment, slot (segment x periods + period), and cell of month x (weekday, other) x clock hour. */
  readonly segment: Uint8Array
  readonly slot: Uint16Array
  readonly cell: Uint16Array
  /** Seasons within bills, in the order of `segment`. */
  readonly segments: readonly { readonly bill: number; readonly season: number; readonly days: number }[]
}

/** @returns Bill (1 to 12) of a day: the calendar month, or the month whose reading ends the bill. */
function billOf(month: number, day: number, readDay: number | undefined): number {
  return readDay === undefined || day <= readDay ? month : (month % 12) + 1
}

/** By the table of periods: tariffs that differ in prices only share it. */
const lastLayouts = new WeakMap<
  Uint8Array,
  { readonly sheet: RateSheet; readonly calendar: BillingCalendar; readonly layout: HourLayout }
>()

/**
 * Lays the hours of a calendar out in bills, seasons and periods, once for many questions about one tariff.
 *
 * @param parts Entries that an hour has at least.
 */
export function layHours(sheet: RateSheet, calendar: BillingCalendar, parts: 1 | 4 = 1): HourLayout {
  const partsPerHour = sheet.partsPerHour === 4 ? 4 : parts
  const held = lastLayouts.get(sheet.periodOfHour)
  if (held?.calendar === calendar && held.layout.partsPerHour === partsPerHour && haveSameHours(held.sheet, sheet))
    return held.layout
  const layout = makeLayout(sheet, calendar, partsPerHour)
  lastLayouts.set(sheet.periodOfHour, { sheet, calendar, layout })
  return layout
}

function haveSameHours(a: RateSheet, b: RateSheet): boolean {
  return (
    a.periods.length === b.periods.length &&
    a.seasonOfDay === b.seasonOfDay &&
    a.readDay === b.readDay &&
    a.holidays === b.holidays &&
    a.observed === b.observed
  )
}

function makeLayout(sheet: RateSheet, calendar: BillingCalendar, partsPerHour: 1 | 4): HourLayout {
  const holiday = holidayDays(calendar, sheet.holidays, sheet.observed)
  const segments: { bill: number; season: number; days: number }[] = []
  const segmentOfDay = new Uint8Array(365)
  const kindOfDay = new Uint8Array(365)
  const start = (sheet.readDay ?? 0) === 0 ? 0 : 334 + (sheet.readDay ?? 0)
  for (let i = 0; i < 365; i++) {
    const d = (start + i) % 365
    const bill = billOf(calendar.month[d] ?? 1, calendar.dayOfMonth[d] ?? 1, sheet.readDay)
    const season = sheet.seasonOfDay[d] ?? 0
    let index = segments.findIndex((segment) => segment.bill === bill && segment.season === season)
    if (index < 0) index = segments.push({ bill, season, days: 0 }) - 1
    const segment = segments[index]
    if (segment !== undefined) segment.days += 1
    segmentOfDay[d] = index
    const weekday = calendar.weekday[d]
    kindOfDay[d] = holiday[d] === 1 ? 3 : weekday === 0 ? 2 : weekday === 6 ? 1 : 0
  }
  const entriesPerHour = sheet.partsPerHour
  const parts = HOURS_PER_YEAR * partsPerHour
  const segment = new Uint8Array(parts)
  const slot = new Uint16Array(parts)
  const periods = sheet.periods.length
  const cell = new Uint16Array(parts)
  for (let i = 0; i < parts; i++) {
    const h = Math.floor(i / partsPerHour)
    const d = calendar.clockDay[h] ?? 0
    const hour = calendar.clockHour[h] ?? 0
    const kind = kindOfDay[d] ?? 0
    segment[i] = segmentOfDay[d] ?? 0
    const dayOfTable = ((sheet.seasonOfDay[d] ?? 0) * 4 + kind) * 24 * entriesPerHour
    const entry = Math.floor(((i % partsPerHour) * entriesPerHour) / partsPerHour)
    const period = sheet.periodOfHour[dayOfTable + hour * entriesPerHour + entry] ?? 0
    slot[i] = (segmentOfDay[d] ?? 0) * periods + period
    cell[i] = ((calendar.month[d] ?? 1) - 1) * 48 + (kind === 0 ? 0 : 24) + hour
  }
  return { partsPerHour, periods, segment, slot, cell, segments }
}
