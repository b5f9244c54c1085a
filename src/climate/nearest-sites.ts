import { StageError } from '../worksheet/index.js'
import { distanceKm } from './distance.js'
import type { House } from './house.js'
import { isDesigned, siteAtRow, sitePositions, type ClimateSite } from './site-table.js'

/** Beyond this distance a site says nothing about a house and the table is refused, km. */
export const REACH_KM = 500

type Place = Pick<House, 'latitudeDeg' | 'longitudeDeg'>

export interface SiteAtDistance {
  readonly site: ClimateSite
  readonly distanceKm: number
}

/**
 * The built-in sites within reach that have design temperatures, nearest first.
 *
 * @param place Degrees, north and east positive.
 * @param reachKm Largest distance, km.
 */
export function sitesByDistance(place: Place, reachKm: number = REACH_KM): SiteAtDistance[] {
  return rowsByDistance(place, reachKm)
    .filter((one) => isDesigned(one.row))
    .map((one) => ({ site: siteAtRow(one.row), distanceKm: one.distanceKm }))
}

/** All built-in sites within reach, those without design temperatures too, nearest first. */
export function poolByDistance(place: Place, reachKm: number = REACH_KM): SiteAtDistance[] {
  return rowsByDistance(place, reachKm).map((one) => ({ site: siteAtRow(one.row), distanceKm: one.distanceKm }))
}

function rowsByDistance(place: Place, reachKm: number): { row: number; distanceKm: number }[] {
  return rowsWithin(place, reachKm).sort((a, b) => a.distanceKm - b.distanceKm)
}

/** In the order of the table. */
function rowsWithin(place: Place, reachKm: number): { row: number; distanceKm: number }[] {
  const { latitudeDeg, longitudeDeg } = sitePositions()
  const near: { row: number; distanceKm: number }[] = []
  // One degree of latitude is never less than 110 km, so that most sites need no trigonometry.
  const bandDeg = reachKm / 110
  for (let row = 0; row < latitudeDeg.length; row++) {
    if (Math.abs(latitudeDeg[row]! - place.latitudeDeg) > bandDeg) continue
    const distance = distanceKm(place.latitudeDeg, place.longitudeDeg, latitudeDeg[row]!, longitudeDeg[row]!)
    if (distance <= reachKm) near.push({ row, distanceKm: distance })
  }
  return near
}

/** The built-in site with design temperatures that is nearest to a place, however far. */
export function nearestSite(place: Place): SiteAtDistance | undefined {
  return nearestWithin(place, REACH_KM) ?? nearestWithin(place, Infinity)
}

/** The nearest site with design temperatures within a distance, km. */
export function nearestWithin(place: Place, reachKm: number): SiteAtDistance | undefined {
  let nearest: { readonly row: number; readonly distanceKm: number } | undefined
  for (const one of rowsWithin(place, reachKm)) {
    if (isDesigned(one.row) && !(nearest !== undefined && nearest.distanceKm <= one.distanceKm)) nearest = one
  }
  return nearest === undefined ? undefined : { site: siteAtRow(nearest.row), distanceKm: nearest.distanceKm }
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
