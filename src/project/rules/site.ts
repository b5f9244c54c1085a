import type { HorizonPoint, Site } from '../project-types.generated.js'
import { showNumber } from '../words.js'
import type { Report, Rule } from './rule.js'

/** A latitude below this that is a longitude of the Americas, beside a longitude that is a latitude there: deg. */
const SWAPPED_BELOW_DEG = -66
const SWAPPED_LONGITUDES_DEG = [17, 72] as const
/** Time zones bulge; more than this between sun time and clock time is a mistake, h. */
const MOST_ZONE_OFFSET_H = 3.5
const DEG_PER_HOUR = 15

/** The place makes sense, and the horizon goes once round the compass. */
export const checkSite: Rule = ({ site }, report) => {
  const { latitude_deg: latitude, longitude_deg: longitude, utc_offset_h: offset } = site
  if (isSwapped(site)) {
    const message = `${latitude} deg beside a longitude of ${longitude} deg lies on the ice, and the other way round in the Americas: latitude and longitude are swapped; a house that is there needs a weather file of the place (site.climate)`
    report(['site', 'latitude_deg'], message)
  }
  if (offset !== undefined) {
    const apart = hoursApart(longitude / DEG_PER_HOUR, offset)
    if (apart > MOST_ZONE_OFFSET_H) {
      const signHelps = hoursApart(-longitude / DEG_PER_HOUR, offset) <= MOST_ZONE_OFFSET_H
      const fix = signHelps ? `did you mean ${-longitude}? West is negative` : 'check the sign and utc_offset_h'
      const message = `${longitude} deg and utc_offset_h ${offset} are ${showNumber(Number(apart.toFixed(1)))} h apart; ${fix}`
      report(['site', 'longitude_deg'], message)
    }
  }
  if (site.horizon !== undefined) checkHorizon(site.horizon, report)
}

/** A weather file says where it was measured, and is compared with the house. */
function isSwapped({ latitude_deg: latitude, longitude_deg: longitude, climate }: Site): boolean {
  const [low, high] = SWAPPED_LONGITUDES_DEG
  const hasFile = typeof climate === 'object' && ('epw' in climate || 'file' in climate)
  return latitude < SWAPPED_BELOW_DEG && longitude >= low && longitude <= high && !hasFile
}

/** Difference of two clocks, at most 12 h: the day ends at the date line. */
function hoursApart(a: number, b: number): number {
  const apart = Math.abs(a - b) % 24
  return Math.min(apart, 24 - apart)
}

function checkHorizon(points: readonly HorizonPoint[], report: Report): void {
  points.forEach(({ azimuth_deg: azimuth }, i) => {
    const before = points[i - 1]?.azimuth_deg
    if (before === undefined || azimuth > before) return
    const path = ['site', 'horizon', i, 'azimuth_deg']
    if (azimuth === before) report(path, `${azimuth} deg stands twice; keep one point for each direction`)
    else report(path, `${azimuth} deg stands after ${before} deg; list the points by increasing azimuth`)
  })
  const [first] = points
  const last = points.at(-1)
  if (first?.azimuth_deg === 0 && last?.azimuth_deg === 360 && first.elevation_deg !== last.elevation_deg) {
    const path = ['site', 'horizon', points.length - 1, 'elevation_deg']
    report(path, `0 and 360 deg are one direction, but have ${first.elevation_deg} and ${last.elevation_deg} deg`)
  }
}
