import { RADIANS_PER_DEGREE, type Degrees } from '../values/index.js'

/**
 * Relative optical air mass at sea level.
 *
 * @param zenithDeg Zenith angle of the sun, degrees, 0 to 90 (values beyond are taken as 90).
 * @source Kasten & Young 1989 (formula from memory, unverified).
 * @example airMass(60) // 1.9943
 */
export function airMass(zenithDeg: Degrees): number {
  const z = Math.min(90, Math.max(0, zenithDeg))
  return 1 / (Math.cos(z * RADIANS_PER_DEGREE) + bending(z))
}

/** What the formula adds to the cosine, for the bent path near the horizon. */
function bending(zenithDeg: Degrees): number {
  return 0.50572 * (96.07995 - zenithDeg) ** -1.6364
}

const STEPS_PER_DEG = 32
let bendings: Float64Array | undefined

/**
 * The same for hot loops: what is added to the cosine is read from a table, by straight lines between 32 steps a degree.
 * At the horizon that is 1 part in 50,000 off, elsewhere far less.
 *
 * @returns Air mass for a zenith angle, degrees, 0 to 90, and its cosine.
 */
export function airMassReader(): (zenithDeg: Degrees, cosZenith: number) => number {
  const table = (bendings ??= Float64Array.from({ length: 90 * STEPS_PER_DEG + 2 }, (_, i) =>
    bending(i / STEPS_PER_DEG),
  ))
  return (zenithDeg, cosZenith) => {
    const place = zenithDeg * STEPS_PER_DEG
    const step = Math.floor(place)
    const low = table[step]!
    return 1 / (cosZenith + low + (place - step) * (table[step + 1]! - low))
  }
}
