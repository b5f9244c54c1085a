/** Solar constant used unless the project names another: 1361.1 W/m2 (Gueymard 2018, from memory, unverified). */
export const SOLAR_CONSTANT_W_M2 = 1361.1

/**
 * Correction of the solar constant for the distance of the sun.
 *
 * @param dayOfYear 1 = 1 January.
 * @source Spencer 1971, eccentricity series.
 * @example eccentricityFactor(1) // 1.035050
 */
export function eccentricityFactor(dayOfYear: number): number {
  const b = (2 * Math.PI * (dayOfYear - 1)) / 365
  return (
    1.00011 + 0.034221 * Math.cos(b) + 0.00128 * Math.sin(b) + 0.000719 * Math.cos(2 * b) + 0.000077 * Math.sin(2 * b)
  )
}
