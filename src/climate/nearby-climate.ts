import type { Worksheet } from '../worksheet/index.js'
import { blendSites } from './blend-sites.js'
import type { House } from './house.js'
import { outOfReach, sitesByDistance, type SiteAtDistance } from './nearest-sites.js'
import { recordMonthly } from './record-monthly.js'
import { radiationFlags } from './site-flags.js'
import type { MonthlyClimate } from './types.js'

/** How many sites are averaged: one alone inherits the 9 % scatter of the modelled typical years. */
const SITES_AVERAGED = 3

/**
 * Climate of a house as the distance-weighted mean of the three nearest built-in sites that passed every check of
 * their monthly means. Flagged sites are used only where no other is within reach, and then a warning says so.
 *
 * @param house Place of the house; height and clock are optional.
 * @param worksheet Takes the sites, the defaults and the warnings.
 * @throws StageError when no site is within 500 km.
 */
export function nearbyClimate(house: House, worksheet: Worksheet): MonthlyClimate {
  const near = chooseSites(house)
  const names = near.map((one) => `${one.site.name} (${Math.round(one.distanceKm)} km)`)
  const climate = blendSites(near, house, `nearby: ${names.join(', ')}`)
  recordMonthly(climate, near, house, worksheet)
  if (near.length < SITES_AVERAGED) {
    worksheet.find({
      severity: 'note',
      id: 'climate.fewer-sites',
      message: `only ${near.length} of ${SITES_AVERAGED} climate sites within reach, so that the scatter of single sites is not averaged out`,
      where: 'site.climate',
    })
  }
  return climate
}

function chooseSites(house: House): SiteAtDistance[] {
  const within = sitesByDistance(house)
  const passed = within.filter((one) => radiationFlags(one.site).length === 0)
  const near = (passed.length > 0 ? passed : within).slice(0, SITES_AVERAGED)
  if (near.length === 0) throw outOfReach(house)
  return near
}
