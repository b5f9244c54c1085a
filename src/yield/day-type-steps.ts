import { DAYS_IN_MONTH, dayTypes, MEAN_DAY_OF_YEAR, type MonthlyClimate } from '../climate/index.js'
import {
  airMass,
  atDay,
  dailyExtraterrestrialWhM2,
  eccentricityFactor,
  ephemeris,
  erbsHourly,
  globalShareOfDay,
  sunsetHourAngleDeg,
} from '../sun/index.js'
import { daytimeTemperatureC } from './daytime-temperature.js'
import { cutColumns, newColumns, type SkyColumns, type SkySteps } from './sky-steps.js'
import { RADIANS_PER_DEGREE, type Degrees } from '../values/index.js'

/** Longest step, h. */
const STEP_H = 0.5
/** Number of kinds of day in a month, of equal probability. */
export const DAY_TYPE_COUNT = 10
/** Daily extraterrestrial irradiation below which a month counts as polar night, Wh/m2. */
const POLAR_NIGHT_WH_M2 = 50

/**
 * The steps of a table of monthly means: for each month the mean day's sun, and ten kinds of day from dull to clear, each
 * with its own course of global and diffuse irradiance.
 *
 * Global: the day's clearness times the extraterrestrial day, spread by Collares-Pereira & Rabl. Diffuse: the hourly
 * correlation of Erbs et al. at each step's own clearness. (The daily correlation together with an anisotropic sky gives
 * too much on tilted planes; see DEVELOPERS.md for the figures.)
 *
 * @param climate Monthly mean days.
 * @param solarConstantWM2 Solar constant, W/m2.
 * @limits Mornings and afternoons are alike, so planes that face east or west are less certain than south ones.
 */
export function dayTypeSteps(climate: MonthlyClimate, solarConstantWM2: number): SkySteps {
  const capacity = 12 * DAY_TYPE_COUNT * (24 / STEP_H + 1)
  const filled: FilledSteps = {
    columns: newColumns(capacity),
    solarHour: new Float64Array(capacity),
    kindDays: new Float64Array(capacity),
    kindNumber: new Uint8Array(capacity),
    length: 0,
    sunCount: 0,
  }
  const nightHours = new Float64Array(12)
  for (let month = 0; month < 12; month += 1) {
    const day = meanDay(climate, month, solarConstantWM2)
    nightHours[month] = day.days * (24 - day.dayLengthH)
    if (day.outsideWhM2 < POLAR_NIGHT_WH_M2 || day.meanWhM2 <= 0) continue
    addMonth(filled, climate, day)
  }
  const { columns, length, sunCount, solarHour, kindDays, kindNumber } = filled
  return {
    ...cutColumns(columns, length),
    length,
    latitudeDeg: climate.latitudeDeg,
    sunCount,
    fileRow: undefined,
    nightHours,
    label: (step) => ({
      month: columns.month[step]! + 1,
      hour: solarHour[step]!,
      dayType: kindNumber[step]!,
      days: kindDays[step]!,
    }),
  }
}

/** The steps that are filled so far. */
interface FilledSteps {
  readonly columns: SkyColumns
  readonly solarHour: Float64Array
  readonly kindDays: Float64Array
  readonly kindNumber: Uint8Array
  length: number
  sunCount: number
}

/** The day that stands for a month. */
interface MeanDay {
  /** 0 to 11. */
  readonly month: number
  /** Days of the month. */
  readonly days: number
  readonly declinationDeg: Degrees
  readonly sunsetDeg: Degrees
  readonly dayLengthH: number
  /** Extraterrestrial irradiance at right angles to the sun, W/m2, and over the day on the horizontal, Wh/m2. */
  readonly normalWM2: number
  readonly outsideWhM2: number
  /** Mean global irradiation of a day, Wh/m2. */
  readonly meanWhM2: number
}

function meanDay(climate: MonthlyClimate, month: number, solarConstantWM2: number): MeanDay {
  const dayOfYear = MEAN_DAY_OF_YEAR[month]!
  const normalWM2 = solarConstantWM2 * eccentricityFactor(dayOfYear)
  const noonUtDay = dayOfYear - 0.5 - climate.longitudeDeg / 360
  const declinationDeg = atDay(ephemeris().declinationDeg, noonUtDay)
  const sunsetDeg = sunsetHourAngleDeg(climate.latitudeDeg, declinationDeg)
  return {
    month,
    days: DAYS_IN_MONTH[month]!,
    declinationDeg,
    sunsetDeg,
    dayLengthH: (2 * sunsetDeg) / 15,
    normalWM2,
    outsideWhM2: dailyExtraterrestrialWhM2(climate.latitudeDeg, declinationDeg, normalWM2),
    meanWhM2: climate.ghiWhM2Day[month]!,
  }
}

