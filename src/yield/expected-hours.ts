import { DAYS_IN_MONTH } from '../climate/index.js'
import { atDay, ephemeris } from '../sun/index.js'
import { dealDays, type DayMixture } from './deal-days.js'
import type { YieldRun } from './run-yield.js'
import type { SystemAc } from './system-ac.js'
import type { KilowattHours } from '../values/index.js'

/**
 * How the kinds of day of a monthly climate become days: `dealt` gives each day of a month a kind of its own, `mean`
 * makes all days of a month alike. The mean day has no dull and no clear hours, so it hides exports.
 */
export type DayChoice = 'dealt' | 'mean'

/** A year of 365 days hour by hour. */
export interface ExpectedHours {
  /**
   * Energy at the connection, kWh, 8760 hours of local STANDARD time from 1 January 0 to 1 h on; below zero in the dark
   * where inverters draw power. The sum of each month is that of the estimate.
   */
  readonly kwh: Float64Array
  readonly from: 'weather_file' | 'dealt_days' | 'mean_days'
  /** Energy of a 29 February of the weather file, which is left out, kWh. */
  readonly leapDayKwh: KilowattHours
}

const HOURS = 8760

/**
 * Hours of the year that is expected: those of the weather file, or the kinds of day laid over the days of each month and
 * moved from solar to clock time by longitude and the equation of time of the day.
 *
 * @param days Which days a monthly climate gives; a weather file has its own.
 * @param system AC side of a part of the same estimate; the whole when missing.
 * @limits Days of a monthly climate have the length of the month's mean day, and follow each other without memory.
 */
export function expectedHours(run: YieldRun, days: DayChoice = 'dealt', system: SystemAc = run.system): ExpectedHours {
  return run.climate.kind === 'hourly' ? hoursOfFile(run, system) : hoursOfKinds(run, system, days)
}

/** First hour of each month, and the end of the year. */
const MONTH_STARTS = [0, ...DAYS_IN_MONTH].map(
  (_, month) => 24 * DAYS_IN_MONTH.slice(0, month).reduce((sum, days) => sum + days, 0),
)

/** Energy of the whole system by month, kWh, night consumption taken off. */
function monthlyKwh(system: SystemAc): number[] {
  return Array.from({ length: 12 }, (_, month) => {
    let sum = 0
    for (const array of system.arrays.values()) sum += array.acKwh[month]!
    return sum
  })
}

function stepKwh(run: YieldRun, system: SystemAc, step: number): KilowattHours {
  return (system.acW[step]! * run.steps.hours[step]!) / 1000
}

function hoursOfFile(run: YieldRun, system: SystemAc): ExpectedHours {
  const { climate, steps } = run
  if (climate.kind !== 'hourly' || steps.fileRow === undefined) throw new Error('an hourly file is needed')
  const kwh = new Float64Array(HOURS)
  const rowKwh = new Float64Array(climate.length).fill(Number.NaN)
  const night = monthlyKwh(system)
  for (let step = 0; step < steps.length; step += 1) {
    const energy = stepKwh(run, system, step)
    rowKwh[steps.fileRow[step]!] = energy
    night[steps.month[step]!] = night[steps.month[step]!]! - energy
  }
  let leapDayKwh = 0
  for (let row = 0; row < climate.length; row += 1) {
    const month = climate.month[row]! - 1
    const day = climate.day[row]!
    const lit = rowKwh[row]!
    const energy = Number.isNaN(lit) ? (night[month]! / steps.nightHours[month]!) * climate.stepH : lit
    if (month === 1 && day === 29) leapDayKwh += energy
    else {
      const midnight = MONTH_STARTS[month]! + (day - 1) * 24
      spread(kwh, midnight, climate.middleH[row]! - climate.stepH / 2, climate.stepH, energy)
    }
  }
  return { kwh, from: 'weather_file', leapDayKwh }
}

