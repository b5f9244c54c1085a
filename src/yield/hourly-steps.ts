import type { HourlyClimate } from '../climate/index.js'
import { airMassReader, atDay, eccentricityFactor, ephemeris } from '../sun/index.js'
import { cutColumns, newColumns, type SkyColumns, type SkySteps } from './sky-steps.js'
import { RADIANS_PER_DEGREE, type Radians } from '../values/index.js'

/** Intervals whose ends are at least this far from sunrise and sunset need no closer look. */
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
 * The steps of a weather file. The sun stands where it is at the middle of the interval, or of the part of it in which
 * the sun is up.
 *
 * @param climate Intervals of one length, local standard time.
 * @param solarConstantWM2 Solar constant, W/m2.
 */
export function hourlySteps(climate: HourlyClimate, solarConstantWM2: number): SkySteps {
  // The sun is up for about half of the year everywhere, and at most two hours a day are cut by its rising and setting.
  const columns = newColumns(Math.ceil(climate.length * 0.6))
  const fileRow = new Uint32Array(columns.month.length)
  const filled: FilledHours = {
    columns,
    fileRow,
    nightHours: new Float64Array(12),
    airMass: airMassReader(),
    length: 0,
  }
  const sinPhi = Math.sin(climate.latitudeDeg * RADIANS_PER_DEGREE)
  const cosPhi = Math.cos(climate.latitudeDeg * RADIANS_PER_DEGREE)
  const isLeap = climate.dayOfYear[climate.length - 1] === 366
  let midnight = sunAtMidnight(0, climate.utcOffsetH)
  let end = 0
  for (let from = 0; from < climate.length; from = end) {
    const dayOfYear = climate.dayOfYear[from]!
    end = from + 1
    while (end < climate.length && climate.dayOfYear[end] === dayOfYear) end += 1
    // Days after 29 February stand one day later in a leap year's count.
    const day = dayOfYear - 1 - (isLeap && dayOfYear > 59 ? 1 : 0)
    const begin = midnight.day === day ? midnight : sunAtMidnight(day, climate.utcOffsetH)
    midnight = sunAtMidnight(day + 1, climate.utcOffsetH)
    const sun = sunOfDay(climate, begin, midnight, sinPhi, cosPhi)
    const normalWM2 = solarConstantWM2 * eccentricityFactor(dayOfYear)
    addDay(filled, climate, { from, end, sun, sinPhi, cosPhi, normalWM2 })
  }
  const { length, nightHours } = filled
  return {
    ...cutColumns(columns, length),
    length,
    latitudeDeg: climate.latitudeDeg,
    sunCount: length,
    fileRow: fileRow.subarray(0, length),
    nightHours,
    label: (step) => {
      const row = fileRow[step]!
      return { month: climate.month[row]!, day: climate.day[row]!, hour: climate.hour[row]! }
    },
  }
}

/** The steps that are filled so far. */
interface FilledHours {
  readonly columns: SkyColumns
  readonly fileRow: Uint32Array
  readonly nightHours: Float64Array
  readonly airMass: ReturnType<typeof airMassReader>
  length: number
}

/** The hours of one day of the file, and the sun over them. */
interface DayOfFile {
  /** Its first row, and the row after its last. */
  readonly from: number
  readonly end: number
  readonly sun: SunDay
  readonly sinPhi: number
  readonly cosPhi: number
  /** Extraterrestrial irradiance at right angles to the sun, W/m2. */
  readonly normalWM2: number
}

