import type { StorageControl, StorageEvent, StorageWindow } from '../../project/index.js'
import type { Control } from '../../storage/index.js'
import { dayOfYear } from '../../values/index.js'
import { holidayDays, HOURS_PER_YEAR, type BillingCalendar } from '../calendar/index.js'
import type { RateSheet } from '../tariff/index.js'

type Kind = 'weekdays' | 'saturdays' | 'sundays' | 'holidays'
const KINDS: Readonly<Record<StorageWindow['days'][number], readonly Kind[]>> = {
  every_day: ['weekdays', 'saturdays', 'sundays', 'holidays'],
  weekdays: ['weekdays'],
  weekends: ['saturdays', 'sundays'],
  saturdays: ['saturdays'],
  sundays: ['sundays'],
  holidays: ['holidays'],
}
/** Hours before an event in which a battery fills when nothing is stated. */
const CHARGE_HOURS = 12

/**
 * The control of a project by the hours of its year.
 *
 * @param sheet Whose holidays count.
 * @limits Windows and events hold by clock time, as the tariff does; hours after midnight of a window count as its day's.
 */
export function readControl(stated: StorageControl | undefined, sheet: RateSheet, calendar: BillingCalendar): Control {
  const {
    discharge_windows: discharge,
    grid_charge_windows: charge,
    events,
    demand_limit_kw: demandLimitKw,
    export_cap_kw: exportCapKw,
    charge_from: chargeFrom = 'surplus',
    battery_export: batteryExport = false,
  } = stated ?? {}
  const marks = (windows: readonly StorageWindow[]): Uint8Array => windowMarks(windows, sheet, calendar)
  return {
    chargeFrom,
    batteryExport,
    ...(discharge === undefined ? {} : { discharge: marks(discharge) }),
    ...(charge === undefined ? {} : { charge: marks(charge) }),
    ...(events === undefined ? {} : eventMarks(events, calendar)),
    ...(demandLimitKw === undefined ? {} : { demandLimitKw }),
    ...(exportCapKw === undefined ? {} : { exportCapKw }),
  }
}

function windowMarks(windows: readonly StorageWindow[], sheet: RateSheet, calendar: BillingCalendar): Uint8Array {
  const holiday = holidayDays(calendar, sheet.holidays, sheet.observed)
  const kindOf = (day: number): Kind => {
    if (holiday[day] === 1) return 'holidays'
    const weekday = calendar.weekday[day]
    return weekday === 0 ? 'sundays' : weekday === 6 ? 'saturdays' : 'weekdays'
  }
  const marks = new Uint8Array(HOURS_PER_YEAR)
  for (const { months, days, from_hour: from, to_hour: to } of windows) {
    const kinds = new Set(days.flatMap((each) => KINDS[each]))
    const length = (to - from + 24) % 24 || 24
    for (let h = 0; h < HOURS_PER_YEAR; h++) {
      const day = calendar.clockDay[h] ?? 0
      if (((calendar.clockHour[h] ?? 0) - from + 24) % 24 >= length || !kinds.has(kindOf(day))) continue
      if (months === undefined || months.includes(calendar.month[day] ?? 0)) marks[h] = 1
    }
  }
  return marks
}

function eventMarks(
  events: readonly StorageEvent[],
  calendar: BillingCalendar,
): Required<Pick<Control, 'event' | 'beforeEvent'>> {
  const event = new Uint8Array(HOURS_PER_YEAR)
  const beforeEvent = new Uint8Array(HOURS_PER_YEAR)
  for (const { date, from_hour: from, to_hour: to, charge_hours: ahead = CHARGE_HOURS } of events) {
    const day = dayOfYear(Number(date.slice(0, 2)), Number(date.slice(3, 5)))
    for (let h = 0; h < HOURS_PER_YEAR; h++) {
      const hours = ((calendar.clockDay[h] ?? 0) - day) * 24 + (calendar.clockHour[h] ?? 0)
      if (hours >= from && hours < to) event[h] = 1
      else if (hours >= from - ahead && hours < from) beforeEvent[h] = 1
    }
  }
  return { event, beforeEvent }
}
