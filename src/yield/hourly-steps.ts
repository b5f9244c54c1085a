import type { HourlyClimate } from '../climate/index.js'
import { airMassReader, atDay, eccentricityFactor, ephemeris } from '../sun/index.js'
import { cutColumns, newColumns, type SkySteps } from './sky-steps.js'
import { RADIANS_PER_DEGREE, type Radians } from '../values/index.js'

const HALF_HOUR_RAD = 7.5 * RADIANS_PER_DEGREE
/** Hours whose ends are at least this far from sunrise and sunset need no closer look. */
const CLEAR_OF_HORIZON_RAD = 2 * RADIANS_PER_DEGREE
const FULL_TURN = 2 * Math.PI

/** The sun over one day of local standard time: straight lines between its beginning and its end. */
interface SunDay {
  readonly sinDelta: number
  readonly sinDeltaPerHour: number
  readonly cosDelta: number
  readonly cosDeltaPerHour: number
  /** Hour angle at 0 h, radians, and its change in an hour. */
  readonly hourAngle: number
  readonly hourAnglePerHour: number
  /** Hour angle of sunset at noon's declination, radians. */
  readonly sunset: number
}

/**
 * The steps of an hourly weather file. The sun stands where it is at the middle of the hour, or of the part of the hour
 * in which it is up.
 *
 * @param climate Hours that end at their stamps, local standard time.
 * @param solarConstantWM2 Solar constant, W/m2.
 */
export function hourlySteps(climate: HourlyClimate, solarConstantWM2: number): SkySteps {
  const sinPhi = Math.sin(climate.latitudeDeg * RADIANS_PER_DEGREE)
  const cosPhi = Math.cos(climate.latitudeDeg * RADIANS_PER_DEGREE)
  // The sun is up for about half of the year everywhere, and at most two hours a day are cut by its rising and setting.
  const columns = newColumns(Math.ceil(climate.length * 0.6))
  const airMass = airMassReader()
  const fileRow = new Uint32Array(columns.month.length)
  const nightHours = new Float64Array(12)
  let length = 0
  let normalWM2 = 0
  let lastDay = -1
  let midnight = sunAtMidnight(0, climate.utcOffsetH)
  let sun = sunOfDay(climate, midnight, midnight, sinPhi, cosPhi)
  // The hour angle of the row before, and what turns it on by an hour: two sines a day instead of two an hour.
  let lastRow = -2
  let [cosLast, sinLast, cosTurn, sinTurn] = [1, 0, 1, 0]
  for (let row = 0; row < climate.length; row += 1) {
    const dayOfYear = climate.dayOfYear[row] as number
    const month = (climate.month[row] as number) - 1
    if (dayOfYear !== lastDay) {
      lastDay = dayOfYear
      normalWM2 = solarConstantWM2 * eccentricityFactor(dayOfYear)
      // Days after 29 February stand one day later in a leap year's count.
      const day = dayOfYear - 1 - (climate.length > 8760 && dayOfYear > 59 ? 1 : 0)
      const begin = midnight.day === day ? midnight : sunAtMidnight(day, climate.utcOffsetH)
      midnight = sunAtMidnight(day + 1, climate.utcOffsetH)
      sun = sunOfDay(climate, begin, midnight, sinPhi, cosPhi)
      lastRow = -2
      cosTurn = Math.cos(sun.hourAnglePerHour)
      sinTurn = Math.sin(sun.hourAnglePerHour)
    }
    const hour = (climate.hour[row] as number) - 0.5
    const sinDelta = sun.sinDelta + sun.sinDeltaPerHour * hour
    const cosDelta = sun.cosDelta + sun.cosDeltaPerHour * hour
    let angle = sun.hourAngle + sun.hourAnglePerHour * hour
    if (angle > Math.PI) angle -= FULL_TURN
    else if (angle < -Math.PI) angle += FULL_TURN
    let cosAngle = 1
    let sinAngle = 0
    const edge = (angle < 0 ? -angle : angle) + HALF_HOUR_RAD
    if (edge > sun.sunset - CLEAR_OF_HORIZON_RAD) {
      const sunset = sunsetAngle(sinPhi, cosPhi, sinDelta, cosDelta)
      const from = Math.max(angle - HALF_HOUR_RAD, -sunset)
      const to = Math.min(angle + HALF_HOUR_RAD, sunset)
      if (to <= from) {
        nightHours[month] = (nightHours[month] as number) + 1
        continue
      }
      angle = (from + to) / 2
      cosAngle = Math.cos(angle)
      sinAngle = Math.sin(angle)
    } else {
      if (row === lastRow + 1) {
        cosAngle = cosLast * cosTurn - sinLast * sinTurn
        sinAngle = sinLast * cosTurn + cosLast * sinTurn
      } else {
        cosAngle = Math.cos(angle)
        sinAngle = Math.sin(angle)
      }
      lastRow = row
      cosLast = cosAngle
      sinLast = sinAngle
    }
    const up = Math.min(1, Math.max(1e-6, sinPhi * sinDelta + cosPhi * cosDelta * cosAngle))
    const zenith = Math.acos(up)
    columns.month[length] = month
    columns.sunIndex[length] = length
    columns.hours[length] = 1
    columns.sunEast[length] = -cosDelta * sinAngle
    columns.sunNorth[length] = cosPhi * sinDelta - sinPhi * cosDelta * cosAngle
    columns.sunUp[length] = up
    columns.zenithRad[length] = zenith
    columns.airMass[length] = airMass(zenith / RADIANS_PER_DEGREE, up)
    columns.extraterrestrialWM2[length] = normalWM2
    columns.dniWM2[length] = climate.dniWM2[row] as number
    columns.dhiWM2[length] = climate.dhiWM2[row] as number
    columns.ghiWM2[length] = climate.ghiWM2[row] as number
    columns.dryBulbC[length] = climate.dryBulbC[row] as number
    columns.windMs[length] = climate.windMs[row] as number
    fileRow[length] = row
    length += 1
  }
  return {
    ...cutColumns(columns, length),
    length,
    sunCount: length,
    fileRow: fileRow.subarray(0, length),
    nightHours,
    label: (step) => {
      const row = fileRow[step] as number
      return { month: climate.month[row] as number, day: climate.day[row] as number, hour: climate.hour[row] as number }
    },
  }
}

