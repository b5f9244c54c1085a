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
import { cutColumns, newColumns, type SkySteps } from './sky-steps.js'
import { RADIANS_PER_DEGREE } from '../values/index.js'

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
  const { declinationDeg } = ephemeris()
  const sinPhi = Math.sin(climate.latitudeDeg * RADIANS_PER_DEGREE)
  const cosPhi = Math.cos(climate.latitudeDeg * RADIANS_PER_DEGREE)
  const capacity = 12 * DAY_TYPE_COUNT * (24 / STEP_H + 1)
  const columns = newColumns(capacity)
  let length = 0
  const nightHours = new Float64Array(12)
  const solarHour = new Float64Array(capacity)
  const kindDays = new Float64Array(capacity)
  const kindNumber = new Uint8Array(capacity)
  let sunCount = 0
  for (let month = 0; month < 12; month += 1) {
    const days = DAYS_IN_MONTH[month] as number
    const dayOfYear = MEAN_DAY_OF_YEAR[month] as number
    const normalWM2 = solarConstantWM2 * eccentricityFactor(dayOfYear)
    const noonUtDay = dayOfYear - 0.5 - climate.longitudeDeg / 360
    const delta = atDay(declinationDeg, noonUtDay)
    const sunset = sunsetHourAngleDeg(climate.latitudeDeg, delta)
    const dayLengthH = (2 * sunset) / 15
    nightHours[month] = days * (24 - dayLengthH)
    const outsideWhM2 = dailyExtraterrestrialWhM2(climate.latitudeDeg, delta, normalWM2)
    const meanWhM2 = climate.ghiWhM2Day[month] as number
    if (outsideWhM2 < POLAR_NIGHT_WH_M2 || meanWhM2 <= 0) continue
    const stepCount = 2 * Math.ceil(dayLengthH / STEP_H / 2)
    const stepH = dayLengthH / stepCount
    // The course of the day, the same for every kind: sun and share of the day's energy, normalised to 1.
    const suns = Array.from({ length: stepCount }, (_, index) => {
      const hourAngleDeg = -sunset + (index + 0.5) * stepH * 15
      const angle = hourAngleDeg * RADIANS_PER_DEGREE
      const sinDelta = Math.sin(delta * RADIANS_PER_DEGREE)
      const cosDelta = Math.cos(delta * RADIANS_PER_DEGREE)
      const up = Math.max(1e-6, sinPhi * sinDelta + cosPhi * cosDelta * Math.cos(angle))
      return {
        hour: 12 + hourAngleDeg / 15,
        east: -cosDelta * Math.sin(angle),
        north: cosPhi * sinDelta - sinPhi * cosDelta * Math.cos(angle),
        up,
        zenithRad: Math.acos(Math.min(1, up)),
        airMass: airMass(Math.acos(Math.min(1, up)) / RADIANS_PER_DEGREE),
        share: Math.max(0, globalShareOfDay(hourAngleDeg, sunset)),
        dryBulbC: daytimeTemperatureC(
          climate.meanC[month] as number,
          (climate.meanMaxC[month] as number) - (climate.meanMinC[month] as number),
          12 + hourAngleDeg / 15,
        ),
      }
    })
    const shareSum = suns.reduce((sum, sun) => sum + sun.share * stepH, 0)
    const meanClearness = Math.min(0.8, Math.max(0.15, meanWhM2 / outsideWhM2))
    dayTypes(meanClearness, DAY_TYPE_COUNT).forEach((kind, kindIndex) => {
      // The mean of the kinds is meanClearness; the ratio carries months outside its range without losing energy.
      const dayWhM2 = (kind.clearness / meanClearness) * meanWhM2
      suns.forEach((sun, sunOfDay) => {
        const ghi = (dayWhM2 * sun.share) / shareSum
        const outside = normalWM2 * sun.up
        const dhi = ghi * erbsHourly(ghi / outside)
        const at = length
        length += 1
        columns.month[at] = month
        columns.sunIndex[at] = sunCount + sunOfDay
        columns.hours[at] = stepH * days * kind.share
        columns.sunEast[at] = sun.east
        columns.sunNorth[at] = sun.north
        columns.sunUp[at] = sun.up
        columns.zenithRad[at] = sun.zenithRad
        columns.airMass[at] = sun.airMass
        columns.extraterrestrialWM2[at] = normalWM2
        columns.dniWM2[at] = (ghi - dhi) / sun.up
        columns.dhiWM2[at] = dhi
        columns.ghiWM2[at] = ghi
        columns.dryBulbC[at] = sun.dryBulbC
        columns.windMs[at] = climate.windMs[month] as number
        solarHour[at] = sun.hour
        kindDays[at] = days * kind.share
        kindNumber[at] = kindIndex + 1
      })
    })
    sunCount += stepCount
  }
  return {
    ...cutColumns(columns, length),
    length,
    sunCount,
    fileRow: undefined,
    nightHours,
    label: (step) => ({
      month: (columns.month[step] as number) + 1,
      hour: solarHour[step] as number,
      dayType: kindNumber[step] as number,
      days: kindDays[step] as number,
    }),
  }
}
