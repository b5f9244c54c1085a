import type { Production } from '../../project/index.js'
import {
  MS_PER_DAY,
  MS_PER_HOUR,
  MS_PER_MINUTE,
  changeHours,
  needsOrder,
  orderOf,
  parseStamp,
  standardMs,
  type DateOrder,
  type Milliseconds,
  type Stamp,
  type TableCell,
  type TableRow,
} from '../../values/index.js'
import type { Resolution, TakenSetting } from './production-series.js'

/** A row with its time; the others have been complained about. */
export interface StampedRow {
  readonly row: TableRow
  readonly stamp: TableCell
  readonly clockMs: Milliseconds
  /** Offset from UTC in the text, h. */
  readonly offsetH: number | undefined
}

export interface StampedRows {
  readonly rows: readonly StampedRow[]
  readonly resolution: Resolution
  /** Whether the stamps name months rather than days. */
  readonly namedMonths: boolean
  readonly stepMs: Milliseconds
}

export type Complain = (cell: TableCell | undefined, message: string) => void

/** Reads the stamps of all rows and finds how far apart they are; undefined when that cannot be told. */
export function readStamps(
  rows: readonly TableRow[],
  timeColumns: readonly number[],
  mapping: Production,
  complain: Complain,
): StampedRows | undefined {
  const texts = rows.map((row) =>
    timeColumns
      .map((at) => row.texts[at] ?? '')
      .join(' ')
      .trim(),
  )
  const order = mapping.date_order ?? fileOrder(texts)
  if (order === 'both' || order === 'unknown') {
    const message =
      order === 'both'
        ? 'dates of this file can be read neither as month/day nor as day/month throughout'
        : `'${texts.find(needsOrder) ?? ''}' may be month/day or day/month; declare date_order`
    complain(rows[0]?.cell(timeColumns[0] ?? 0), message)
    return undefined
  }
  const kinds = new Set<Stamp['kind']>()
  const stamped = rows.flatMap((row, index): StampedRow[] => {
    const cell = row.cell(timeColumns[0] ?? 0)
    const stamp = parseStamp(texts[index] ?? '', order)
    if (cell === undefined || stamp === undefined) {
      complain(
        cell,
        `'${texts[index] ?? ''}' is no date or time that exists; write 2026-07-31, 2026-07-31 14:00 or 2026-07`,
      )
      return []
    }
    kinds.add(stamp.kind)
    return [{ row, stamp: cell, clockMs: stamp.clockMs, offsetH: stamp.offsetH }]
  })
  if (stamped.length === 0) return undefined
  const stepMs = commonStep(stamped)
  if (kinds.has('month') && kinds.size > 1) {
    complain(stamped[0]?.stamp, 'some rows name a month and others a day; use one kind in a file')
    return undefined
  }
  const namedMonths = kinds.has('month')
  if (namedMonths || (stepMs >= 28 * MS_PER_DAY && wholeMonths(stamped)))
    return { rows: stamped, resolution: 'month', namedMonths, stepMs }
  if (stepMs >= MS_PER_DAY || !kinds.has('time'))
    return { rows: stamped, resolution: 'day', namedMonths, stepMs: MS_PER_DAY }
  if (stepMs < MS_PER_MINUTE || MS_PER_HOUR % stepMs !== 0) {
    complain(
      stamped[1]?.stamp,
      `rows are mostly ${stepMs / MS_PER_MINUTE} minutes apart; intervals of 1 to 60 minutes that fit into an hour, days and months are read`,
    )
    return undefined
  }
  return { rows: stamped, resolution: 'interval', namedMonths, stepMs }
}

function fileOrder(texts: readonly string[]): DateOrder | 'both' | 'unknown' {
  if (!texts.some(needsOrder)) return 'month_first'
  const said = new Set(texts.flatMap((text) => orderOf(text) ?? []))
  if (said.size === 2) return 'both'
  return [...said][0] ?? 'unknown'
}

