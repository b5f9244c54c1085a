import type { ClimateRegion } from '../tables/climate/index.js'
import type { House } from './house.js'
import { nearestWithin, REACH_KM } from './nearest-sites.js'
import { siteQuality } from './site-quality.js'

/** West of this meridian neighbours agree so well that nearness counts, degrees. */
const WEST_DEG = -104

/**
 * The part of the country that a house lies in, as far as stations near it tell: islands, Alaska and coasts by the nearest
 * site whose region is known, the interior by the house's own longitude.
 *
 * @returns Undefined where no site is within reach.
 * @limits There is no coastline here: within some 30 km of the line 60 km from the ocean a house may count on either side.
 */
export function climateRegion(house: Pick<House, 'latitudeDeg' | 'longitudeDeg'>): ClimateRegion | undefined {
  const nearest = nearestWithin(house, REACH_KM)
  if (nearest === undefined) return undefined
  const region = siteQuality(nearest.site).region
  if (region !== 'interior_east' && region !== 'interior_west') return region
  return house.longitudeDeg < WEST_DEG ? 'interior_west' : 'interior_east'
}

/** Whether single typical years are mostly noise there, so that many sites count nearly alike. */
export function isEast(region: ClimateRegion | undefined): boolean {
  return region === 'interior_east' || region === 'east_gulf_coast'
}
