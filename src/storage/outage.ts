import type { Battery } from './battery.js'

/** What keeps running when the grid is away. */
export interface EssentialSteps {
  /** kWh by the hour of the day, 24 of them. */
  readonly kwhOfHour: Float64Array
  /** Output of the modules in the island, kWh by step; none where they do not run without the grid. */
  readonly pvKwh: Float64Array | undefined
}

/** Longest outage that is looked at: a week, in steps of an hour. */
export const LONGEST_OUTAGE_H = 168

/**
 * Hours that the essential loads last, for an outage that begins with each hour of the year.
 *
 * The reserve is released; what was stored before the hour is what the ordinary control left. The year goes round. Within the
 * last hour the share that is served counts.
 *
 * @param storedKwh At the end of each hour by the ordinary control, kWh. @param startKwh Before the first hour.
 */
export function outageHours(
  essential: EssentialSteps,
  battery: Battery,
  storedKwh: Float64Array,
  startKwh: number,
  hourOf: (step: number) => number = (step) => step % 24,
): Float64Array {
  const count = storedKwh.length
  const lasts = new Float64Array(count)
  for (let start = 0; start < count; start++) {
    let stored = start === 0 ? startKwh : storedKwh[start - 1]!
    let hours = 0
    while (hours < LONGEST_OUTAGE_H) {
      const step = (start + hours) % count
      const pv = Math.max(0, essential.pvKwh?.[step] ?? 0)
      const net = essential.kwhOfHour[hourOf(step)]! + battery.standbyKw - pv
      if (net <= 0) {
        const charge = Math.min(-net, battery.chargeSunKw, Math.max(0, battery.mostKwh - stored) / battery.storedOfSun)
        stored += charge * battery.storedOfSun
        hours += 1
        continue
      }
      const can = Math.min(stored * battery.givenOfStored, battery.dischargeKw)
      if (can < net - 1e-12) {
        // What it cannot carry at all ends at once; what it runs out of ends within the hour.
        hours += battery.dischargeKw < net ? 0 : can / net
        break
      }
      stored -= net / battery.givenOfStored
      hours += 1
    }
    lasts[start] = hours
  }
  return lasts
}