/** Whether all dates are the first day of a month, or all the last. */
function wholeMonths(rows: readonly StampedRow[]): boolean {
  const isFirst = (ms: number): boolean => new Date(ms).getUTCDate() === 1
  return rows.every((row) => isFirst(row.clockMs)) || rows.every((row) => isFirst(row.clockMs + MS_PER_DAY))
}

/** The commonest distance between neighbours in time; the shorter when two are equally common. */
function commonStep(rows: readonly StampedRow[]): number {
  const sorted = rows.map((row) => row.clockMs - (row.offsetH ?? 0) * MS_PER_HOUR).toSorted((a, b) => a - b)
  const counts = new Map<number, number>()
  for (let at = 1; at < sorted.length; at += 1) {
    const step = sorted[at]! - sorted[at - 1]!
    if (step > 0) counts.set(step, (counts.get(step) ?? 0) + 1)
  }
  const [best] = [...counts].toSorted((a, b) => b[1] - a[1] || a[0] - b[0])
  return best?.[0] ?? MS_PER_DAY
}

/** Beginnings of the rows in local standard time, as ms as if UTC; undefined for a time that does not exist. */
export function standardBeginnings(
  { rows, resolution, stepMs }: StampedRows,
  mapping: Production,
  utcOffsetH: number,
  taken: TakenSetting[],
): { readonly clock: 'local' | 'standard' | 'utc'; readonly beginMs: readonly (number | undefined)[] } {
  if (resolution !== 'interval') return { clock: mapping.clock ?? 'standard', beginMs: rows.map((row) => row.clockMs) }
  const mark =
    mapping.stamps_mark ??
    take(taken, 'stamps_mark', 'beginning', 'the file does not say which end of its interval a stamp marks')
  const shift = mark === 'ending' ? stepMs : 0
  const clocks = rows.map((row) => row.clockMs - shift)
  if (rows.some((row) => row.offsetH !== undefined)) {
    return {
      clock: 'utc',
      beginMs: rows.map((row, at) => clocks[at]! + (utcOffsetH - (row.offsetH ?? utcOffsetH)) * MS_PER_HOUR),
    }
  }
  const clock = mapping.clock ?? take(taken, 'clock', ...guessClock(clocks))
  if (clock === 'standard') return { clock, beginMs: clocks }
  if (clock === 'utc') return { clock, beginMs: clocks.map((ms) => ms + utcOffsetH * MS_PER_HOUR) }
  const seen = new Set<number>()
  return {
    clock,
    beginMs: clocks.map((ms) => {
      const again = seen.has(ms)
      seen.add(ms)
      return standardMs(ms, again)
    }),
  }
}

/** The days on which the clock changes give it away: an hour that is missing in spring, one that comes twice in autumn. */
function guessClock(clocks: readonly number[]): readonly ['local' | 'standard', string] {
  const all = new Set(clocks)
  const years = new Set(clocks.map((ms) => new Date(ms).getUTCFullYear()))
  for (const year of years) {
    const { skippedMs, twiceMs } = changeHours(year)
    const around = (ms: number): boolean => all.has(ms - MS_PER_HOUR) && all.has(ms + MS_PER_HOUR)
    if (around(skippedMs) && !all.has(skippedMs)) {
      return ['local', `the hour from 02:00 is missing on the day in ${year} on which clocks go forward`]
    }
    if (around(twiceMs) && clocks.filter((ms) => ms === twiceMs).length === 2) {
      return ['local', `the hour from 01:00 comes twice on the day in ${year} on which clocks go back`]
    }
  }
  return [
    'standard',
    'the file does not say whether its clock changes to daylight saving time, and no change of clocks is seen in it',
  ]
}

function take<Value extends string>(taken: TakenSetting[], key: string, value: Value, why: string): Value {
  taken.push({ path: `production.${key}`, value, why })
  return value
}
