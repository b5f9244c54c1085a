export { HOURS_PER_YEAR, makeCalendar, type BillingCalendar } from './billing-calendar.js'
export { hoursOf, inStepsOf, partsOf, spread } from './steps.js'
export { holidayDays, type Observance } from './holiday-days.js'
