export { HOURS_PER_YEAR, makeCalendar, type BillingCalendar } from './billing-calendar.js'
export { addDays, dayOfYear, daysBetween, daysInMonth, nthWeekday, weekdayOf } from './dates.js'
export { isDaylightSaving } from './daylight-saving.js'
export { holidayDays, type Observance } from './holiday-days.js'
