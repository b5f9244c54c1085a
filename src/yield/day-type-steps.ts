import { DAYS_IN_MONTH, MEAN_DAY_OF_YEAR, type MonthlyClimate } from '../climate/index.js'
import {
  airMass,
  atDay,
  dailyExtraterrestrialWhM2,
  eccentricityFactor,
  ephemeris,
  globalShareOfDay,
  sunsetHourAngleDeg,
} from '../sun/index.js'
import { dayKinds, morningOf } from './day-kinds.js'
import { daytimeTemperatureC } from './daytime-temperature.js'
import { cutColumns, newColumns, type SkyColumns, type SkySteps } from './sky-steps.js'
import { RADIANS_PER_DEGREE, type Degrees } from '../values/index.js'

/** Longest step, h. */
const STEP_H = 0.5
/** Number of kinds of day in a month, of equal probability. */
export const DAY_TYPE_COUNT = 10
/** Sine of the lowest sun that counts, so that light on the level can be turned into beam. */
const LOWEST_SUN_UP = 1e-6
/** Daily extraterrestrial irradiation below which a month counts as polar night, Wh/m2. */
const POLAR_NIGHT_WH_M2 = 50

/**
 * The steps of a table of monthly means: for each month the mean day's sun, and ten kinds of day from dull to clear, each
 * with its own course of global and diffuse irradiance.
 *
 * How the light of a kind of day runs is `dayKinds`: global by Collares-Pereira & Rabl, leaning as the month's morning
 * share says; diffuse by the hourly correlation of Erbs et al. with the table's own diffuse coming out. (The daily correlation
 * together with an anisotropic sky gives too much on tilted planes; see DEVELOPERS.md for the figures.)
 *
 * @param climate Monthly mean days.
 * @param solarConstantWM2 Solar constant, W/m2.
 * @param diffuse `correlation` leaves the table's diffuse out, for comparing.
 * @limits In polar day, when the sun does not set, the light follows the height of the sun; nothing was measured there.
 */
export function dayTypeSteps(
  climate: MonthlyClimate,
  solarConstantWM2: number,
  diffuse: 'table' | 'correlation' = 'table',
): SkySteps {
  const days = Array.from({ length: 12 }, (_, month) => meanDay(climate, month, solarConstantWM2))
  const capacity = days.reduce((sum, day) => sum + DAY_TYPE_COUNT * stepsOf(day), 0)
  const filled: FilledSteps = {
    columns: newColumns(capacity),
    solarHour: new Float64Array(capacity),
    kindDays: new Float64Array(capacity),
    kindNumber: new Uint8Array(capacity),
    length: 0,
    sunCount: 0,
  }
  const nightHours = new Float64Array(12)
  for (const [month, day] of days.entries()) {
    nightHours[month] = day.days * (24 - day.dayLengthH)
    if (day.outsideWhM2 < POLAR_NIGHT_WH_M2 || day.meanWhM2 <= 0) continue
    addMonth(filled, climate, day, diffuse)
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

/** An even number of steps from sunrise to sunset. */
function stepsOf({ dayLengthH }: MeanDay): number {
  return 2 * Math.ceil(dayLengthH / STEP_H / 2)
}

/** The middle of a step of the mean day, the same for every kind of day. */
interface SunOfStep {
  /** Solar time, h. */
  readonly hour: number
  readonly hourAngleDeg: Degrees
  readonly east: number
  readonly north: number
  readonly up: number
  readonly zenithRad: number
  readonly airMass: number
  /** In proportion to the global irradiance of a symmetric day. */
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
    const up = Math.max(LOWEST_SUN_UP, sinPhi * sinDelta + cosPhi * cosDelta * Math.cos(angle))
    const zenithRad = Math.acos(Math.min(1, up))
    return {
      hour: 12 + hourAngleDeg / 15,
      hourAngleDeg,
      east: -cosDelta * Math.sin(angle),
      north: cosPhi * sinDelta - sinPhi * cosDelta * Math.cos(angle),
      up,
      zenithRad,
      airMass: airMass(zenithRad / RADIANS_PER_DEGREE),
      share: Math.max(0, shareOfDay(day, hourAngleDeg, up)),
      dryBulbC: daytimeTemperatureC(meanC, swingK, 12 + hourAngleDeg / 15),
    }
  })
}

/**
 * In proportion to the global irradiance of a symmetric day. The correlation was made for days that end; where the sun does
 * not set, all hours count as equally clear.
 */
function shareOfDay({ sunsetDeg }: MeanDay, hourAngleDeg: Degrees, up: number): number {
  return sunsetDeg < 180 ? globalShareOfDay(hourAngleDeg, sunsetDeg) : up
}

/** Adds the kinds of day of one month, each with its own course of light under the same sun. */
function addMonth(filled: FilledSteps, climate: MonthlyClimate, day: MeanDay, diffuse: 'table' | 'correlation'): void {
  const { days, month } = day
  const stepCount = stepsOf(day)
  const stepH = day.dayLengthH / stepCount
  const suns = sunsOfDay(climate, day, stepCount, stepH)
  const instants = suns.map(({ hourAngleDeg, share, up }) => ({ hourAngleDeg, share, outsideWM2: day.normalWM2 * up }))
  const { kinds } = dayKinds(
    instants,
    {
      ghiWhM2: day.meanWhM2,
      outsideWhM2: day.outsideWhM2,
      stepH,
      dhiWhM2: diffuse === 'table' ? climate.dhiWhM2Day[month] : undefined,
      morning: morningOf(climate, month),
    },
    DAY_TYPE_COUNT,
  )
  const windMs = climate.windMs[month]!
  const { columns } = filled
  kinds.forEach((kind, kindIndex) => {
    suns.forEach((sun, sunOfDay) => {
      const ghi = kind.ghiWM2[sunOfDay]!
      const dhi = kind.dhiWM2[sunOfDay]!
      const at = filled.length
      filled.length += 1
      columns.month[at] = month
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
