import { FLAGGED_SITE_SOURCE } from '../tables/climate/index.js'
import type { Worksheet } from '../worksheet/index.js'
import { blendSites } from './blend-sites.js'
import { alone, chooseSites, SITES_AVERAGED, withLeftOut, type ChosenSites, type WeightedSite } from './choose-sites.js'
import type { House } from './house.js'
import { recordDoubts } from './record-doubts.js'
import { recordMonthly } from './record-monthly.js'
import { NEAR_KM, saySite } from './say-site.js'
import { yearlySum } from './site-clearness.js'
import { explainSiteFlag, radiationFlags } from './site-flags.js'
import type { MonthlyClimate } from './types.js'

/**
 * Climate of a house as the weighted mean of the nearest built-in sites whose sunshine is believed, see `chooseSites`. A
 * nearer site that is left out is named with its figures; what it would change is `leftOutRel`.
 *
 * @param house Place of the house; height and clock are optional.
 * @param worksheet Takes the sites, the defaults and the warnings.
 * @throws StageError when no site is within 500 km.
 */
export function nearbyClimate(house: House, worksheet: Worksheet): MonthlyClimate {
  const chosen = chooseSites(house)
  const { used } = chosen
  const names = used.slice(0, NAMED).map((one) => `${one.site.name} (${Math.round(one.distanceKm)} km)`)
  const more = used.length > NAMED ? ` and ${used.length - NAMED} more` : ''
  const name = `nearby: ${names.join(', ')}${more}`
  const climate = { ...blendSites(used, house, name), leftOutRel: changeByLeftOut(chosen, house) }
  recordMonthly(climate, used, house, worksheet)
  recordLeftOut(chosen, climate, house, worksheet)
  recordDoubts(used, house, worksheet)
  if (used.length < SITES_AVERAGED) {
    worksheet.find({
      severity: 'note',
      id: 'climate.fewer-sites',
      message: `only ${used.length} of ${SITES_AVERAGED} climate sites within reach, so that the scatter of single sites is averaged out less`,
      where: 'site.climate',
    })
  }
  return climate
}

/** Sites that the name of a climate lists. */
const NAMED = 3

/** Relative change of the year's irradiation if distance alone chose the sites, without its sign. */
function changeByLeftOut(chosen: ChosenSites, house: House): number {
  if (chosen.leftOut.length === 0) return 0
  const year = (sites: readonly WeightedSite[]): number => yearlySum(blendSites(sites, house, '').ghiWhM2Day)
  return Math.abs(year(withLeftOut(chosen, house)) / year(chosen.used) - 1)
}

function recordLeftOut({ leftOut }: ChosenSites, climate: MonthlyClimate, house: House, worksheet: Worksheet): void {
  const mean = yearlySum(climate.ghiWhM2Day) / 1000
  for (const one of leftOut) {
    const { site } = one
    const heightDifferenceM = house.elevationM === undefined ? undefined : site.elevationM - house.elevationM
    const single = yearlySum(blendSites([alone(one, house)], house, '').ghiWhM2Day) / 1000
    worksheet.find({
      // What is farther away says less about the place.
      severity: one.distanceKm <= NEAR_KM ? 'warning' : 'note',
      id: 'climate.near-site-left-out',
      message: `${saySite({ ...site, distanceKm: one.distanceKm, heightDifferenceM })} is one of the nearest ${SITES_AVERAGED} but left out, as ${radiationFlags(site).map(explainSiteFlag).join('; ')}: alone it gives ${single.toFixed(0)} kWh/m2 a year on the level, the sites used ${mean.toFixed(0)} kWh/m2; to count what is left out would change the mean by ${(100 * climate.leftOutRel).toFixed(1)} %, which is in the uncertainty`,
      where: 'site.climate',
      source: FLAGGED_SITE_SOURCE,
      fix: `if you know the place to be as that site says, set site.climate to { station: '${site.wmo}' }; or name an hourly weather file`,
    })
  }
}
