import type { EnergyUnit } from './find-columns.js'
import type { TimedReadings } from './readings.js'

/** Readings below which nothing is said of the kind of a meter. */
const LEAST_READINGS = 10

/** Whether the readings are energy of their intervals, or those of a counter. */
export function guessMeter(unit: EnergyUnit, namedCumulative: boolean, rows: TimedReadings): 'interval' | 'cumulative' {
  if (unit === 'kw' || unit === 'w') return 'interval'
  if (namedCumulative) return 'cumulative'
  let [rises, falls, count, before] = [0, 0, 0, Number.NaN]
  for (let at = 0; at < rows.length; at += 1) {
    const value = rows.value[at]!
    if (Number.isNaN(value)) continue
    if (value > before) rises += 1
    else if (value < before) falls += 1
    before = value
    count += 1
  }
  if (count < LEAST_READINGS) return 'interval'
  // A counter may be reset now and then; energies of days or hours fall about as often as they rise.
  return rises >= 5 && falls <= rises / 20 ? 'cumulative' : 'interval'
}