/** The sun at 0 h local standard time of a day. */
interface SunAtMidnight {
  readonly day: number
  readonly deltaRad: Radians
  readonly sinDelta: number
  readonly cosDelta: number
  readonly equationMin: number
}

/** @param day Days after 1 January of a year without a leap day. */
function sunAtMidnight(day: number, utcOffsetH: number): SunAtMidnight {
  const { declinationDeg, equationOfTimeMin } = ephemeris()
  const deltaRad = atDay(declinationDeg, day - utcOffsetH / 24) * RADIANS_PER_DEGREE
  const equationMin = atDay(equationOfTimeMin, day - utcOffsetH / 24)
  return { day, deltaRad, sinDelta: Math.sin(deltaRad), cosDelta: Math.cos(deltaRad), equationMin }
}

function sunOfDay(
  { utcOffsetH, longitudeDeg }: HourlyClimate,
  begin: SunAtMidnight,
  end: SunAtMidnight,
  sinPhi: number,
  cosPhi: number,
): SunDay {
  const { sinDelta, cosDelta } = begin
  const solarHour = -utcOffsetH + longitudeDeg / 15 + begin.equationMin / 60
  const hourAngle = (solarHour - 12) * 15 * RADIANS_PER_DEGREE
  const noonRad = (begin.deltaRad + end.deltaRad) / 2
  return {
    sinDelta,
    sinDeltaPerHour: (end.sinDelta - sinDelta) / 24,
    cosDelta,
    cosDeltaPerHour: (end.cosDelta - cosDelta) / 24,
    hourAngle: hourAngle - FULL_TURN * Math.floor((hourAngle + Math.PI) / FULL_TURN + 0.5),
    hourAnglePerHour: (15 + (end.equationMin - begin.equationMin) / 4 / 24) * RADIANS_PER_DEGREE,
    sunset: sunsetAngle(sinPhi, cosPhi, Math.sin(noonRad), Math.cos(noonRad)),
  }
}

/** Hour angle of sunset, radians, 0 in polar night and pi on polar days. */
function sunsetAngle(sinPhi: number, cosPhi: number, sinDelta: number, cosDelta: number): number {
  return Math.acos(Math.min(1, Math.max(-1, (-sinPhi * sinDelta) / (cosPhi * cosDelta))))
}
