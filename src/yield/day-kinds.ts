import { dayTypes, type MonthlyClimate } from '../climate/index.js'
import { erbsHourly } from '../sun/index.js'
import { findRoot, type Degrees } from '../values/index.js'

/** Hour angle over which the lean of a day unfolds, degrees; chosen on 45 stations, see DAY_SHAPE_SOURCE. */
const LEAN_ANGLE_DEG = 30
/** Least factor by which the lean may lower the light of an hour. */
const LEAST_LEAN = 0.02
/** Ends of the search for the exponent of the diffuse fraction. */
const EXPONENTS = [0.1, 8] as const

/** An instant of the mean day: the middle of one of the equal parts of its daylight. */
export interface DayInstant {
  /** Hour angle, afternoon positive, degrees. */
  readonly hourAngleDeg: Degrees
  /** In proportion to the global irradiance of a symmetric day. */
  readonly share: number
  /** Extraterrestrial irradiance on the level, W/m2. */
  readonly outsideWM2: number
}

/** What is known of a month's mean day. */
export interface MonthMeans {
  /** Global irradiation of the mean day, and outside the atmosphere, Wh/m2. */
  readonly ghiWhM2: number
  readonly outsideWhM2: number
  /** Length of each of the equal parts of daylight, h. */
  readonly stepH: number
  /** Diffuse irradiation of the mean day, Wh/m2; undefined leaves the correlation as it is. */
  readonly dhiWhM2: number | undefined
  /** Shares of global and diffuse irradiation before solar noon; undefined is a symmetric day. */
  readonly morning: { readonly ghi: number; readonly dhi: number } | undefined
}

/** One kind of day: its share of the days, and the light at each instant, W/m2. */
export interface KindOfDay {
  readonly share: number
  readonly ghiWM2: Float64Array
  readonly dhiWM2: Float64Array
}

/** The kinds of day of a month, and what they were made with. */
export interface DayKinds {
  readonly kinds: readonly KindOfDay[]
  /** Mean of |tanh(w / 30 deg)| over the day's light, and the lean that gives the morning its share. */
  readonly meanTanh: number
  readonly lean: number
  /** Diffuse irradiation of the mean day by the correlation alone, Wh/m2. */
  readonly correlationDhiWhM2: number
  /** Exponents of the diffuse fraction before and after noon. */
  readonly exponents: readonly [morning: number, afternoon: number]
}

/** The twelve months' share of a climate's morning, or undefined. */
export function morningOf(climate: MonthlyClimate, month: number): MonthMeans['morning'] {
  if (climate.morning === undefined) return undefined
  return { ghi: climate.morning.ghi[month]!, dhi: climate.morning.dhi[month]! }
}

/**
 * Kinds of day of equal probability, from dull to clear, each with its own course of global and diffuse irradiance.
 *
 * Global: the clearness of the kind, spread over the day by the given shares, which lean by 1 + c tanh(w / 30 deg)
 * so that the month's share falls before noon. Diffuse: the hourly correlation of Erbs et al. at each instant's own
 * clearness, raised to an exponent with which the month's diffuse comes out, morning and afternoon each for itself.
 *
 * @param instants Middles of equal parts of daylight, an even number, symmetric about noon.
 * @param count Number of kinds.
 * @source Bendt, Collares-Pereira & Rabl 1981; Erbs, Klein & Duffie 1982; lean and exponents: DAY_SHAPE_SOURCE.
 * @limits Morning shares from 0.35 to 0.65; nothing was measured in polar day.
 */
export function dayKinds(instants: readonly DayInstant[], month: MonthMeans, count: number): DayKinds {
  const { shares, meanTanh, lean } = leaningShares(instants, month)
  const clearness = Math.min(0.8, Math.max(0.15, month.ghiWhM2 / month.outsideWhM2))
  const kinds = dayTypes(clearness, count).map((kind): KindOfDay => {
    // The mean of the kinds is `clearness`; the ratio carries months outside its range without losing energy.
    const dayWhM2 = (kind.clearness / clearness) * month.ghiWhM2
    const ghiWM2 = new Float64Array(shares.length)
    const dhiWM2 = new Float64Array(shares.length)
    for (let at = 0; at < shares.length; at += 1) {
      const ghi = (dayWhM2 * shares[at]!) / month.stepH
      ghiWM2[at] = ghi
      dhiWM2[at] = ghi * erbsHourly(ghi / instants[at]!.outsideWM2)
    }
    return { share: kind.share, ghiWM2, dhiWM2 }
  })
  const correlationDhiWhM2 = diffuseWhM2(kinds, month.stepH)
  const exponents = fitDiffuse(kinds, instants, month)
  capBeam(kinds, instants)
  return { kinds, meanTanh, lean, correlationDhiWhM2, exponents }
}

