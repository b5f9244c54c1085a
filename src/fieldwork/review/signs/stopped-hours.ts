import type { LitReadings } from '../hour-model.js'
import type { FoundSign } from './sign.js'

/** Power below this share of a clear sky is none: the darkest cloud leaves more. Our own judgement. */
const NOTHING = 0.004
/** Only while a clear sky gives this share of the day's most, and between readings of so much of the clear sky. */
const BRIGHT = 0.3
const ALIVE = 0.15
/** Shorter stops than this, h, are trips; as many days of them are a sign. */
const TRIP_H = 2
const TRIP_DAYS = 3

interface Stop {
  readonly day: number
  readonly hours: number
  readonly lostKwh: number
  /** Whether the sun stood clear before and after. */
  readonly isBetweenSun: boolean
}

/**
 * Hours without output in the middle of days that have some: stops of a part of a day, and short trips that come again, as an
 * inverter makes when the voltage of the utility is too high.
 *
 * @param without Days without any output, which are told by themselves.
 */
export function stoppedHours(lit: LitReadings, without: ReadonlySet<number>): FoundSign[] {
  const stops = stopsOf(lit).filter((stop) => !without.has(stop.day))
  const long = stops.filter((stop) => stop.hours >= TRIP_H)
  const trips = stops.filter((stop) => stop.hours < TRIP_H && stop.isBetweenSun)
  const tripDays = new Set(trips.map((stop) => stop.day))
  return [...longStops(long), ...(tripDays.size >= TRIP_DAYS ? [tripSign(trips, tripDays.size)] : [])]
}

function stopsOf(lit: LitReadings): Stop[] {
  const stops: Stop[] = []
  for (let at = 0; at < lit.length; at += 1) {
    if (!isStopped(lit, at)) continue
    const first = at
    let [hours, lostKwh] = [0, 0]
    for (; at < lit.length && lit.day[at] === lit.day[first] && isStopped(lit, at); at += 1) {
      hours += lit.hours[at]!
      lostKwh += 0.6 * lit.clearKw[at]! * lit.hours[at]!
    }
    const isAlive = (place: number): boolean =>
      place >= 0 &&
      place < lit.length &&
      lit.day[place] === lit.day[first] &&
      lit.kw[place]! > ALIVE * lit.clearKw[place]!
    stops.push({ day: lit.day[first]!, hours, lostKwh, isBetweenSun: isAlive(first - 1) && isAlive(at) })
  }
  return stops
}

function isStopped(lit: LitReadings, at: number): boolean {
  return lit.clearKw[at]! >= BRIGHT * lit.peakKw[at]! && lit.kw[at]! < NOTHING * lit.clearKw[at]!
}

/** Neighbouring days are one sign. */
function longStops(stops: readonly Stop[]): FoundSign[] {
  const groups: Stop[][] = []
  for (const stop of stops) {
    const last = groups.at(-1)
    if (last !== undefined && stop.day - last.at(-1)!.day <= 2) last.push(stop)
    else groups.push([stop])
  }
  return groups.map((group) => {
    const hours = group.reduce((sum, stop) => sum + stop.hours, 0)
    return {
      kind: 'outage',
      fromDay: group[0]!.day,
      toDay: group.at(-1)!.day,
      probability: hours >= 3 ? 0.99 : 0.9,
      lostKwh: group.reduce((sum, stop) => sum + stop.lostKwh, 0),
      where: 'the whole system',
      says: `no output for ${hours.toFixed(1)} h of bright daytime, on days that have some before or after`,
      lookAt: 'read the error memory of the inverter for these hours; ask whether the utility was off',
    }
  })
}

function tripSign(trips: readonly Stop[], days: number): FoundSign {
  const hours = trips.reduce((sum, stop) => sum + stop.hours, 0)
  return {
    kind: 'trips',
    fromDay: trips[0]!.day,
    toDay: trips.at(-1)!.day,
    probability: days >= 10 ? 0.99 : 0.95,
    lostKwh: trips.reduce((sum, stop) => sum + stop.lostKwh, 0),
    where: 'the inverter and its connection to the utility',
    says: `the output falls to nothing and comes back within ${TRIP_H} h, in the sun, on ${days} days (${hours.toFixed(1)} h)`,
    lookAt:
      'stop, do not climb: when the error memory names ground, insulation or arc, switch off at the labelled place and call an electrician; voltage too high is for the utility',
  }
}
