import { RADIANS_PER_DEGREE, type Degrees } from '../values/index.js'

/**
 * Hour angle of sunset.
 *
 * @param latitudeDeg North positive.
 * @param declinationDeg Declination of the sun, degrees.
 * @returns Degrees, 0 (polar night) to 180 (polar day).
 * @source Duffie & Beckman, eq. 1.6.10.
 */
export function sunsetHourAngleDeg(latitudeDeg: Degrees, declinationDeg: Degrees): Degrees {
  const cosine = -Math.tan(latitudeDeg * RADIANS_PER_DEGREE) * Math.tan(declinationDeg * RADIANS_PER_DEGREE)
  return Math.acos(Math.min(1, Math.max(-1, cosine))) / RADIANS_PER_DEGREE
}

/**
 * Extraterrestrial irradiation on a level surface over a day.
 *
 * @param latitudeDeg North positive.
 * @param declinationDeg Declination of the sun, degrees.
 * @param normalWM2 Extraterrestrial normal irradiance of that day, W/m2.
 * @returns Wh/m2.
 * @source Duffie & Beckman, eq. 1.10.3.
 */
export function dailyExtraterrestrialWhM2(latitudeDeg: Degrees, declinationDeg: Degrees, normalWM2: number): number {
  const ws = sunsetHourAngleDeg(latitudeDeg, declinationDeg) * RADIANS_PER_DEGREE
  const phi = latitudeDeg * RADIANS_PER_DEGREE
  const delta = declinationDeg * RADIANS_PER_DEGREE
  const day = Math.cos(phi) * Math.cos(delta) * Math.sin(ws) + ws * Math.sin(phi) * Math.sin(delta)
  return Math.max(0, (24 / Math.PI) * normalWM2 * day)
}

/**
 * Share of a day's GLOBAL irradiation that falls in the hour round an hour angle.
 *
 * @param hourAngleDeg Hour angle, degrees, afternoon positive.
 * @param sunsetDeg Hour angle of sunset, degrees.
 * @returns Per hour, 0 outside daylight.
 * @source Collares-Pereira & Rabl 1979 (Duffie & Beckman, eq. 2.13.2; from memory, unverified).
 * @example globalShareOfDay(-52.5, 107.37) // 0.0759
 */
export function globalShareOfDay(hourAngleDeg: Degrees, sunsetDeg: Degrees): number {
  const a = 0.409 + 0.5016 * Math.sin((sunsetDeg - 60) * RADIANS_PER_DEGREE)
  const b = 0.6609 - 0.4767 * Math.sin((sunsetDeg - 60) * RADIANS_PER_DEGREE)
  return diffuseShareOfDay(hourAngleDeg, sunsetDeg) * (a + b * Math.cos(hourAngleDeg * RADIANS_PER_DEGREE))
}

/**
 * Share of a day's DIFFUSE irradiation that falls in the hour round an hour angle.
 *
 * @param hourAngleDeg Hour angle, degrees, afternoon positive.
 * @param sunsetDeg Hour angle of sunset, degrees.
 * @returns Per hour, 0 outside daylight.
 * @source Liu & Jordan 1960 (Duffie & Beckman, eq. 2.13.4; from memory, unverified).
 * @example diffuseShareOfDay(22.5, 107.37)
 */
export function diffuseShareOfDay(hourAngleDeg: Degrees, sunsetDeg: Degrees): number {
  if (Math.abs(hourAngleDeg) >= sunsetDeg) return 0
  const ws = sunsetDeg * RADIANS_PER_DEGREE
  const numerator = Math.cos(hourAngleDeg * RADIANS_PER_DEGREE) - Math.cos(ws)
  return ((Math.PI / 24) * numerator) / (Math.sin(ws) - ws * Math.cos(ws))
}
