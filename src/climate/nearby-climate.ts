import { FLAGGED_SITE_SOURCE } from '../tables/climate/index.js'
import type { Worksheet } from '../worksheet/index.js'
import { blendSites } from './blend-sites.js'
import { chooseSites, SITES_AVERAGED, type ChosenSites } from './choose-sites.js'
import type { House } from './house.js'
import { recordMonthly } from './record-monthly.js'
import { saySite } from './say-site.js'
import { yearlySum } from './site-clearness.js'
import { explainSiteFlag, radiationFlags } from './site-flags.js'
import type { MonthlyClimate } from './types.js'

/**
 * Climate of a house as the distance-weighted mean of the three nearest built-in sites whose sunshine is believed. A
 * nearer site that is left out is named with its figures, and what it would change goes into `leftOutRel`.
 *
 * @param house Place of the house; height and clock are optional.
 * @param worksheet Takes the sites, the defaults and the warnings.
 * @throws StageError when no site is within 500 km.
 */
export function nearbyClimate(house: House, worksheet: Worksheet): MonthlyClimate {
  const chosen = chooseSites(house)
  const { used } = chosen
  const names = used.map((one) => `${one.site.name} (${Math.round(one.distanceKm)} km)`)
  const name = `nearby: ${names.join(', ')}`
  const climate = { ...blendSites(used, house, name), leftOutRel: changeByLeftOut(chosen, house) }
  recordMonthly(climate, used, house, worksheet)
  recordLeftOut(chosen, climate, house, worksheet)
  if (used.length < SITES_AVERAGED) {
    worksheet.find({
      severity: 'note',
      id: 'climate.fewer-sites',
      message: `only ${used.length} of ${SITES_AVERAGED} climate sites within reach, so that the scatter of single sites is not averaged out`,
      where: 'site.climate',
    })
  }
  return climate
}

/** Relative change of the year's irradiation if distance alone chose the sites, without its sign. */
function changeByLeftOut({ used, leftOut }: ChosenSites, house: House): number {
  if (leftOut.length === 0) return 0
  const nearest = [...used, ...leftOut].toSorted((a, b) => a.distanceKm - b.distanceKm).slice(0, SITES_AVERAGED)
  const year = (sites: ChosenSites['used']): number => yearlySum(blendSites(sites, house, '').ghiWhM2Day)
  return Math.abs(year(nearest) / year(used) - 1)
}

function recordLeftOut({ leftOut }: ChosenSites, climate: MonthlyClimate, house: House, worksheet: Worksheet): void {
  const mean = yearlySum(climate.ghiWhM2Day) / 1000
  for (const one of leftOut) {
    const { site } = one
    const heightDifferenceM = house.elevationM === undefined ? undefined : site.elevationM - house.elevationM
    const alone = yearlySum(blendSites([one], house, '').ghiWhM2Day) / 1000
    worksheet.find({
      severity: 'warning',
      id: 'climate.near-site-left-out',
      message: `${saySite({ ...site, distanceKm: one.distanceKm, heightDifferenceM })} is one of the three nearest but left out, as ${radiationFlags(site).map(explainSiteFlag).join('; ')}: alone it gives ${alone.toFixed(0)} kWh/m2 a year on the level, the sites used ${mean.toFixed(0)} kWh/m2; to count what is left out would change the mean by ${(100 * climate.leftOutRel).toFixed(1)} %, which is in the uncertainty`,
      where: 'site.climate',
      source: FLAGGED_SITE_SOURCE,
      fix: `if you know the place to be as that site says, set site.climate to { station: '${site.wmo}' }; or name an hourly weather file`,
    })
  }
}
