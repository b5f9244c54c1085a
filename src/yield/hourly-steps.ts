import type { HourlyClimate } from '../climate/index.js'
import { airMass, atDay, eccentricityFactor, ephemeris } from '../sun/index.js'
import { SkyStepBuilder, type SkySteps } from './sky-steps.js'

const RADIANS = Math.PI / 180

/**
 * The steps of an hourly weather file. The sun stands where it is at the middle of the hour, or of the part of the hour
 * in which it is up.
 *
 * @param climate Hours that end at their stamps, local standard time.
 * @param solarConstantWM2 Solar constant, W/m2.
 */
export function hourlySteps(climate: HourlyClimate, solarConstantWM2: number): SkySteps {
  const { declinationDeg, equationOfTimeMin } = ephemeris()
  const sinPhi = Math.sin(climate.latitudeDeg * RADIANS)
  const cosPhi = Math.cos(climate.latitudeDeg * RADIANS)
  const builder = new SkyStepBuilder(climate.length)
  const fileRow = new Uint32Array(climate.length)
  const nightHours = new Float64Array(12)
  const values = Array.from({ length: 11 }, () => 0)
  const leap = climate.length > 8760 ? 1 : 0
  let normalWM2 = 0
  let lastDay = -1
  for (let row = 0; row < climate.length; row += 1) {
    const dayOfYear = climate.dayOfYear[row] as number
    const month = (climate.month[row] as number) - 1
    const hour = climate.hour[row] as number
    if (dayOfYear !== lastDay) {
      lastDay = dayOfYear
      normalWM2 = solarConstantWM2 * eccentricityFactor(dayOfYear)
    }
    // Calendar days after 29 February stand one day later in a leap year's count.
    const calendarDay = dayOfYear - 1 - (leap === 1 && dayOfYear > 59 ? 1 : 0)
    const utDay = calendarDay + (hour - 0.5 - climate.utcOffsetH) / 24
    const delta = atDay(declinationDeg, utDay) * RADIANS
    const sinDelta = Math.sin(delta)
    const cosDelta = Math.cos(delta)
    const solarHour = hour - 0.5 - climate.utcOffsetH + climate.longitudeDeg / 15 + atDay(equationOfTimeMin, utDay) / 60
    let middle = (solarHour - 12) * 15
    middle -= 360 * Math.round(middle / 360)
    const cosSunset = (-sinPhi * sinDelta) / (cosPhi * cosDelta)
    const sunset = Math.acos(Math.min(1, Math.max(-1, cosSunset))) / RADIANS
    const from = Math.max(middle - 7.5, -sunset)
    const to = Math.min(middle + 7.5, sunset)
    if (to <= from) {
      nightHours[month] = (nightHours[month] as number) + 1
      continue
    }
    const angle = ((from + to) / 2) * RADIANS
    const up = Math.max(1e-6, sinPhi * sinDelta + cosPhi * cosDelta * Math.cos(angle))
    values[0] = 1
    values[1] = -cosDelta * Math.sin(angle)
    values[2] = cosPhi * sinDelta - sinPhi * cosDelta * Math.cos(angle)
    values[3] = up
    values[4] = airMass(Math.acos(Math.min(1, up)) / RADIANS)
    values[5] = normalWM2
    values[6] = climate.dniWM2[row] as number
    values[7] = climate.dhiWM2[row] as number
    values[8] = climate.ghiWM2[row] as number
    values[9] = climate.dryBulbC[row] as number
    values[10] = climate.windMs[row] as number
    fileRow[builder.length] = row
    builder.add(month, builder.length, values)
  }
  return builder.finish({
    sunCount: builder.length,
    fileRow: fileRow.subarray(0, builder.length),
    nightHours,
    label: (step) => {
      const row = fileRow[step] as number
      return { month: climate.month[row] as number, day: climate.day[row] as number, hour: climate.hour[row] as number }
    },
  })
}
