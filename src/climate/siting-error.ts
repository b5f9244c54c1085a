import { BLENDED_SITING_ERROR_PCT, NEAREST_SITE_ERROR_PCT } from '../tables/climate/index.js'
import type { WeightedSite } from './choose-sites.js'
import { climateRegion } from './climate-region.js'
import type { House } from './house.js'

/** Upper ends of the first three classes of effective distance, km. */
const CLASS_ENDS_KM = [20, 50, 100] as const

/**
 * Standard deviation of the year's sun on the level at a house, as far as it comes from the house not being a station.
 * The spread among the sites says little about it, so it is not used.
 *
 * @param house Place of the house; height is optional.
 * @param chosen The sites used; one alone stands by its own noise too.
 * @returns Percent; 0 without sites.
 * @source See SITING_SOURCE; by region and effective distance of the nearest site.
 * @limits Measured against other stations, an upper bound against the long-term mean; 90 % of the errors within 1.65
 *   times the figure.
 */
export function sitingErrorPct(house: House, chosen: readonly Pick<WeightedSite, 'effectiveKm'>[]): number {
  const region = climateRegion(house)
  if (region === undefined || chosen.length === 0) return 0
  const nearestKm = Math.min(...chosen.map((one) => one.effectiveKm))
  const distanceClass = CLASS_ENDS_KM.findIndex((end) => nearestKm <= end)
  const blended = BLENDED_SITING_ERROR_PCT[region][distanceClass === -1 ? 3 : distanceClass]!
  return chosen.length === 1 ? Math.max(blended, NEAREST_SITE_ERROR_PCT[region]) : blended
}
