import type { Production } from '../../project/index.js'
import { changeHours, MS_PER_HOUR, standardMs } from '../../values/index.js'
import type { TakenSetting } from './production-series.js'
import type { Readings } from './readings.js'
import type { StampSteps } from './stamp-steps.js'

/**
 * Beginnings of the rows in local standard time, as ms as if UTC, in place of their clocks; NaN for a time that does not exist.
 */
export function standardBeginnings(
  { clockMs, offsetH, length }: Readings,
  { resolution, stepMs }: StampSteps,
  mapping: Production,
  utcOffsetH: number,
  taken: TakenSetting[],
): { readonly clock: 'local' | 'standard' | 'utc'; readonly beginMs: Float64Array } {
  const beginMs = clockMs.subarray(0, length)
  if (resolution !== 'interval') return { clock: mapping.clock ?? 'standard', beginMs }
  const mark =
    mapping.stamps_mark ??
    take(taken, 'stamps_mark', 'beginning', 'the file does not say which end of its interval a stamp marks')
  const shift = mark === 'ending' ? stepMs : 0
  for (let at = 0; at < length; at += 1) beginMs[at] = beginMs[at]! - shift
  if (offsetH !== undefined) {
    for (let at = 0; at < length; at += 1) {
      const own = Number.isNaN(offsetH[at]!) ? utcOffsetH : offsetH[at]!
      beginMs[at] = beginMs[at]! + (utcOffsetH - own) * MS_PER_HOUR
    }
    return { clock: 'utc', beginMs }
  }
  const clock = mapping.clock ?? take(taken, 'clock', ...guessClock(beginMs))
  if (clock === 'utc') for (let at = 0; at < length; at += 1) beginMs[at] = beginMs[at]! + utcOffsetH * MS_PER_HOUR
  if (clock === 'local') fromLocal(beginMs)
  return { clock, beginMs }
}

/** The second time that a clock shows the same in the hour that comes twice is the later one. */
function fromLocal(clocks: Float64Array): void {
  const seen = new Set<number>()
  for (let at = 0; at < clocks.length; at += 1) {
    const ms = clocks[at]!
    const first = standardMs(ms, false)
    const second = standardMs(ms, true)
    clocks[at] = (seen.has(ms) ? second : first) ?? Number.NaN
    if (first !== second) seen.add(ms)
  }
}

/** The days on which the clock changes give it away: an hour that is missing in spring, one that comes twice in autumn. */
function guessClock(clocks: Float64Array): readonly ['local' | 'standard', string] {
  const changes = yearsOf(clocks).map((year) => ({ year, ...changeHours(year) }))
  const counts = new Map(
    changes
      .flatMap(({ skippedMs, twiceMs }) => [skippedMs, twiceMs])
      .flatMap((ms) => [ms - MS_PER_HOUR, ms, ms + MS_PER_HOUR])
      .map((ms) => [ms, 0]),
  )
  for (const ms of clocks) {
    const count = counts.get(ms)
    if (count !== undefined) counts.set(ms, count + 1)
  }
  const times = (ms: number): number => counts.get(ms) ?? 0
  for (const { year, skippedMs, twiceMs } of changes) {
    const around = (ms: number): boolean => times(ms - MS_PER_HOUR) > 0 && times(ms + MS_PER_HOUR) > 0
    if (around(skippedMs) && times(skippedMs) === 0) {
      return ['local', `the hour from 02:00 is missing on the day in ${year} on which clocks go forward`]
    }
    if (around(twiceMs) && times(twiceMs) === 2) {
      return ['local', `the hour from 01:00 comes twice on the day in ${year} on which clocks go back`]
    }
  }
  return [
    'standard',
    'the file does not say whether its clock changes to daylight saving time, and no change of clocks is seen in it',
  ]
}

/** Years in the order in which they first come. */
function yearsOf(clocks: Float64Array): number[] {
  const years = new Set<number>()
  let [from, end, year] = [0, 0, 0]
  for (const ms of clocks) {
    if (ms < from || ms >= end) {
      year = new Date(ms).getUTCFullYear()
      ;[from, end] = [Date.UTC(year, 0, 1), Date.UTC(year + 1, 0, 1)]
    }
    years.add(year)
  }
  return [...years]
}

function take<Value extends string>(taken: TakenSetting[], key: string, value: Value, why: string): Value {
  taken.push({ path: `production.${key}`, value, why })
  return value
}