/** The middle of a step of the mean day, the same for every kind of day. */
interface SunOfStep {
  /** Solar time, h. */
  readonly hour: number
  readonly east: number
  readonly north: number
  readonly up: number
  readonly zenithRad: number
  readonly airMass: number
  /** In proportion to the global irradiance. */
  readonly share: number
  readonly dryBulbC: number
}

function sunsOfDay(climate: MonthlyClimate, day: MeanDay, stepCount: number, stepH: number): SunOfStep[] {
  const sinPhi = Math.sin(climate.latitudeDeg * RADIANS_PER_DEGREE)
  const cosPhi = Math.cos(climate.latitudeDeg * RADIANS_PER_DEGREE)
  const sinDelta = Math.sin(day.declinationDeg * RADIANS_PER_DEGREE)
  const cosDelta = Math.cos(day.declinationDeg * RADIANS_PER_DEGREE)
  const meanC = climate.meanC[day.month]!
  const swingK = climate.meanMaxC[day.month]! - climate.meanMinC[day.month]!
  return Array.from({ length: stepCount }, (_, index) => {
    const hourAngleDeg = (index + 0.5) * stepH * 15 - day.sunsetDeg
    const angle = hourAngleDeg * RADIANS_PER_DEGREE
    const up = Math.max(1e-6, sinPhi * sinDelta + cosPhi * cosDelta * Math.cos(angle))
    const zenithRad = Math.acos(Math.min(1, up))
    return {
      hour: 12 + hourAngleDeg / 15,
      east: -cosDelta * Math.sin(angle),
      north: cosPhi * sinDelta - sinPhi * cosDelta * Math.cos(angle),
      up,
      zenithRad,
      airMass: airMass(zenithRad / RADIANS_PER_DEGREE),
      share: Math.max(0, globalShareOfDay(hourAngleDeg, day.sunsetDeg)),
      dryBulbC: daytimeTemperatureC(meanC, swingK, 12 + hourAngleDeg / 15),
    }
  })
}

/** Adds the kinds of day of one month, each with its own course of light under the same sun. */
function addMonth(filled: FilledSteps, climate: MonthlyClimate, day: MeanDay): void {
  const { days, meanWhM2 } = day
  const stepCount = 2 * Math.ceil(day.dayLengthH / STEP_H / 2)
  const stepH = day.dayLengthH / stepCount
  const suns = sunsOfDay(climate, day, stepCount, stepH)
  const shareSum = suns.reduce((sum, sun) => sum + sun.share * stepH, 0)
  const meanClearness = Math.min(0.8, Math.max(0.15, meanWhM2 / day.outsideWhM2))
  const windMs = climate.windMs[day.month]!
  const { columns } = filled
  dayTypes(meanClearness, DAY_TYPE_COUNT).forEach((kind, kindIndex) => {
    // The mean of the kinds is meanClearness; the ratio carries months outside its range without losing energy.
    const dayWhM2 = (kind.clearness / meanClearness) * meanWhM2
    suns.forEach((sun, sunOfDay) => {
      const ghi = (dayWhM2 * sun.share) / shareSum
      const dhi = ghi * erbsHourly(ghi / (day.normalWM2 * sun.up))
      const at = filled.length
      filled.length += 1
      columns.month[at] = day.month
      columns.sunIndex[at] = filled.sunCount + sunOfDay
      columns.hours[at] = stepH * days * kind.share
      columns.spanH[at] = stepH
      columns.sunEast[at] = sun.east
      columns.sunNorth[at] = sun.north
      columns.sunUp[at] = sun.up
      columns.zenithRad[at] = sun.zenithRad
      columns.airMass[at] = sun.airMass
      columns.extraterrestrialWM2[at] = day.normalWM2
      columns.dniWM2[at] = (ghi - dhi) / sun.up
      columns.dhiWM2[at] = dhi
      columns.ghiWM2[at] = ghi
      columns.dryBulbC[at] = sun.dryBulbC
      columns.windMs[at] = windMs
      filled.solarHour[at] = sun.hour
      filled.kindDays[at] = days * kind.share
      filled.kindNumber[at] = kindIndex + 1
    })
  })
  filled.sunCount += stepCount
}
