import { StageError } from '../worksheet/index.js'
import { distanceKm } from './distance.js'
import type { House } from './house.js'
import { siteAtRow, sitePositions, type ClimateSite } from './site-table.js'

/** Beyond this distance a site says nothing about a house and the table is refused, km. */
export const REACH_KM = 500

export interface SiteAtDistance {
  readonly site: ClimateSite
  readonly distanceKm: number
}

/**
 * The built-in sites within reach, nearest first.
 *
 * @param place Degrees, north and east positive.
 * @param reachKm Largest distance, km.
 */
export function sitesByDistance(
  place: Pick<House, 'latitudeDeg' | 'longitudeDeg'>,
  reachKm: number = REACH_KM,
): SiteAtDistance[] {
  const { latitudeDeg, longitudeDeg } = sitePositions()
  const near: { row: number; distanceKm: number }[] = []
  // One degree of latitude is never less than 110 km, so that most sites need no trigonometry.
  const bandDeg = reachKm / 110
  for (let row = 0; row < latitudeDeg.length; row++) {
    if (Math.abs(latitudeDeg[row]! - place.latitudeDeg) > bandDeg) continue
    const distance = distanceKm(place.latitudeDeg, place.longitudeDeg, latitudeDeg[row]!, longitudeDeg[row]!)
    if (distance <= reachKm) near.push({ row, distanceKm: distance })
  }
  near.sort((a, b) => a.distanceKm - b.distanceKm)
  return near.map((one) => ({ site: siteAtRow(one.row), distanceKm: one.distanceKm }))
}

/** The built-in site nearest to a place, however far. */
export function nearestSite(place: Pick<House, 'latitudeDeg' | 'longitudeDeg'>): SiteAtDistance | undefined {
  return sitesByDistance(place)[0] ?? sitesByDistance(place, Infinity)[0]
}

/** The error for a house that no built-in site can stand for. */
export function outOfReach(house: House): StageError {
  const nearest = nearestSite(house)
  const how =
    nearest === undefined
      ? ''
      : ` (the nearest is ${nearest.site.name}, ${nearest.site.state}, ${Math.round(nearest.distanceKm)} km away)`
  return new StageError(
    'site.latitude_deg',
    `no built-in climate site within ${REACH_KM} km of latitude ${house.latitudeDeg}, longitude ${house.longitudeDeg}${how}`,
    'check the sign of the longitude (east is positive, the Americas are negative); elsewhere set site.climate to { epw: FILE } with an hourly weather file in EPW format for the place',
  )
}
