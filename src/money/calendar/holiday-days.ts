import { HOLIDAYS, type HolidayName } from '../../tables/money/index.js'
import type { BillingCalendar } from './billing-calendar.js'
import { dayOfYear, nthWeekday, weekdayOf } from '../../values/index.js'

export type Observance = 'none' | 'monday_after_sunday' | 'nearest_weekday'

const isName = (day: string): day is HolidayName => Object.hasOwn(HOLIDAYS, day)

function dateIn(year: number, holiday: string): { month: number; day: number } {
  if (!isName(holiday)) return { month: Number(holiday.slice(0, 2)), day: Number(holiday.slice(3, 5)) }
  const rule = HOLIDAYS[holiday]
  if ('day' in rule) return rule
  return { month: rule.month, day: nthWeekday(year, rule.month, rule.weekday, rule.nth) }
}

function observedShift(weekday: number, observed: Observance): number {
  if (weekday === 0 && observed !== 'none') return 1
  return weekday === 6 && observed === 'nearest_weekday' ? -1 : 0
}

/** Which days of the calendar are holidays: 365 entries, 1 = holiday. A holiday that moves stays one on its own date too. */
export function holidayDays(calendar: BillingCalendar, holidays: readonly string[], observed: Observance): Uint8Array {
  const marks = new Uint8Array(365)
  for (const year of new Set(calendar.year)) {
    for (const holiday of holidays) {
      const { month, day } = dateIn(year, holiday)
      const own = dayOfYear(month, day)
      const moved = own + observedShift(weekdayOf(year, month, day), observed)
      for (const d of [own, moved]) if (calendar.year[d] === year) marks[d] = 1
    }
  }
  return marks
}
