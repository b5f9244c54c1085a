import {
  DAY_SHAPE_SOURCE,
  FLAGGED_SITE_SOURCE,
  LAPSE_RATE_K_PER_M,
  LAPSE_RATE_SOURCE,
  SITING_SOURCE,
  TYPICAL_YEAR_SOURCE,
} from '../tables/climate/index.js'
import type { Worksheet } from '../worksheet/index.js'
import { blendSites } from './blend-sites.js'
import { METRES_PER_FOOT, type House } from './house.js'
import { alone, type WeightedSite, weighted } from './choose-sites.js'
import { climateRegion, isEast } from './climate-region.js'
import { FAR_KM, HIGH_M, NEAR_KM, saySite } from './say-site.js'
import { yearlySum } from './site-clearness.js'
import { explainSiteFlag, radiationFlags } from './site-flags.js'
import { siteQuality } from './site-quality.js'
import type { MonthlyClimate } from './types.js'

/** Beyond this latitude there are days without sunrise or sunset, degrees. */
const POLAR_DEG = 66
/** Share of the mean below which a site hardly counts. */
const LITTLE = 0.1

/** Writes down what a monthly climate was made from: sites, defaults, and what is doubtful about them. */
export function recordMonthly(
  climate: MonthlyClimate,
  near: readonly WeightedSite[],
  house: House,
  worksheet: Worksheet,
): void {
  recordDefaults(climate, house, worksheet)
  recordSteps(climate, near, house, worksheet)
  recordShape(climate, near, worksheet)
  worksheet.find({
    severity: 'note',
    id: 'climate.sites-used',
    message: `sun, temperature and wind come from ${climate.sites.map(sayShare).join('; ')}`,
    where: 'site.climate',
    source: TYPICAL_YEAR_SOURCE,
  })
  // What hardly counts needs no warning.
  const counted = climate.sites.filter((site) => site.weight >= LITTLE)
  // Sites beyond the first add to the mean what single typical years scatter, however far they are.
  const far = climate.sites.every((site) => site.distanceKm > FAR_KM) ? climate.sites.slice(0, 1) : []
  if (far.length > 0) {
    worksheet.find({
      severity: 'warning',
      id: 'climate.site-far',
      message: `no climate site within ${FAR_KM} km of the house; the first is ${far.map(saySite).join('; ')}`,
      where: 'site.climate',
      fix: 'look whether the land between is alike, or set site.climate to { epw: FILE } with an hourly file for a nearer place',
    })
  }
  const high = counted.filter((site) => Math.abs(site.heightDifferenceM ?? 0) > HIGH_M)
  if (high.length > 0) {
    worksheet.find({
      severity: 'warning',
      id: 'climate.site-height',
      message: `climate site more than ${HIGH_M} m higher or lower than the house: ${high.map(saySite).join('; ')}`,
      where: 'site.elevation_ft',
      fix: 'check site.elevation_ft; temperature is corrected for height but sun, fog and snow are not',
    })
  }
  if (Math.abs(climate.latitudeDeg) > POLAR_DEG) {
    worksheet.find({
      severity: 'note',
      id: 'climate.polar',
      message: `at ${climate.latitudeDeg.toFixed(1)} deg of latitude the sun stays down, or up, for part of the year: one mean day stands badly for the months between, and nothing was compared with hours beyond 62 deg`,
      where: 'site.latitude_deg',
      source: DAY_SHAPE_SOURCE,
      fix: 'use an hourly weather file (site.climate: { epw: FILE })',
    })
  }
  const tableOffsetH = near[0]?.site.utcOffsetH
  if (house.utcOffsetH !== undefined && tableOffsetH !== undefined && house.utcOffsetH !== tableOffsetH) {
    worksheet.find({
      severity: 'warning',
      id: 'climate.utc-offset',
      message: `the project's clock is UTC ${house.utcOffsetH} h, that of the nearest climate site UTC ${tableOffsetH} h`,
      where: 'site.utc_offset_h',
      fix: 'state standard time without daylight saving; near the border of a time zone the project may be right',
    })
  }
  for (const [index, one] of near.entries()) {
    const { site } = one
    const flags = radiationFlags(site)
    const hardlyCounts = climate.sites[index]!.weight < LITTLE
    if (flags.length === 0 || (hardlyCounts && one.distanceKm > NEAR_KM)) continue
    const others = near.filter((other) => other !== one)
    worksheet.find({
      severity: 'warning',
      id: 'climate.station-flagged',
      message: `${site.name}, ${site.state} failed a check of the climate table: ${flags.map(explainSiteFlag).join('; ')}${others.length === 0 ? '' : sayBeside(one, others, house)}`,
      where: 'site.climate',
      source: FLAGGED_SITE_SOURCE,
      fix: 'compare with a neighbour (site.climate: { station: NUMBER }) or with an hourly weather file (site.climate: { epw: FILE })',
    })
  }
}

/** What a flagged site and the others used would give, each without the other. */
function sayBeside(one: WeightedSite, others: readonly WeightedSite[], house: House): string {
  const east = isEast(climateRegion(house))
  const year = (sites: readonly WeightedSite[]): string =>
    (yearlySum(blendSites(sites, house, '').ghiWhM2Day) / 1000).toFixed(0)
  return `; it is used, as this belongs to the place more often than not in the west, on the islands and under a low sun: alone it gives ${year([alone(one, house)])} kWh/m2 a year on the level, the other sites used ${year(weighted(others, east))} kWh/m2`
}

