import type { HourlyClimate } from '../climate/index.js'
import { airMassAt, atDay, eccentricityFactor, ephemeris } from '../sun/index.js'
import { cutColumns, newColumns, type SkySteps } from './sky-steps.js'

const RADIANS = Math.PI / 180
const HALF_HOUR_RAD = 7.5 * RADIANS
/** Hours whose ends are at least this far from sunrise and sunset need no closer look. */
const CLEAR_OF_HORIZON_RAD = 2 * RADIANS
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
  const sinPhi = Math.sin(climate.latitudeDeg * RADIANS)
  const cosPhi = Math.cos(climate.latitudeDeg * RADIANS)
  const columns = newColumns(climate.length)
  const fileRow = new Uint32Array(climate.length)
  const nightHours = new Float64Array(12)
  let length = 0
  let normalWM2 = 0
  let lastDay = -1
  let sun = sunOfDay(climate, 1, sinPhi, cosPhi)
  for (let row = 0; row < climate.length; row += 1) {
    const dayOfYear = climate.dayOfYear[row] as number
    const month = (climate.month[row] as number) - 1
    if (dayOfYear !== lastDay) {
      lastDay = dayOfYear
      normalWM2 = solarConstantWM2 * eccentricityFactor(dayOfYear)
      sun = sunOfDay(climate, dayOfYear, sinPhi, cosPhi)
    }
    const hour = (climate.hour[row] as number) - 0.5
    const sinDelta = sun.sinDelta + sun.sinDeltaPerHour * hour
    const cosDelta = sun.cosDelta + sun.cosDeltaPerHour * hour
    let angle = sun.hourAngle + sun.hourAnglePerHour * hour
    if (angle > Math.PI) angle -= FULL_TURN
    else if (angle < -Math.PI) angle += FULL_TURN
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
    }
    const cosAngle = Math.cos(angle)
    const up = Math.min(1, Math.max(1e-6, sinPhi * sinDelta + cosPhi * cosDelta * cosAngle))
    const zenith = Math.acos(up)
    const sinAngle = Math.sqrt(1 - cosAngle * cosAngle)
    columns.month[length] = month
    columns.sunIndex[length] = length
    columns.hours[length] = 1
    columns.sunEast[length] = cosDelta * (angle < 0 ? sinAngle : -sinAngle)
    columns.sunNorth[length] = cosPhi * sinDelta - sinPhi * cosDelta * cosAngle
    columns.sunUp[length] = up
    columns.zenithRad[length] = zenith
    columns.airMass[length] = airMassAt(zenith / RADIANS, up)
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

function sunOfDay(climate: HourlyClimate, dayOfYear: number, sinPhi: number, cosPhi: number): SunDay {
  const { declinationDeg, equationOfTimeMin } = ephemeris()
  // Days after 29 February stand one day later in a leap year's count.
  const calendarDay = dayOfYear - 1 - (climate.length > 8760 && dayOfYear > 59 ? 1 : 0)
  const beginning = calendarDay - climate.utcOffsetH / 24
  const delta = atDay(declinationDeg, beginning) * RADIANS
  const deltaAfter = atDay(declinationDeg, beginning + 1) * RADIANS
  const equation = atDay(equationOfTimeMin, beginning)
  const equationAfter = atDay(equationOfTimeMin, beginning + 1)
  const sinDelta = Math.sin(delta)
  const cosDelta = Math.cos(delta)
  const solarHour = -climate.utcOffsetH + climate.longitudeDeg / 15 + equation / 60
  const hourAngle = (solarHour - 12) * 15 * RADIANS
  return {
    sinDelta,
    sinDeltaPerHour: (Math.sin(deltaAfter) - sinDelta) / 24,
    cosDelta,
    cosDeltaPerHour: (Math.cos(deltaAfter) - cosDelta) / 24,
    hourAngle: hourAngle - FULL_TURN * Math.round((hourAngle + Math.PI) / FULL_TURN),
    hourAnglePerHour: (15 + (equationAfter - equation) / 4 / 24) * RADIANS,
    sunset: sunsetAngle(sinPhi, cosPhi, Math.sin((delta + deltaAfter) / 2), Math.cos((delta + deltaAfter) / 2)),
  }
}

/** Hour angle of sunset, radians, 0 in polar night and pi on polar days. */
function sunsetAngle(sinPhi: number, cosPhi: number, sinDelta: number, cosDelta: number): number {
  return Math.acos(Math.min(1, Math.max(-1, (-sinPhi * sinDelta) / (cosPhi * cosDelta))))
}
