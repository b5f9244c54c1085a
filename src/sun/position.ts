import { getPosition } from 'suncalc'
import { trueAltitudeDeg } from './true-altitude.js'
import type { Degrees, Milliseconds } from '../values/index.js'

/** Where the sun stands. */
export interface SunPosition {
  /** Angle from the zenith without refraction, degrees. */
  readonly zenithDeg: Degrees
  /** Degrees clockwise from true north. */
  readonly azimuthDeg: Degrees
}

/**
 * Where the sun stands, geometrically (no refraction).
 *
 * @param instantMs Universal time, ms since 1970-01-01.
 * @param latitudeDeg North positive.
 * @param longitudeDeg East positive.
 * @source Meeus, Astronomical Algorithms, ch. 25 (low precision, 0.01 deg), through suncalc 2.
 * @example sunPosition(Date.UTC(2003, 9, 17, 19, 30, 30), 39.742476, -105.1786) // zenith 50.128, azimuth 194.34
 */
export function sunPosition(instantMs: Milliseconds, latitudeDeg: Degrees, longitudeDeg: Degrees): SunPosition {
  const { altitude, azimuth } = getPosition(new Date(instantMs), latitudeDeg, longitudeDeg)
  return { zenithDeg: 90 - trueAltitudeDeg(altitude), azimuthDeg: azimuth }
}
