import { getPosition } from 'suncalc'
import { trueAltitudeDeg } from './true-altitude.js'
import { MS_PER_DAY } from '../values/index.js'

/**
 * The year that typical years are computed with: half-way between two leap years, so that its dates stand in the middle
 * of the four-year drift of the calendar against the sun.
 */
const REFERENCE_YEAR = 2026
const DAYS = 368

/** Declination and equation of time at 0 h UT of each day of the reference year. */
export interface Ephemeris {
  /** Degrees, index 0 = 0 h UT on 1 January. */
  readonly declinationDeg: Float64Array
  /** Apparent minus mean solar time, minutes. */
  readonly equationOfTimeMin: Float64Array
}

let cached: Ephemeris | undefined

/**
 * The sun's course through a typical year, computed once. Between two entries a straight line is good to 0.001 degrees.
 *
 * At the north pole the altitude of the sun is its declination, and its azimuth (less 180 degrees) its hour angle: that
 * is how both are read from a library that only tells altitude and azimuth.
 *
 * @source Meeus, Astronomical Algorithms, ch. 25, through suncalc 2.
 */
export function ephemeris(): Ephemeris {
  if (cached !== undefined) return cached
  const declinationDeg = new Float64Array(DAYS)
  const equationOfTimeMin = new Float64Array(DAYS)
  const start = Date.UTC(REFERENCE_YEAR, 0, 1)
  for (let day = 0; day < DAYS; day += 1) {
    const { altitude, azimuth } = getPosition(new Date(start + day * MS_PER_DAY), 90, 0)
    declinationDeg[day] = trueAltitudeDeg(altitude)
    // At 0 h UT the mean sun's hour angle on the prime meridian is 180 degrees, that is azimuth 0.
    const excessDeg = azimuth > 180 ? azimuth - 360 : azimuth
    equationOfTimeMin[day] = excessDeg * 4
  }
  cached = { declinationDeg, equationOfTimeMin }
  return cached
}

/** Straight-line value of a daily series at a fractional day counted from 0 h UT on 1 January. */
export function atDay(series: Float64Array, day: number): number {
  const clamped = Math.min(DAYS - 2, Math.max(0, day))
  const whole = Math.floor(clamped)
  const share = clamped - whole
  return (series[whole] ?? 0) * (1 - share) + (series[whole + 1] ?? 0) * share
}