/** A step of a kind of day, in solar time. */
interface CourseStep {
  readonly fromH: number
  readonly lengthH: number
  readonly kwhPerDay: number
}

function hoursOfKinds(run: YieldRun, system: SystemAc, choice: DayChoice): ExpectedHours {
  const kwh = new Float64Array(HOURS)
  const { utcOffsetH, longitudeDeg } = run.climate
  const { equationOfTimeMin } = ephemeris()
  const months = coursesByMonth(run, system)
  const targets = monthlyKwh(system)
  for (const [month, { courses, kindDays }] of months.entries()) {
    const start = MONTH_STARTS[month]!
    const end = MONTH_STARTS[month + 1]!
    const mixtures = choice === 'mean' ? meanDays(kindDays) : dealDays(kindDays, month)
    for (const [day, mixture] of mixtures.entries()) {
      const midnight = start + 24 * day
      const noonUtDay = midnight / 24 + 0.5 - longitudeDeg / 360
      const shiftH = utcOffsetH - longitudeDeg / 15 - atDay(equationOfTimeMin, noonUtDay) / 60
      for (const [kind, share] of mixture) {
        for (const step of courses.get(kind) ?? []) {
          spread(kwh, midnight, step.fromH + shiftH, step.lengthH, step.kwhPerDay * share)
        }
      }
    }
    addNight(kwh, start, end, targets[month]!)
  }
  return { kwh, from: choice === 'mean' ? 'mean_days' : 'dealt_days', leapDayKwh: 0 }
}

function coursesByMonth(run: YieldRun, system: SystemAc) {
  const months = DAYS_IN_MONTH.map((days) => ({
    days,
    courses: new Map<number, CourseStep[]>(),
    kindDays: new Map<number, number>(),
  }))
  for (let step = 0; step < run.steps.length; step += 1) {
    const { month, hour, dayType = 1, days = 1 } = run.steps.label(step)
    const entry = months[month - 1] as (typeof months)[number]
    const lengthH = run.steps.hours[step]! / days
    entry.kindDays.set(dayType, days)
    const kwhPerDay = stepKwh(run, system, step) / days
    if (kwhPerDay <= 0) continue
    const course = entry.courses.get(dayType) ?? []
    entry.courses.set(dayType, course)
    course.push({ fromH: hour - lengthH / 2, lengthH, kwhPerDay })
  }
  return months
}

function meanDays(kindDays: ReadonlyMap<number, number>): DayMixture[] {
  const days = Math.round([...kindDays.values()].reduce((sum, each) => sum + each, 0))
  const mixture = new Map([...kindDays].map(([kind, each]) => [kind, each / days]))
  return Array.from({ length: days }, () => mixture)
}

/** Shares the energy of a stretch of time out over the clock hours of its day; what leaves the day comes in at its other end. */
function spread(kwh: Float64Array, midnight: number, fromH: number, lengthH: number, energyKwh: KilowattHours): void {
  const toH = fromH + lengthH
  for (let hour = Math.floor(fromH); hour < toH; hour += 1) {
    const overlap = Math.min(toH, hour + 1) - Math.max(fromH, hour)
    const index = midnight + (((hour % 24) + 24) % 24)
    kwh[index] = kwh[index]! + (energyKwh * overlap) / lengthH
  }
}

/** Spreads what a month still lacks (night consumption) over its hours without sun. */
function addNight(kwh: Float64Array, start: number, end: number, targetKwh: KilowattHours): void {
  let sum = 0
  let dark = 0
  for (let hour = start; hour < end; hour += 1) {
    sum += kwh[hour]!
    if (kwh[hour] === 0) dark += 1
  }
  const hours = dark === 0 ? end - start : dark
  for (let hour = start; hour < end; hour += 1) {
    if (dark === 0 || kwh[hour] === 0) kwh[hour] = kwh[hour]! + (targetKwh - sum) / hours
  }
}