/** Adds the hours of a day in which the sun is up, wholly or in part; the others count as night. */
function addDay(filled: FilledHours, climate: HourlyClimate, day: DayOfFile): void {
  const { columns, nightHours } = filled
  const { sun, sinPhi, cosPhi, normalWM2 } = day
  const { stepH } = climate
  const halfStep = 7.5 * RADIANS_PER_DEGREE * stepH
  // The hour angle of the row before is turned on by a step: two sines a day instead of two a step.
  const cosTurn = Math.cos(sun.hourAnglePerHour * stepH)
  const sinTurn = Math.sin(sun.hourAnglePerHour * stepH)
  let lastRow = -2
  let [cosLast, sinLast] = [1, 0]
  let length = filled.length
  for (let row = day.from; row < day.end; row += 1) {
    const month = climate.month[row]! - 1
    const hour = climate.middleH[row]!
    const sinDelta = sun.sinDelta + sun.sinDeltaPerHour * hour
    const cosDelta = sun.cosDelta + sun.cosDeltaPerHour * hour
    let angle = sun.hourAngle + sun.hourAnglePerHour * hour
    if (angle > Math.PI) angle -= FULL_TURN
    else if (angle < -Math.PI) angle += FULL_TURN
    const isCut = (angle < 0 ? -angle : angle) + halfStep > sun.sunset - CLEAR_OF_HORIZON_RAD
    let spanH = stepH
    if (isCut) {
      const sunset = sunsetAngle(sinPhi, cosPhi, sinDelta, cosDelta)
      spanH = sunlitShare(angle, sunset, halfStep) * stepH
      angle = middleOfSunlight(angle, sunset, halfStep)
      if (angle === NO_SUNLIGHT) {
        nightHours[month] = nightHours[month]! + stepH
        continue
      }
    }
    const follows = !isCut && row === lastRow + 1
    const cosAngle = follows ? cosLast * cosTurn - sinLast * sinTurn : Math.cos(angle)
    const sinAngle = follows ? sinLast * cosTurn + cosLast * sinTurn : Math.sin(angle)
    if (!isCut) {
      lastRow = row
      cosLast = cosAngle
      sinLast = sinAngle
    }
    const up = Math.min(1, Math.max(1e-6, sinPhi * sinDelta + cosPhi * cosDelta * cosAngle))
    const zenith = Math.acos(up)
    columns.month[length] = month
    columns.hours[length] = stepH
    columns.spanH[length] = spanH
    columns.sunEast[length] = -cosDelta * sinAngle
    columns.sunNorth[length] = cosPhi * sinDelta - sinPhi * cosDelta * cosAngle
    columns.sunUp[length] = up
    columns.zenithRad[length] = zenith
    columns.airMass[length] = filled.airMass(zenith / RADIANS_PER_DEGREE, up)
    columns.extraterrestrialWM2[length] = normalWM2
    copyWeather(filled, length, climate, row)
    length += 1
  }
  filled.length = length
}

/** What stands in the file goes to a step as it is; each step has a sun of its own. */
function copyWeather({ columns, fileRow }: FilledHours, step: number, climate: HourlyClimate, row: number): void {
  columns.sunIndex[step] = step
  columns.dniWM2[step] = climate.dniWM2[row]!
  columns.dhiWM2[step] = climate.dhiWM2[row]!
  columns.ghiWM2[step] = climate.ghiWM2[row]!
  columns.dryBulbC[step] = climate.dryBulbC[row]!
  columns.windMs[step] = climate.windMs[row]!
  fileRow[step] = row
}

/** No hour angle: the sun stays down. */
const NO_SUNLIGHT = 1e9

/** Hour angle at the middle of the part of an interval in which the sun is up, radians; `NO_SUNLIGHT` when it stays down. */
function middleOfSunlight(angle: number, sunset: number, halfStep: Radians): number {
  const from = Math.max(angle - halfStep, -sunset)
  const to = Math.min(angle + halfStep, sunset)
  return to <= from ? NO_SUNLIGHT : (from + to) / 2
}

/** Share of the interval round an hour angle in which the sun is up. */
function sunlitShare(angle: number, sunset: number, halfStep: Radians): number {
  const from = Math.max(angle - halfStep, -sunset)
  const to = Math.min(angle + halfStep, sunset)
  return Math.min(1, Math.max(0, to - from) / (2 * halfStep))
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
