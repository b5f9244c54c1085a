import type { House } from './house.js'
import { outOfReach, sitesByDistance, type SiteAtDistance } from './nearest-sites.js'
import { radiationFlags } from './site-flags.js'
import type { ClimateSite } from './site-table.js'

/** How many sites are averaged: one alone inherits the 9 % scatter of the modelled typical years. */
export const SITES_AVERAGED = 3

/** The sites that a nearby climate is made from, and the nearer ones that it leaves out. Nearest first. */
export interface ChosenSites {
  readonly used: readonly SiteAtDistance[]
  /** Sites that distance alone would have taken. */
  readonly leftOut: readonly SiteAtDistance[]
}

/** West of this meridian neighbours agree so well that a site which differs tells of its place, degrees. */
const WEST_DEG = -104
const ISLANDS_AND_ALASKA = new Set(['AK', 'HI', 'PR', 'GU'])

/**
 * Whether a site's flag tells of the model behind its typical year rather than of its place.
 *
 * In the east single typical years scatter by 4 % about their neighbours whatever the distance, so that one which
 * sticks out is left out. In the west, in Alaska and on the islands pairs within 20 km agree to 2 %: fog coasts,
 * windward sides and mountains differ from what surrounds them, and so do the low sun and the clocks of Alaska.
 *
 * @source Leave-one-out comparison of the typical years of 1,020 US stations; see FLAGGED_SITE_SOURCE.
 */
export function isScatter(site: ClimateSite): boolean {
  const ofItsPlace = site.longitudeDeg < WEST_DEG || ISLANDS_AND_ALASKA.has(site.state)
  return !ofItsPlace && radiationFlags(site).length > 0
}

/**
 * Chooses the sites for a house: the three nearest whose sunshine is believed; where none is, the nearest of all.
 *
 * @throws StageError when no site is within reach.
 */
export function chooseSites(house: House): ChosenSites {
  const within = sitesByDistance(house)
  const believed = within.filter((one) => !isScatter(one.site))
  const used = (believed.length > 0 ? believed : within).slice(0, SITES_AVERAGED)
  if (used.length === 0) throw outOfReach(house)
  return { used, leftOut: within.slice(0, SITES_AVERAGED).filter((one) => !used.includes(one)) }
}
