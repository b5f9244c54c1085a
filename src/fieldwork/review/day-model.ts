import { DAYS_IN_MONTH } from '../../climate/index.js'
import type { YieldRun } from '../../yield/index.js'
import { calendarDay, radiansOf, type KilowattHours } from '../../values/index.js'

/** Kinds of equal probability into which each month's days are sorted. */
export const KIND_COUNT = 10
/** Days between the middles of two months one apart from a third, 2 x 365.25 / 12. */
const TWO_MONTHS_DAYS = 60.9375

/** What a day of each month may give. */
export interface DayModel {
  /** AC energy of the kinds of day of a month, kWh, lowest first; index 0 = January. */
  readonly kindsKwh: readonly (readonly number[])[]
  readonly meanKwh: readonly KilowattHours[]
  /** Centre of gravity of the power of a clear day, hours of solar time; undefined for a month without sun. */
  readonly centreSolarH: readonly (number | undefined)[]
}

/**
 * The distribution of daily energy by month, from an energy estimate: its kinds of day, or the days of its weather file
 * sorted into ten kinds of equal probability. The mean of a month is the estimate's, night consumption included.
 */
export function dayModel(run: YieldRun): DayModel {
  const { steps, system, result } = run
  const days = new Map<string, { month: number; kwh: KilowattHours; weight: number; moment: number; power: number }>()
  for (let step = 0; step < steps.length; step += 1) {
    const label = steps.label(step)
    const key = `${label.month}/${label.dayType ?? label.day ?? 0}`
    const day = days.get(key) ?? { month: label.month - 1, kwh: 0, weight: 0, moment: 0, power: 0 }
    const hours = steps.hours[step]! / (label.days ?? 1)
    const kwh = (system.acW[step]! * hours) / 1000
    day.kwh += kwh
    day.weight = label.days ?? 1
    day.moment += Math.max(0, kwh) * solarHour(run, step)
    day.power += Math.max(0, kwh)
    days.set(key, day)
  }
  const kindsKwh: KilowattHours[][] = []
  const centreSolarH: (number | undefined)[] = []
  for (let month = 0; month < 12; month += 1) {
    const own = [...days.values()].filter((day) => day.month === month).toSorted((a, b) => a.kwh - b.kwh)
    const target = (result.values.monthly[month]?.ac_kwh ?? 0) / DAYS_IN_MONTH[month]!
    const kinds = own.length === 0 ? Array.from({ length: KIND_COUNT }, () => 0) : equalKinds(own)
    const mean = kinds.reduce((sum, kwh) => sum + kwh, 0) / KIND_COUNT
    kindsKwh.push(kinds.map((kwh) => kwh + target - mean))
    const clear = own.slice(-Math.max(1, Math.round(own.length / KIND_COUNT)))
    const power = clear.reduce((sum, day) => sum + day.power, 0)
    centreSolarH.push(power > 0 ? clear.reduce((sum, day) => sum + day.moment, 0) / power : undefined)
  }
  return {
    kindsKwh,
    meanKwh: kindsKwh.map((kinds) => kinds.reduce((sum, kwh) => sum + kwh, 0) / KIND_COUNT),
    centreSolarH,
  }
}

/** Solar time of a step from the direction to the sun: that is what both kinds of step share. */
function solarHour({ steps, climate }: YieldRun, step: number): number {
  const phi = radiansOf(climate.latitudeDeg)
  const [east, north, up] = [steps.sunEast[step]!, steps.sunNorth[step]!, steps.sunUp[step]!]
  // East = -cos(declination) sin(hour angle); towards the equator in the equatorial plane = cos(declination) cos(hour angle).
  const hourAngle = Math.atan2(-east, up * Math.cos(phi) - north * Math.sin(phi))
  return 12 + (hourAngle * 12) / Math.PI
}

/** Means of ten equal shares of sorted days. */
function equalKinds(days: readonly { kwh: KilowattHours; weight: number }[]): number[] {
  const total = days.reduce((sum, day) => sum + day.weight, 0)
  const share = total / KIND_COUNT
  const sums = Array.from({ length: KIND_COUNT }, () => 0)
  let at = 0
  for (const day of days) {
    let left = day.weight
    while (left > 1e-12) {
      const kind = Math.min(KIND_COUNT - 1, Math.floor(at / share + 1e-9))
      const part = kind === KIND_COUNT - 1 ? left : Math.min(left, (kind + 1) * share - at)
      sums[kind] = sums[kind]! + (part / share) * day.kwh
      at += part
      left -= part
    }
  }
  return sums
}

/**
 * Kinds of one day, kWh: those of its month, carried along the course of the year within the month so that the month's
 * mean stays.
 *
 * @param day Number of the day from 1970-01-01.
 */
export function kindsOfDay(model: DayModel, day: number): number[] {
  const { month, dayOfMonth, daysInMonth } = calendarDay(day)
  const mean = model.meanKwh[month]!
  const rise = (model.meanKwh[(month + 1) % 12]! - model.meanKwh[(month + 11) % 12]!) / TWO_MONTHS_DAYS
  const factor = mean > 0 ? 1 + (rise * (dayOfMonth - (daysInMonth + 1) / 2)) / mean : 1
  return (model.kindsKwh[month] as readonly number[]).map((kwh) => kwh * Math.min(1.5, Math.max(0.5, factor)))
}
