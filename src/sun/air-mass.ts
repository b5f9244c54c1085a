/**
 * Relative optical air mass at sea level.
 *
 * @param zenithDeg Zenith angle of the sun, degrees, 0 to 90 (values beyond are taken as 90).
 * @source Kasten & Young 1989 (formula from memory, unverified).
 * @example airMass(60) // 1.9943
 */
export function airMass(zenithDeg: number): number {
  const z = Math.min(90, Math.max(0, zenithDeg))
  return 1 / (Math.cos((z * Math.PI) / 180) + 0.50572 * (96.07995 - z) ** -1.6364)
}
