import { StageError, type Worksheet } from '../worksheet/index.js'
import { blendSites } from './blend-sites.js'
import { alone } from './choose-sites.js'
import { distanceKm } from './distance.js'
import type { House } from './house.js'
import { outOfReach, REACH_KM, sitesByDistance } from './nearest-sites.js'
import { recordMonthly } from './record-monthly.js'
import { poolSites } from './site-table.js'
import type { MonthlyClimate } from './types.js'

/**
 * Climate of a house from one built-in site that the person chose.
 *
 * @param wmo Station number, six digits as text.
 * @param house Place of the house; height and clock are optional.
 * @param worksheet Takes the site, the defaults and the warnings.
 * @throws StageError when there is no such station or it is more than 500 km away.
 */
export function stationClimate(wmo: string, house: House, worksheet: Worksheet): MonthlyClimate {
  const site = poolSites().find((one) => one.wmo === wmo)
  if (site === undefined) {
    const nearest = sitesByDistance(house).slice(0, 3)
    if (nearest.length === 0) throw outOfReach(house)
    const named = nearest.map((one) => `'${one.site.wmo}' ${one.site.name}, ${one.site.state}`).join('; ')
    throw new StageError(
      'site.climate.station',
      `no built-in climate site has the station number '${wmo}'`,
      `write one of the nearest: ${named}; \`gablewatt list-sites\` shows all`,
    )
  }
  const distance = distanceKm(house.latitudeDeg, house.longitudeDeg, site.latitudeDeg, site.longitudeDeg)
  if (distance > REACH_KM) {
    throw new StageError(
      'site.climate.station',
      `station ${wmo} (${site.name}, ${site.state}) is ${Math.round(distance)} km from the house; a site may be at most ${REACH_KM} km away`,
      'choose a nearer station, set site.climate to nearby, or check site.latitude_deg and site.longitude_deg (east is positive)',
    )
  }
  const near = [alone({ site, distanceKm: distance }, house)]
  const climate = blendSites(near, house, `${site.name}, ${site.state}`)
  recordMonthly(climate, near, house, worksheet)
  return climate
}
