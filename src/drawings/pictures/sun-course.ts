import { DAYS_IN_MONTH } from '../../climate/index.js'
import { atDay, ephemeris } from '../../sun/index.js'
import { degreesOf, radiansOf, type Degrees } from '../../values/index.js'

/** Where the sun stands: degrees clockwise from true north (0 to 360), degrees above level. */
export interface SunPlace {
  readonly azimuthDeg: Degrees
  readonly elevationDeg: Degrees
}

/**
 * The sun's place by solar time, without refraction.
 *
 * @param hourAngleDeg 0 at solar noon, 15 degrees an hour, afternoon positive.
 * @source Spherical trigonometry: sin h = sin phi sin delta + cos phi cos delta cos omega.
 */
export function sunPlace(latitudeDeg: Degrees, declinationDeg: Degrees, hourAngleDeg: Degrees): SunPlace {
  const [phi, delta, omega] = [radiansOf(latitudeDeg), radiansOf(declinationDeg), radiansOf(hourAngleDeg)]
  const up = Math.sin(phi) * Math.sin(delta) + Math.cos(phi) * Math.cos(delta) * Math.cos(omega)
  const east = -Math.cos(delta) * Math.sin(omega)
  const north = Math.cos(phi) * Math.sin(delta) - Math.sin(phi) * Math.cos(delta) * Math.cos(omega)
  const azimuthDeg = degreesOf(Math.atan2(east, north))
  return {
    azimuthDeg: azimuthDeg < 0 ? azimuthDeg + 360 : azimuthDeg,
    elevationDeg: degreesOf(Math.asin(Math.min(1, Math.max(-1, up)))),
  }
}

/** Half of the day as hour angle: 0 in the polar night, 180 where the sun does not set. */
export function halfDayDeg(latitudeDeg: Degrees, declinationDeg: Degrees): Degrees {
  const cosine = -Math.tan(radiansOf(latitudeDeg)) * Math.tan(radiansOf(declinationDeg))
  return degreesOf(Math.acos(Math.min(1, Math.max(-1, cosine))))
}

/** A course of the sun that stands for one month, or for two of nearly the same declination. */
export interface SunCourse {
  readonly name: string
  readonly declinationDeg: Degrees
}

/** Months whose 21st days have declinations within 1 degree of each other, so that one line stands for both. */
const COURSES = [
  ['Jun', 5],
  ['May Jul', 4, 6],
  ['Apr Aug', 3, 7],
  ['Mar Sep', 2, 8],
  ['Feb Oct', 1, 9],
  ['Jan Nov', 0, 10],
  ['Dec', 11],
] as const

/** Day of the month, counted from 0, whose noon is taken. */
const DAY = 20

/** The sun's courses on the 21st of each month; June first. */
export function sunCourses(): SunCourse[] {
  const { declinationDeg } = ephemeris()
  const onThe21st = (month: number): Degrees => {
    const before = DAYS_IN_MONTH.slice(0, month).reduce((sum, days) => sum + days, 0)
    return atDay(declinationDeg, before + DAY + 0.5)
  }
  return COURSES.map(([name, ...months]) => ({
    name,
    declinationDeg: months.reduce((sum: number, month) => sum + onThe21st(month), 0) / months.length,
  }))
}

/** Height below which a direction lies behind a plane, degrees; below 0 where the plane sees down to level ground. */
export function planeEdgeDeg(tiltDeg: Degrees, planeAzimuthDeg: Degrees, azimuthDeg: Degrees): Degrees {
  const tilt = radiansOf(tiltDeg)
  return degreesOf(Math.atan2(-Math.sin(tilt) * Math.cos(radiansOf(azimuthDeg - planeAzimuthDeg)), Math.cos(tilt)))
}
