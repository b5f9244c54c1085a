import { MS_PER_DAY, MS_PER_HOUR, MS_PER_MINUTE, type Milliseconds, type Stamp } from '../../values/index.js'
import type { Resolution } from './production-series.js'
import type { Complain } from './production-limits.js'
import type { FindCells, Readings } from './readings.js'

/** How far apart the rows of a table stand. */
export interface StampSteps {
  readonly resolution: Resolution
  /** Whether the stamps name months rather than days. */
  readonly namedMonths: boolean
  readonly stepMs: Milliseconds
}

/** Finds how far apart the rows are; undefined, with a complaint, when that cannot be told. */
export function stampSteps(
  readings: Readings,
  kinds: ReadonlySet<Stamp['kind']>,
  find: FindCells,
  complain: Complain,
): StampSteps | undefined {
  const complainAt = (row: number, message: string): void => {
    const line = readings.line[Math.min(row, readings.length - 1)]!
    complain(row < readings.length ? find.stamp([line]).get(line) : undefined, message)
  }
  const stepMs = commonStep(readings)
  if (kinds.has('month') && kinds.size > 1) {
    complainAt(0, 'some rows name a month and others a day; use one kind in a file')
    return undefined
  }
  const namedMonths = kinds.has('month')
  if (namedMonths || (stepMs >= 28 * MS_PER_DAY && wholeMonths(readings)))
    return { resolution: 'month', namedMonths, stepMs }
  if (stepMs >= MS_PER_DAY || !kinds.has('time')) return { resolution: 'day', namedMonths, stepMs: MS_PER_DAY }
  if (stepMs < MS_PER_MINUTE || MS_PER_HOUR % stepMs !== 0) {
    complainAt(
      1,
      `rows are mostly ${stepMs / MS_PER_MINUTE} minutes apart; intervals of 1 to 60 minutes that fit into an hour, days and months are read`,
    )
    return undefined
  }
  return { resolution: 'interval', namedMonths, stepMs }
}

/** Whether all dates are the first day of a month, or all the last. */
function wholeMonths({ clockMs, length }: Readings): boolean {
  const isFirst = (ms: number): boolean => new Date(ms).getUTCDate() === 1
  const rows = clockMs.subarray(0, length)
  return rows.every(isFirst) || rows.every((ms) => isFirst(ms + MS_PER_DAY))
}

/** The commonest distance between neighbours in time; the shorter when two are equally common. */
function commonStep({ clockMs, offsetH, length }: Readings): number {
  const sorted = sortedTimes(clockMs, offsetH, length)
  const counts = new Map<number, number>()
  for (let at = 1; at < length; at += 1) {
    const step = sorted[at]! - sorted[at - 1]!
    if (step > 0) counts.set(step, (counts.get(step) ?? 0) + 1)
  }
  const [best] = [...counts].toSorted((a, b) => b[1] - a[1] || a[0] - b[0])
  return best?.[0] ?? MS_PER_DAY
}

/** The times in order; those of a table in order as they are, without a copy. */
function sortedTimes(clockMs: Float64Array, offsetH: Float64Array | undefined, length: number): Float64Array {
  const rows = clockMs.subarray(0, length)
  const times =
    offsetH === undefined
      ? rows
      : rows.map((ms, at) => ms - (Number.isNaN(offsetH[at]!) ? 0 : offsetH[at]!) * MS_PER_HOUR)
  for (let at = 1; at < length; at += 1) if (times[at]! < times[at - 1]!) return times.toSorted()
  return times
}
