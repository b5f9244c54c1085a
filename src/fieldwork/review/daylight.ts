import { atDay, ephemeris, sunsetHourAngleDeg } from '../../sun/index.js'
import { MS_PER_DAY, MS_PER_HOUR, sunDay, type Degrees, type Milliseconds } from '../../values/index.js'

export interface Place {
  readonly latitudeDeg: Degrees
  readonly longitudeDeg: Degrees
  readonly utcOffsetH: number
}

/** Standard time at which the sun stands in the meridian, hours of that day. */
export function solarNoonH(day: number, place: Place): number {
  const utDay = sunDay(day) + 0.5 - place.longitudeDeg / 360
  return 12 + place.utcOffsetH - place.longitudeDeg / 15 - atDay(ephemeris().equationOfTimeMin, utDay) / 60
}

/** Sunrise and sunset without refraction, local standard time as ms as if UTC. */
export function daylight(day: number, place: Place): { readonly riseMs: Milliseconds; readonly setMs: Milliseconds } {
  const noonH = solarNoonH(day, place)
  const declination = atDay(ephemeris().declinationDeg, sunDay(day) + 0.5 - place.longitudeDeg / 360)
  const half = sunsetHourAngleDeg(place.latitudeDeg, declination) / 15
  const at = (hour: number): number => day * MS_PER_DAY + hour * MS_PER_HOUR
  return { riseMs: at(noonH - half), setMs: at(noonH + half) }
}
