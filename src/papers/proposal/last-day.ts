import { HOLIDAYS } from '../../tables/money/index.js'
import { addDays, nthWeekday, weekdayOf } from '../../values/index.js'

/**
 * Last day on which a sale in the home may be cancelled: so many business days after the day of signing.
 *
 * @param signed Year-month-day. @returns Year-month-day; the right ends at midnight of it.
 * @source 16 CFR 429: every day counts but Sundays and federal holidays (secondary); a holiday counts on its own date,
 * not on the day on which offices close for it (from memory)
 */
export function lastDayToCancel(signed: string, businessDays: number): string {
  let day = signed
  for (let counted = 0; counted < businessDays;) {
    day = addDays(day, 1)
    if (isBusinessDay(day)) counted += 1
  }
  return day
}

/** Whether a day counts: no Sunday and no federal holiday. */
export function isBusinessDay(date: string): boolean {
  const [year = 0, month = 0, day = 0] = date.split('-').map(Number)
  return weekdayOf(year, month, day) !== 0 && !isFederalHoliday(year, month, day)
}

function isFederalHoliday(year: number, month: number, day: number): boolean {
  return Object.values(HOLIDAYS).some((rule) => {
    if (rule.month !== month) return false
    return day === ('day' in rule ? rule.day : nthWeekday(year, month, rule.weekday, rule.nth))
  })
}
