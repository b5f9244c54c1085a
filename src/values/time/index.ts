export { addDays, dayOfYear, daysBetween, daysInMonth, nthWeekday, weekdayOf } from './dates.js'
export { isDaylightSaving } from './daylight-saving.js'
