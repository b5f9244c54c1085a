import { atDay, eccentricityFactor, ephemeris, SOLAR_CONSTANT_W_M2 } from '../../sun/index.js'
import { RADIANS_PER_DEGREE, radiansOf, type Degrees } from '../../values/index.js'
import type { SeriesYear } from './series-file.js'

/** The sun of each interval. */
export interface RowSun {
  /** Cosine of the zenith angle at the middle of the sunlit part of the interval; below zero when the sun stays down. */
  readonly cosZenith: Float64Array
  /** Extraterrestrial irradiance at right angles to the sun, W/m2. */
  readonly normalWM2: Float64Array
  /** Share of the interval with the sun up. */
  readonly sunlit: Float64Array
  /** Extraterrestrial irradiance on the level, mean of the interval, W/m2. */
  readonly levelWM2: Float64Array
  /** Direction to the sun at the same middle, with `cosZenith` as the third part. */
  readonly sunEast: Float64Array
  readonly sunNorth: Float64Array
}

/** @param place Degrees, north and east positive; hours that standard time is ahead of UTC. */
export function rowSun(
  year: Pick<SeriesYear, 'length' | 'stepH' | 'dayOfYear' | 'middleH' | 'isLeap'>,
  place: { readonly latitudeDeg: Degrees; readonly longitudeDeg: Degrees; readonly utcOffsetH: number },
): RowSun {
  const { length, stepH } = year
  const column = (): Float64Array => new Float64Array(length)
  const sun = {
    cosZenith: column(),
    normalWM2: column(),
    sunlit: column(),
    levelWM2: column(),
    sunEast: column(),
    sunNorth: column(),
  }
  const { declinationDeg, equationOfTimeMin } = ephemeris()
  const phi = radiansOf(place.latitudeDeg)
  const [sinPhi, cosPhi] = [Math.sin(phi), Math.cos(phi)]
  const half = 7.5 * stepH * RADIANS_PER_DEGREE
  for (let row = 0; row < length; row++) {
    const dayOfYear = year.dayOfYear[row]!
    const day = dayOfYear - 1 - (year.isLeap && dayOfYear > 59 ? 1 : 0)
    const utDay = day + (year.middleH[row]! - place.utcOffsetH) / 24
    const delta = atDay(declinationDeg, utDay) * RADIANS_PER_DEGREE
    const [high, wide] = [sinPhi * Math.sin(delta), cosPhi * Math.cos(delta)]
    const solarH =
      year.middleH[row]! - place.utcOffsetH + place.longitudeDeg / 15 + atDay(equationOfTimeMin, utDay) / 60
    const hourAngle = ((((solarH - 12) % 24) + 36) % 24) - 12
    const angle = hourAngle * 15 * RADIANS_PER_DEGREE
    const sunset = Math.acos(Math.min(1, Math.max(-1, -high / wide)))
    const from = Math.max(angle - half, -sunset)
    const to = Math.min(angle + half, sunset)
    const isUp = to > from
    const middle = isUp ? (from + to) / 2 : angle
    const cosZenith = high + wide * Math.cos(middle)
    sun.sunEast[row] = -Math.cos(delta) * Math.sin(middle)
    sun.sunNorth[row] = Math.sin(delta) * cosPhi - Math.cos(delta) * Math.cos(middle) * sinPhi
    const normal = SOLAR_CONSTANT_W_M2 * eccentricityFactor(dayOfYear)
    sun.cosZenith[row] = isUp ? Math.max(0, cosZenith) : Math.min(0, cosZenith)
    sun.normalWM2[row] = normal
    sun.sunlit[row] = isUp ? (to - from) / (2 * half) : 0
    sun.levelWM2[row] = normal * sun.cosZenith[row]! * sun.sunlit[row]!
    if (!isUp) sun.levelWM2[row] = 0
  }
  return sun
}
