import type { Degrees } from '../values/index.js'

/**
 * Diffuse share of the global horizontal irradiation of an hour or less.
 *
 * @param clearness Hourly clearness index kt, 0 and more.
 * @returns Diffuse over global, 0.165 to 1.
 * @source Erbs, Klein & Duffie 1982, hourly correlation.
 * @example erbsHourly(0.5) // 0.6591
 */
export function erbsHourly(clearness: number): number {
  const k = clearness
  if (k <= 0.22) return 1 - 0.09 * Math.max(0, k)
  if (k <= 0.8) return 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)))
  return 0.165
}

/**
 * Diffuse share of a day's global horizontal irradiation.
 *
 * @param clearness Daily clearness index.
 * @param sunsetHourAngleDeg Hour angle of sunset, degrees; 81.4 parts winter from the other seasons.
 * @source Erbs, Klein & Duffie 1982, daily correlation.
 * @example erbsDaily(0.5, 100) // 0.6083
 */
export function erbsDaily(clearness: number, sunsetHourAngleDeg: Degrees): number {
  const k = clearness
  if (sunsetHourAngleDeg <= 81.4) {
    return k < 0.715 ? 1 + k * (-0.2727 + k * (2.4495 + k * (-11.9514 + k * 9.3879))) : 0.143
  }
  return k < 0.722 ? 1 + k * (0.2832 + k * (-2.5557 + k * 0.8448)) : 0.175
}

/**
 * Diffuse share of a month's mean day, a cross-check only.
 *
 * @param clearness Monthly clearness index, 0.3 to 0.8.
 * @param sunsetHourAngleDeg Hour angle of sunset on the mean day, degrees.
 * @source Erbs, Klein & Duffie 1982, monthly correlation (from memory, unverified).
 * @example erbsMonthly(0.5, 75) // 0.3911
 */
export function erbsMonthly(clearness: number, sunsetHourAngleDeg: Degrees): number {
  const k = clearness
  if (sunsetHourAngleDeg <= 81.4) return 1.391 + k * (-3.56 + k * (4.189 - k * 2.137))
  return 1.311 + k * (-3.022 + k * (3.427 - k * 1.821))
}
