import type { Degrees } from '../values/index.js'

/** Mean radius of the Earth, km (IUGG R1 6371.0088, from memory, unverified). */
const EARTH_RADIUS_KM = 6371.0088

/**
 * Great-circle distance by the haversine formula.
 *
 * @param fromLatitudeDeg @param fromLongitudeDeg First place, degrees, north and east positive.
 * @param toLatitudeDeg @param toLongitudeDeg Second place, likewise.
 * @returns km
 */
export function distanceKm(
  fromLatitudeDeg: Degrees,
  fromLongitudeDeg: Degrees,
  toLatitudeDeg: Degrees,
  toLongitudeDeg: Degrees,
): number {
  const radians = Math.PI / 180
  const sinHalfNorth = Math.sin(((toLatitudeDeg - fromLatitudeDeg) * radians) / 2)
  const sinHalfEast = Math.sin(((toLongitudeDeg - fromLongitudeDeg) * radians) / 2)
  const haversine =
    sinHalfNorth ** 2 + Math.cos(fromLatitudeDeg * radians) * Math.cos(toLatitudeDeg * radians) * sinHalfEast ** 2
  return 2 * EARTH_RADIUS_KM * Math.asin(Math.min(1, Math.sqrt(haversine)))
}
