import { RADIANS_PER_DEGREE, type Degrees } from '../values/index.js'

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
  const sinHalfNorth = Math.sin(((toLatitudeDeg - fromLatitudeDeg) * RADIANS_PER_DEGREE) / 2)
  const sinHalfEast = Math.sin(((toLongitudeDeg - fromLongitudeDeg) * RADIANS_PER_DEGREE) / 2)
  const haversine =
    sinHalfNorth ** 2 +
    Math.cos(fromLatitudeDeg * RADIANS_PER_DEGREE) * Math.cos(toLatitudeDeg * RADIANS_PER_DEGREE) * sinHalfEast ** 2
  return 2 * EARTH_RADIUS_KM * Math.asin(Math.min(1, Math.sqrt(haversine)))
}
