import { dailyExtraterrestrialWhM2 as dailyIrradiationWhM2, SOLAR_CONSTANT_W_M2 } from '../sun/index.js'
import type { Degrees } from '../values/index.js'

/** Day of the year whose declination stands for the month, January first (Klein 1977, as in D&B Table 1.6.1). */
export const MEAN_DAY_OF_YEAR = [17, 47, 75, 105, 135, 162, 198, 228, 258, 288, 318, 344] as const

/** Days of each month of a year of 365 days. */
export const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const

/**
 * Extraterrestrial irradiation on a horizontal square metre over a day.
 *
 * @param latitudeDeg Latitude, degrees, north positive.
 * @param dayOfYear 1 to 365.
 * @param solarConstantWM2 Solar constant, W/m2.
 * @returns Wh/m2 per day; 0 in polar night.
 * @source Duffie & Beckman, Solar Engineering of Thermal Processes, eq. 1.10.3 with 1.4.1a, 1.6.1a (Cooper 1969), 1.6.10
 */
export function dailyExtraterrestrialWhM2(
  latitudeDeg: Degrees,
  dayOfYear: number,
  solarConstantWM2: number = SOLAR_CONSTANT_W_M2,
): number {
  const declinationDeg = 23.45 * Math.sin((2 * Math.PI * (284 + dayOfYear)) / 365) // 1.6.1a
  const normalWM2 = solarConstantWM2 * (1 + 0.033 * Math.cos((2 * Math.PI * dayOfYear) / 365)) // 1.4.1a
  return dailyIrradiationWhM2(latitudeDeg, declinationDeg, normalWM2)
}

/**
 * Monthly mean of daily extraterrestrial irradiation on a horizontal square metre, by the mean day of each month.
 *
 * @param latitudeDeg Latitude, degrees, north positive.
 * @param solarConstantWM2 Solar constant, W/m2.
 * @returns Twelve values, Wh/m2 per day, January first.
 * @source Klein 1977, Solar Energy 19:325, mean days
 * @limits Within a few percent beyond the polar circles, where the mean day stands badly for its month.
 */
export function monthlyExtraterrestrialWhM2Day(
  latitudeDeg: Degrees,
  solarConstantWM2: number = SOLAR_CONSTANT_W_M2,
): number[] {
  return MEAN_DAY_OF_YEAR.map((dayOfYear) => dailyExtraterrestrialWhM2(latitudeDeg, dayOfYear, solarConstantWM2))
}