/** The shares of the day's light, summing to 1, leaning as the month does. */
function leaningShares(instants: readonly DayInstant[], { morning }: MonthMeans) {
  const sum = instants.reduce((total, { share }) => total + share, 0)
  const tanh = instants.map(({ hourAngleDeg }) => Math.tanh(hourAngleDeg / LEAN_ANGLE_DEG))
  const meanTanh = instants.reduce((total, { share }, at) => total + (share / sum) * Math.abs(tanh[at]!), 0)
  const lean = morning === undefined ? 0 : (1 - 2 * morning.ghi) / meanTanh
  const leaning = instants.map(({ share }, at) => share * Math.max(LEAST_LEAN, 1 + lean * tanh[at]!))
  const leaningSum = leaning.reduce((total, share) => total + share, 0)
  return { shares: leaning.map((share) => share / leaningSum), meanTanh, lean }
}

/** Raises the diffuse fractions so that the month's diffuse comes out: each half of the day, or the day as one. */
function fitDiffuse(
  kinds: readonly KindOfDay[],
  instants: readonly DayInstant[],
  { dhiWhM2, morning, stepH }: MonthMeans,
): readonly [number, number] {
  if (dhiWhM2 === undefined) return [1, 1]
  const isMorning = (at: number): boolean => instants[at]!.hourAngleDeg < 0
  if (morning === undefined) {
    const exponent = raise(kinds, stepH, dhiWhM2, () => true)
    return [exponent, exponent]
  }
  return [
    raise(kinds, stepH, dhiWhM2 * morning.dhi, isMorning),
    raise(kinds, stepH, dhiWhM2 * (1 - morning.dhi), (at) => !isMorning(at)),
  ]
}

/** Exponents closer than this are the same. */
const EXPONENT_TOLERANCE = 1e-6

/**
 * Raises the diffuse fractions of some instants to the exponent with which their diffuse is the target, as far as that is
 * possible.
 *
 * @returns The exponent.
 */
function raise(
  kinds: readonly KindOfDay[],
  stepH: number,
  targetWhM2: number,
  belongs: (at: number) => boolean,
): number {
  const room = kinds.length * (kinds[0]?.ghiWM2.length ?? 0)
  const weight = new Float64Array(room)
  const log = new Float64Array(room)
  let count = 0
  for (const { share, ghiWM2, dhiWM2 } of kinds) {
    for (let at = 0; at < ghiWM2.length; at += 1) {
      const ghi = ghiWM2[at]!
      if (!(ghi > 0) || !belongs(at)) continue
      weight[count] = share * stepH * ghi
      log[count] = Math.log(dhiWM2[at]! / ghi)
      count += 1
    }
  }
  const excess = (exponent: number): number => {
    let sum = -targetWhM2
    for (let index = 0; index < count; index += 1) sum += weight[index]! * Math.exp(exponent * log[index]!)
    return sum
  }
  const [low, high] = EXPONENTS
  const exponent = findRoot(excess, low, high, EXPONENT_TOLERANCE) ?? (excess(low) <= 0 ? low : high)
  let index = 0
  for (const { ghiWM2, dhiWM2 } of kinds) {
    for (let at = 0; at < ghiWM2.length; at += 1) {
      const ghi = ghiWM2[at]!
      if (!(ghi > 0) || !belongs(at)) continue
      dhiWM2[at] = ghi * Math.exp(exponent * log[index]!)
      index += 1
    }
  }
  return exponent
}

/** Beam from a clear sky never exceeds what arrives outside the atmosphere: what would be more is diffuse. */
function capBeam(kinds: readonly KindOfDay[], instants: readonly DayInstant[]): void {
  for (const { ghiWM2, dhiWM2 } of kinds) {
    for (let at = 0; at < ghiWM2.length; at += 1) {
      dhiWM2[at] = Math.max(dhiWM2[at]!, ghiWM2[at]! - instants[at]!.outsideWM2)
    }
  }
}

function diffuseWhM2(kinds: readonly KindOfDay[], stepH: number): number {
  let sum = 0
  for (const { share, dhiWM2 } of kinds) {
    for (let at = 0; at < dhiWM2.length; at += 1) sum += share * stepH * dhiWM2[at]!
  }
  return sum
}
