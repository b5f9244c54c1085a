import { RADIANS_PER_DEGREE, type Degrees } from '../values/index.js'

/** Refraction that the ephemeris library adds, in degrees, for a TRUE altitude in degrees (Meeus, eq. 16.4; constant below the horizon). */
function refractionDeg(trueAltitudeDeg: Degrees): Degrees {
  const h = Math.max(0, trueAltitudeDeg) * RADIANS_PER_DEGREE
  return 0.0002967 / Math.tan(h + 0.00312536 / (h + 0.08901179)) / RADIANS_PER_DEGREE
}

/**
 * Takes refraction back out of an apparent altitude, since the published radiation formulas want the true one.
 *
 * @param apparentDeg Apparent altitude of the sun, degrees above the horizon.
 * @returns True (geometric) altitude, degrees.
 * @source Meeus, Astronomical Algorithms, eq. 16.4, in the form that the ephemeris library (suncalc 2) adds it.
 */
export function trueAltitudeDeg(apparentDeg: Degrees): Degrees {
  const atHorizon = refractionDeg(0)
  if (apparentDeg <= atHorizon) return apparentDeg - atHorizon
  let altitude = apparentDeg
  for (let round = 0; round < 30; round += 1) {
    const next = apparentDeg - refractionDeg(altitude)
    if (Math.abs(next - altitude) < 1e-12) return next
    altitude = next
  }
  return altitude
}
