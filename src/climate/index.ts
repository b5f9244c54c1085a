export { blendSites } from './blend-sites.js'
export { checkClock } from './check-clock.js'
export { checkEpwLocation } from './check-epw-location.js'
export { alone, chooseSites, effectiveDistanceKm, weighted, type WeightedSite } from './choose-sites.js'
export { climateRegion, isEast } from './climate-region.js'
export { clockShift, closureRmsWM2, type ClockShift } from './clock-shift.js'
export { clearnessExponent, clearnessQuantile, dayTypes, highestClearness, type DayType } from './day-types.js'
export { coveredDays } from './series/covered-days.js'
export { seriesClimate } from './series/series-climate.js'
export { kindOfText, type FileKind } from './series/file-kind.js'
export { designTemperatures } from './design-temperatures.js'
export { distanceKm } from './distance.js'
export type { EpwLocation } from './epw-header.js'
export {
  dailyExtraterrestrialWhM2,
  DAYS_IN_MONTH,
  MEAN_DAY_OF_YEAR,
  monthlyExtraterrestrialWhM2Day,
} from './extraterrestrial.js'
export { findSite, type FoundSite } from './find-site.js'
export { hourlyClimate } from './hourly-climate.js'
export { houseOf, METRES_PER_FOOT, type House } from './house.js'
export { listSites, type ListedSite } from './list-sites.js'
export { monthlyFromHourly } from './monthly-from-hourly.js'
export { nearbyClimate } from './nearby-climate.js'
export { nearestSite } from './nearest-sites.js'
export { parseEpw, type EpwFile } from './parse-epw.js'
export { siteClimate, weatherFileOf } from './site-climate.js'
export { explainSiteFlag } from './site-flags.js'
export { siteQuality, type SiteQuality } from './site-quality.js'
export {
  climateSites,
  monthlyRecord,
  poolSites,
  siteRecord,
  type ClimateSite,
  type MonthlyRecord,
  type SiteRecord,
} from './site-table.js'
export { sitingErrorPct } from './siting-error.js'
export { nearestSnowfall, type NearSnowfall } from './snowfall.js'
export { stationClimate } from './station-climate.js'
export type {
  Climate,
  ClimateSiteUse,
  DesignTemperature,
  DesignTemperatures,
  HourlyClimate,
  MonthlyClimate,
  MorningShares,
} from './types.js'
