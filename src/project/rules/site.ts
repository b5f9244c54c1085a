import type { HorizonPoint } from '../project-types.generated.js'
import { showNumber } from '../words.js'
import type { Report, Rule } from './rule.js'

/** Farther south there is ice and no utility: most probably latitude and longitude are swapped, deg. */
const LOWEST_LATITUDE_DEG = -66
/** Time zones bulge; more than this between sun time and clock time is a mistake, h. */
const MOST_ZONE_OFFSET_H = 3.5
const DEG_PER_HOUR = 15

/** The place makes sense, and the horizon goes once round the compass. */
export const checkSite: Rule = ({ site }, report) => {
  const { latitude_deg: latitude, longitude_deg: longitude, utc_offset_h: offset } = site
  if (latitude < LOWEST_LATITUDE_DEG) {
    const message = `${latitude} deg is too near the south pole for a roof on a utility's grid; are latitude and longitude swapped?`
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
