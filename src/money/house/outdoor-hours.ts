import { DAYS_IN_MONTH, type Climate } from '../../climate/index.js'
import { daytimeTemperatureC } from '../../yield/index.js'
import { HOURS_PER_YEAR } from '../calendar/index.js'

/**
 * Outdoor temperature of the 8760 hours of local standard time, deg C: the hours of a weather file, else the mean day of each month.
 *
 * @limits Mean days have no cold spells; the clock is taken for solar time.
 */
export function outdoorHoursC(climate: Climate): Float64Array {
  const hours = new Float64Array(HOURS_PER_YEAR)
  const starts = DAYS_IN_MONTH.map((_, m) => 24 * DAYS_IN_MONTH.slice(0, m).reduce((sum, days) => sum + days, 0))
  if (climate.kind === 'monthly') {
    for (let h = 0; h < HOURS_PER_YEAR; h++) {
      const m = starts.findLastIndex((start) => start <= h)
      const swing = (climate.meanMaxC[m] ?? 0) - (climate.meanMinC[m] ?? 0)
      hours[h] = daytimeTemperatureC(climate.meanC[m] ?? 0, swing, (h % 24) + 0.5)
    }
    return hours
  }
  const counts = new Uint16Array(HOURS_PER_YEAR)
  for (let i = 0; i < climate.length; i++) {
    const [month, day, hour] = [climate.month[i] ?? 1, climate.day[i] ?? 1, climate.hour[i] ?? 1]
    if (month === 2 && day === 29) continue
    const h = (starts[month - 1] ?? 0) + (day - 1) * 24 + hour - 1
    hours[h] = (hours[h] ?? 0) + (climate.dryBulbC[i] ?? 0)
    counts[h] = (counts[h] ?? 0) + 1
  }
  return hours.map((sum, h) => sum / Math.max(1, counts[h] ?? 1))
}
