import type { House } from './house.js'
import { outOfReach, sitesByDistance, type SiteAtDistance } from './nearest-sites.js'
import { sticksOut } from './site-flags.js'
import type { ClimateSite } from './site-table.js'

/** How many sites are averaged: one alone inherits the 9 % scatter of the modelled typical years. */
export const SITES_AVERAGED = 3

/** The sites that a nearby climate is made from, and the nearer ones that it leaves out. Nearest first. */
export interface ChosenSites {
  readonly used: readonly SiteAtDistance[]
  /** Sites that distance alone would have taken. */
  readonly leftOut: readonly SiteAtDistance[]
}

/** West of this meridian, Alaska apart, neighbours agree so well that a site which differs tells of its place, degrees. */
const WEST_DEG = -104
const ISLANDS = new Set(['HI', 'PR', 'GU'])

/**
 * Whether a site that sticks out against its neighbours tells of the model behind its typical year rather than of its
 * place.
 *
 * In the east and in Alaska single typical years scatter by 4 and 9 % about their neighbours however near, so that one
 * which sticks out is left out. In the west pairs within 20 km agree to 2 %: fog coasts and mountains differ from what
 * surrounds them, as do windward sides of islands (judgement, too few pairs). Other flags, low clearness under a low sun
 * and the clock of the Aleutians, are no scatter.
 *
 * @source Leave-one-out comparison of the typical years of 1,020 US stations; see FLAGGED_SITE_SOURCE.
 */
export function isScatter(site: ClimateSite): boolean {
  if (ISLANDS.has(site.state) || (site.longitudeDeg < WEST_DEG && site.state !== 'AK')) return false
  return sticksOut(site)
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
