import { spencerSun } from './spencer-sun.js'
import type { HourlyClimate, MorningShares } from './types.js'

/** Months with less global irradiation a day are polar night and count as symmetric, Wh/m2 per day. */
const LEAST_WH_M2_DAY = 100

/**
 * Shares of a file's own irradiation that fall before solar noon, by month. The hour that holds noon is split in
 * proportion.
 *
 * @param hourly Whole days; its clock is taken to be right.
 */
export function morningShares(hourly: HourlyClimate): MorningShares {
  const sums = Array.from({ length: 12 }, () => ({ ghi: 0, ghiBefore: 0, dhi: 0, dhiBefore: 0, hours: 0 }))
  for (let row = 0; row < hourly.length; row++) {
    const month = sums[hourly.month[row]! - 1]!
    const before = Math.min(1, Math.max(0, noonH(hourly, row) - (hourly.hour[row]! - 1)))
    month.ghi += hourly.ghiWM2[row]!
    month.dhi += hourly.dhiWM2[row]!
    month.ghiBefore += before * hourly.ghiWM2[row]!
    month.dhiBefore += before * hourly.dhiWM2[row]!
    month.hours += 1
  }
  const lit = (month: (typeof sums)[number]): boolean => month.ghi >= (LEAST_WH_M2_DAY * month.hours) / 24
  return {
    ghi: sums.map((month) => (lit(month) ? month.ghiBefore / month.ghi : 0.5)),
    dhi: sums.map((month) => (lit(month) && month.dhi > 0 ? month.dhiBefore / month.dhi : 0.5)),
  }
}

/** Local standard time of solar noon on the day of a row, h. */
function noonH({ dayOfYear, utcOffsetH, longitudeDeg }: HourlyClimate, row: number): number {
  return 12 + utcOffsetH - longitudeDeg / 15 - spencerSun(dayOfYear[row]!).equationOfTimeH
}
