import {
  changeHours,
  MS_PER_DAY,
  MS_PER_HOUR,
  MS_PER_SECOND,
  SECONDS_PER_HOUR,
  standardMs,
  type Seconds,
  type Stamp,
} from '../../values/index.js'

/** Turns stamps of a meter table into Unix seconds; undefined for a local time that the spring change skips. */
export type ClockReader = (stamp: Stamp) => Seconds | undefined

/**
 * Reader for one clock. Of a local time that comes twice in autumn, the first is daylight saving time.
 *
 * @param utcOffsetS Local standard time minus UTC, seconds.
 * @param ending Whether stamps mark the end of an interval: the one that ends as the skipped hour begins is there.
 */
export function clockReader(clock: 'local' | 'standard' | 'utc', utcOffsetS: Seconds, ending: boolean): ClockReader {
  const seen = new Set<number>()
  return ({ clockMs, offsetH }) => {
    const wallS = clockMs / MS_PER_SECOND
    if (offsetH !== undefined) return wallS - offsetH * SECONDS_PER_HOUR
    if (clock === 'utc') return wallS
    if (clock === 'standard') return wallS - utcOffsetS
    const { skippedMs, twiceMs } = changeHours(new Date(clockMs).getUTCFullYear())
    if (ending && clockMs === skippedMs) return wallS - utcOffsetS
    const second = seen.has(clockMs)
    if (clockMs >= twiceMs && clockMs < twiceMs + MS_PER_HOUR) seen.add(clockMs)
    const standard = standardMs(clockMs, second)
    return standard === undefined ? undefined : standard / MS_PER_SECOND - utcOffsetS
  }
}

/** The stamp some minutes after midnight of another's day, on the same clock. */
export function minutesAfterMidnight(day: Stamp, minutes: number): Stamp {
  return { clockMs: Math.floor(day.clockMs / MS_PER_DAY) * MS_PER_DAY + minutes * 60 * MS_PER_SECOND, kind: 'time' }
}
