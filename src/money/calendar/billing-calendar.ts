import { dayOfYear, daysInMonth, isDaylightSaving, Kept, weekdayOf } from '../../values/index.js'

/**
 * The 8760 hours of a typical year, 1 January 00:00 local STANDARD time first, as the clock on the wall shows them.
 * The weekdays are those of real dates; the year of dates need not begin in January.
 */
export interface BillingCalendar {
  readonly daylightSaving: boolean
  /** First real date, `YYYY-MM-DD`; dates before it in the year belong to the following calendar year. */
  readonly firstDate: string
  /** Per hour: day of the year (0 to 364) and hour (0 to 23) of clock time. */
  readonly clockDay: Uint16Array
  readonly clockHour: Uint8Array
  /** Per day of the year: calendar year, month 1 to 12, day of month, weekday 0 = Sunday. */
  readonly year: Uint16Array
  readonly month: Uint8Array
  readonly dayOfMonth: Uint8Array
  readonly weekday: Uint8Array
}

export const HOURS_PER_YEAR = 8760

/** Houses of a fleet have few calendars between them. */
const calendars = new Kept<BillingCalendar>(4)

/**
 * Lays out a year of hours; the same dates give the same calendar, which nobody changes.
 *
 * @param firstDate First real date, `YYYY-MM-DD`.
 * @param daylightSaving Whether clocks change by the US rule.
 * @limits 29 February is left out.
 */
export function makeCalendar(firstDate: string, daylightSaving: boolean): BillingCalendar {
  return calendars.of(`${firstDate} ${String(daylightSaving)}`, () => layOut(firstDate, daylightSaving))
}

function layOut(firstDate: string, daylightSaving: boolean): BillingCalendar {
  const firstYear = Number(firstDate.slice(0, 4))
  const first = dayOfYear(Number(firstDate.slice(5, 7)), Number(firstDate.slice(8, 10)))
  const year = new Uint16Array(365)
  const month = new Uint8Array(365)
  const dayOfMonth = new Uint8Array(365)
  const weekday = new Uint8Array(365)
  const clockDay = new Uint16Array(HOURS_PER_YEAR)
  const clockHour = new Uint8Array(HOURS_PER_YEAR)
  let d = 0
  for (let m = 1; m <= 12; m++) {
    for (let dom = 1; dom <= daysInMonth(m); dom++, d++) {
      const y = d >= first ? firstYear : firstYear + 1
      year[d] = y
      month[d] = m
      dayOfMonth[d] = dom
      weekday[d] = weekdayOf(y, m, dom)
      for (let hour = 0; hour < 24; hour++) {
        const shift = daylightSaving && isDaylightSaving(y, m, dom, hour) ? 1 : 0
        clockDay[d * 24 + hour] = hour + shift === 24 ? d + 1 : d
        clockHour[d * 24 + hour] = (hour + shift) % 24
      }
    }
  }
  return { daylightSaving, firstDate, clockDay, clockHour, year, month, dayOfMonth, weekday }
}
