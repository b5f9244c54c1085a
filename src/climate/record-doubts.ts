import { SITING_SOURCE } from '../tables/climate/index.js'
import type { Worksheet } from '../worksheet/index.js'
import type { WeightedSite } from './choose-sites.js'
import { climateRegion } from './climate-region.js'
import type { House } from './house.js'
import { saySite } from './say-site.js'
import { siteClearness } from './site-clearness.js'
import { monthlyRecord } from './site-table.js'

/** Sites that tell what the sun does about a house on an island, km. */
const ISLAND_REACH_KM = 150
/** Clearness over the year that differs by more than this is of two sides of an island. */
const SIDES_DIFFER_REL = 0.1
/** A house on the Pacific coast nearer than this to a site shares its fog, km. */
const SAME_FOG_KM = 10

/** Warns where a mean of sites may be of a place that is neither of them: between sides of an island, on fog coasts. */
export function recordDoubts(used: readonly WeightedSite[], house: House, worksheet: Worksheet): void {
  const region = climateRegion(house)
  const nearest = used[0]
  if (nearest === undefined) return
  const said = (one: WeightedSite): string =>
    saySite({
      ...one.site,
      distanceKm: one.distanceKm,
      heightDifferenceM: house.elevationM === undefined ? undefined : one.site.elevationM - house.elevationM,
    })
  if (region === 'islands' && nearest.effectiveKm > SAME_FOG_KM) {
    const about = used
      .filter((one) => one.distanceKm <= ISLAND_REACH_KM)
      .map((one) => ({ one, clearness: siteClearness(monthlyRecord(one.site), one.site.latitudeDeg).annualClearness }))
      .toSorted((a, b) => a.clearness - b.clearness)
    const [dull, bright] = [about[0], about.at(-1)]
    if (dull !== undefined && bright !== undefined && bright.clearness > (1 + SIDES_DIFFER_REL) * dull.clearness) {
      worksheet.find({
        severity: 'warning',
        id: 'climate.sides-of-island',
        message: `the climate sites about the house differ by ${(100 * (bright.clearness / dull.clearness - 1)).toFixed(0)} % in the year's sun, from ${said(dull.one)} to ${said(bright.one)}: windward and leeward sides of an island differ so within a few km, and their mean may be of neither`,
        where: 'site.climate',
        source: SITING_SOURCE,
        fix: 'if the house lies on the side of one of them, name it as site.climate: { station: NUMBER }; or name an hourly weather file for the place',
      })
    }
  }
  if (region === 'pacific_coast' && nearest.effectiveKm > SAME_FOG_KM) {
    worksheet.find({
      severity: 'warning',
      id: 'climate.fog-coast',
      message: `the nearest climate site on the Pacific coast is ${said(nearest)}: fog and low cloud reach some km inland and end at the first hills, so that a house at the water may have less sun than sites behind them, and one behind them more`,
      where: 'site.climate',
      source: SITING_SOURCE,
      fix: 'if one of the sites used lies as the house does, name it as site.climate: { station: NUMBER }; or name an hourly weather file for the place',
    })
  }
}
