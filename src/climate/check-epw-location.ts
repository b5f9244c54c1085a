import type { Worksheet } from '../worksheet/index.js'
import { distanceKm } from './distance.js'
import { EPW_PATH } from './epw-error.js'
import type { EpwLocation } from './epw-header.js'
import type { House } from './house.js'
import { FAR_KM, HIGH_M, saySite } from './say-site.js'

/** The sun and the clock of a place may differ by this much, h: time zones are uneven. */
const CLOCK_FROM_SUN_H = 2.2

/** What of a weather file's place is compared with the house. */
type Place = Pick<EpwLocation, 'city' | 'state' | 'latitudeDeg' | 'longitudeDeg' | 'utcOffsetH' | 'elevationM'>

/** Warns when a weather file is for a place far from the house, much higher or lower, or in another time zone. */
export function checkEpwLocation(location: Place, house: House, worksheet: Worksheet, path: string = EPW_PATH): void {
  const distance = distanceKm(house.latitudeDeg, house.longitudeDeg, location.latitudeDeg, location.longitudeDeg)
  const heightDifferenceM = house.elevationM === undefined ? undefined : location.elevationM - house.elevationM
  const said = saySite({ name: location.city, state: location.state, distanceKm: distance, heightDifferenceM })
  const warn = (id: string, message: string, where: string, fix: string): void =>
    worksheet.find({ severity: 'warning', id, message, where, fix })
  if (distance > FAR_KM) {
    warn(
      'climate.epw-far',
      `the weather file is for ${said}, more than ${FAR_KM} km from the house`,
      path,
      'choose a file for a nearer place, or check site.latitude_deg and site.longitude_deg (east is positive)',
    )
  }
  if (Math.abs(heightDifferenceM ?? 0) > HIGH_M) {
    warn(
      'climate.epw-height',
      `the weather file is for ${said}, more than ${HIGH_M} m higher or lower than the house`,
      'site.elevation_ft',
      'check site.elevation_ft, or choose a file for a place of like height',
    )
  }
  if (house.utcOffsetH !== undefined && house.utcOffsetH !== location.utcOffsetH) {
    warn(
      'climate.epw-utc-offset',
      `the hours of the weather file are UTC ${sign(location.utcOffsetH)} h, the project says ${sign(house.utcOffsetH)} h; the file's own clock is used for its hours`,
      'site.utc_offset_h',
      'state site.utc_offset_h as standard time, without daylight saving',
    )
  }
  if (Math.abs(location.longitudeDeg / 15 - location.utcOffsetH) > CLOCK_FROM_SUN_H) {
    warn(
      'climate.epw-clock',
      `the clock of the weather file (UTC ${sign(location.utcOffsetH)} h) is far from the sun at its longitude ${location.longitudeDeg} deg`,
      path,
      'check the sign of the longitude in the first line of the file: east is positive',
    )
  }
}

function sign(hours: number): string {
  return hours < 0 ? `${hours}` : `+${hours}`
}
