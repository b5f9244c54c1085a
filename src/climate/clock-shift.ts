import { spencerSun } from './spencer-sun.js'
import type { HourlyClimate } from './types.js'
import { RADIANS_PER_DEGREE } from '../values/index.js'

/** How well the three radiations of a file agree, as they stand and with the best clock. */
export interface ClockShift {
  /** Hours to add to the stamps so that direct, diffuse and global radiation agree best; 0 when the clock is right. */
  readonly shiftH: number
  /** Root mean square of DNI cos z + DHI - GHI with the stamps as they are, W/m2. */
  readonly rmsAsStampedWM2: number
  /** The same with the stamps moved by `shiftH`. */
  readonly rmsShiftedWM2: number
}

/** Hours with less global radiation say little, W/m2. */
const LEAST_GHI_WM2 = 50
/** Hours with a lower sun lie too near to sunrise for one position an hour, cos z. */
const LEAST_COS_ZENITH = 0.1

/**
 * Finds the clock error of a file of hours: the shift of its stamps, -1.5 to 1.5 h in steps of 0.05 h, with which
 * DNI cos z + DHI fits GHI best, the sun taken at the middle of the interval.
 *
 * @param climate The file; its longitude and time zone count as part of its clock.
 * @param everyNthDay 1 uses all days, 3 every third.
 * @param inMonths Which months count, 1 to 12; all when missing.
 */
export function clockShift(climate: HourlyClimate, everyNthDay = 3, inMonths?: (month: number) => boolean): ClockShift {
  const hours = daylightHours(climate, everyNthDay, inMonths)
  const asStamped = closureRms(hours, 0)
  let best = { shiftH: 0, rms: asStamped }
  for (let twentieth = -30; twentieth <= 30; twentieth++) {
    const rms = closureRms(hours, twentieth / 20)
    if (rms < best.rms) best = { shiftH: twentieth / 20, rms }
  }
  return { shiftH: best.shiftH, rmsAsStampedWM2: asStamped, rmsShiftedWM2: best.rms }
}

/**
 * Root mean square of DNI cos z + DHI - GHI over the daylight hours (GHI above 50 W/m2, cos z above 0.1).
 *
 * @param climate The file.
 * @param shiftH Hours added to its stamps; the sun is taken at the middle of the moved interval.
 * @returns W/m2; 0 when no hour is bright enough.
 */
export function closureRmsWM2(climate: HourlyClimate, shiftH: number): number {
  return closureRms(daylightHours(climate, 1), shiftH)
}

interface DaylightHours {
  readonly count: number
  /** cos z = high + cosine cos(shift) - sine sin(shift), the declination being still for some hours. */
  readonly high: Float64Array
  readonly cosine: Float64Array
  readonly sine: Float64Array
  readonly dni: Float64Array
  /** GHI - DHI. */
  readonly beam: Float64Array
}

function daylightHours(
  climate: HourlyClimate,
  everyNthDay: number,
  inMonths: (month: number) => boolean = () => true,
): DaylightHours {
  const size = climate.length
  const [high, cosine, sine] = [new Float64Array(size), new Float64Array(size), new Float64Array(size)]
  const [dni, beam] = [new Float64Array(size), new Float64Array(size)]
  const [sinLatitude, cosLatitude] = [
    Math.sin(climate.latitudeDeg * RADIANS_PER_DEGREE),
    Math.cos(climate.latitudeDeg * RADIANS_PER_DEGREE),
  ]
  let count = 0
  const rowsPerDay = Math.round(24 / climate.stepH)
  for (let from = 0; from < size; from += everyNthDay * rowsPerDay) {
    if (!inMonths(climate.month[from]!)) continue
    const sun = spencerSun(climate.dayOfYear[from]!)
    const offsetH = sun.equationOfTimeH + climate.longitudeDeg / 15 - climate.utcOffsetH - 12
    for (let row = from; row < from + rowsPerDay; row++) {
      if (climate.ghiWM2[row]! <= LEAST_GHI_WM2) continue
      const omega = (climate.middleH[row]! + offsetH) * 15 * RADIANS_PER_DEGREE
      high[count] = sinLatitude * sun.sinDeclination
      cosine[count] = cosLatitude * sun.cosDeclination * Math.cos(omega)
      sine[count] = cosLatitude * sun.cosDeclination * Math.sin(omega)
      dni[count] = climate.dniWM2[row]!
      beam[count] = climate.ghiWM2[row]! - climate.dhiWM2[row]!
      count++
    }
  }
  return { count, high, cosine, sine, dni, beam }
}

function closureRms(hours: DaylightHours, shiftH: number): number {
  const [cosShift, sinShift] = [Math.cos(shiftH * 15 * RADIANS_PER_DEGREE), Math.sin(shiftH * 15 * RADIANS_PER_DEGREE)]
  let sum = 0
  let used = 0
  for (let index = 0; index < hours.count; index++) {
    const cosZenith = hours.high[index]! + hours.cosine[index]! * cosShift - hours.sine[index]! * sinShift
    if (cosZenith <= LEAST_COS_ZENITH) continue
    const error = hours.dni[index]! * cosZenith - hours.beam[index]!
    sum += error * error
    used++
  }
  return used === 0 ? 0 : Math.sqrt(sum / used)
}
