import type { Stamp } from './stamp-reader.js'
import { isDaylightSaving, nthWeekday, type Seconds } from '../../values/index.js'

/** Turns stamps of a meter table into Unix seconds; undefined for a local time that the spring change skips. */
export type ClockReader = (stamp: Stamp) => number | undefined

/**
 * Reader for one clock. Of a local time that comes twice in autumn, the first is daylight saving time.
 *
 * @param utcOffsetS Local standard time minus UTC, seconds.
 */
export function clockReader(clock: 'local' | 'standard' | 'utc', utcOffsetS: Seconds, ending: boolean): ClockReader {
  const seen = new Set<number>()
  return (stamp) => {
    if (stamp.utcS !== undefined) return stamp.utcS
    const { year, month, day, minute } = stamp
    const wallS = Date.UTC(year, month - 1, day) / 1000 + minute * 60
    if (clock === 'utc') return wallS
    if (clock === 'standard') return wallS - utcOffsetS
    if (month === 3 && day === nthWeekday(year, 3, 0, 2) && minute >= 120 && minute < 180) {
      return ending && minute === 120 ? wallS - utcOffsetS : undefined
    }
    const twice = month === 11 && day === nthWeekday(year, 11, 0, 1) && minute >= 60 && minute < 120
    if (twice) {
      const second = seen.has(wallS)
      seen.add(wallS)
      return wallS - utcOffsetS - (second ? 0 : 3600)
    }
    // Away from the changes, the standard hour is the wall hour less the shift that is asked about.
    const shifted = isDaylightSaving(year, month, day, minute / 60 - 1)
    return wallS - utcOffsetS - (shifted ? 3600 : 0)
  }
}