function sayShare(site: MonthlyClimate['sites'][number]): string {
  if (site.weight === 1) return saySite(site)
  const share = site.weight < 0.005 ? 'under 1' : Math.round(100 * site.weight).toFixed(0)
  return `${share} % ${saySite(site)}`
}

function recordDefaults(climate: MonthlyClimate, house: House, worksheet: Worksheet): void {
  const nearest = climate.sites[0]
  if (nearest === undefined) return
  if (house.utcOffsetH === undefined) {
    worksheet.assume({
      path: 'site.utc_offset_h',
      value: climate.utcOffsetH,
      unit: 'h',
      why: `standard time of the nearest climate site, ${nearest.name}, ${nearest.state}`,
      source: TYPICAL_YEAR_SOURCE,
    })
  }
  if (house.elevationM === undefined) {
    worksheet.assume({
      path: 'site.elevation_ft',
      value: Math.round(climate.elevationM / METRES_PER_FOOT),
      unit: 'ft',
      why: 'the height of the climate sites, weighted as their climate is; temperatures belong to that height',
      source: TYPICAL_YEAR_SOURCE,
    })
  }
  worksheet.assume({
    path: 'site.climate.temperature_lapse',
    value: LAPSE_RATE_K_PER_M * 1000,
    unit: 'K/km',
    why: 'temperatures of the climate sites are carried to the height of the house with the mean fall of temperature with height',
    source: LAPSE_RATE_SOURCE,
  })
}

/** Says whose mornings and afternoons count, and which sites have none to give. */
function recordShape(climate: MonthlyClimate, near: readonly WeightedSite[], worksheet: Worksheet): void {
  const wrong = near.filter(({ site }) => !siteQuality(site).clockRight)
  if (climate.morning === undefined) {
    worksheet.assume({
      path: 'site.climate.day_shape',
      value: 'symmetric day',
      unit: '',
      why: 'the clock of the typical year is wrong at every site used, so that mornings count as afternoons',
      source: DAY_SHAPE_SOURCE,
    })
  }
  if (wrong.length === 0) return
  worksheet.find({
    severity: climate.morning === undefined ? 'warning' : 'note',
    id: 'climate.site-clock-wrong',
    message: `the hours of the typical year stand beside the sun at ${wrong.map(({ site }) => `${site.name}, ${site.state}`).join('; ')}: its monthly sums count, ${climate.morning === undefined ? 'its mornings and afternoons cannot, so the day is taken as symmetric and east and west roofs are alike' : 'its mornings and afternoons do not; those of the other sites do'}`,
    where: 'site.climate',
    source: DAY_SHAPE_SOURCE,
  })
}

function recordSteps(climate: MonthlyClimate, near: readonly WeightedSite[], house: House, worksheet: Worksheet): void {
  const east = isEast(climateRegion(house))
  worksheet.note({
    id: 'climate.weights',
    says: 'Weight of each climate site, by effective distance: 100 m of height count as 20 km',
    formula: east
      ? 'w_i = (1 / d_i) / sum(1 / d), d = sqrt(distance^2 + (0.2 km/m * dh)^2), at least 20 km'
      : 'w_i = (1 / d_i^2) / sum(1 / d^2), d = sqrt(distance^2 + (0.2 km/m * dh)^2), at least 10 km',
    inputs: near.map(({ site, effectiveKm }, index) => ({
      symbol: `d_${index + 1}`,
      value: effectiveKm,
      unit: 'km',
      from: `climate table, station ${site.wmo}`,
    })),
    result: { symbol: 'w', value: climate.sites.map((site) => site.weight.toFixed(3)).join(', '), unit: '' },
    source: SITING_SOURCE,
  })
  worksheet.step({
    id: 'climate.siting-error',
    says: 'Standard deviation of the year of sun on the level, as the house is not a climate site',
    formula: 's_siting by region and effective distance of the nearest site',
    inputs: [
      { symbol: 'region', value: climateRegion(house) ?? 'none', unit: '', from: 'nearest climate site, longitude' },
      {
        symbol: 'd_1',
        value: Math.min(...near.map(({ effectiveKm }) => effectiveKm)),
        unit: 'km',
        from: 'climate.weights',
      },
    ],
    result: { symbol: 's_siting', value: climate.sitingErrorRel * 100, unit: '%' },
    source: SITING_SOURCE,
    limits: 'measured against other stations, so an upper bound; nine in ten errors within 1.65 times the figure',
  })
  worksheet.step({
    id: 'climate.annual-irradiation',
    says: 'Global horizontal irradiation of the typical year at the house',
    formula: 'GHI_year = sum over months of K_month * H0_month(latitude) * days',
    inputs: [
      { symbol: 'latitude', value: climate.latitudeDeg, unit: 'deg', from: 'site.latitude_deg' },
      ...climate.clearness.map((value, month) => ({
        symbol: `K_${month + 1}`,
        value,
        unit: '',
        from: 'weighted clearness index of the climate sites',
      })),
    ],
    result: { symbol: 'GHI_year', value: yearlySum(climate.ghiWhM2Day) / 1000, unit: 'kWh/m2' },
    source: {
      document: 'Duffie & Beckman, Solar Engineering of Thermal Processes',
      place: 'eq. 1.10.3 with the mean days of Klein 1977',
      standing: 'from memory',
    },
  })
}
