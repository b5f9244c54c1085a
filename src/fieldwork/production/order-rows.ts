import type { Finding } from '../../worksheet/index.js'
import { plural } from './plural.js'
import type { FindCells, TimedReadings } from './readings.js'

/** Puts rows in order of time, those with the same time as they stand in the file, and tells it. */
export function sortRows(rows: TimedReadings, findings: Finding[]): void {
  const { beginMs, line, length } = rows
  let [late, firstLine] = [0, 0]
  for (let at = 1; at < length; at += 1) {
    if (!(beginMs[at]! < beginMs[at - 1]!)) continue
    if (late === 0) firstLine = line[at]!
    late += 1
  }
  if (late === 0) return
  findings.push({
    severity: 'note',
    id: 'output.rows-out-of-order',
    message: `${plural(late, 'row')} stand before an earlier time, the first on line ${firstLine}; they were sorted`,
    where: 'production',
  })
  const order = Uint32Array.from({ length }, (_, at) => at).sort((a, b) => beginMs[a]! - beginMs[b]! || a - b)
  for (const column of [beginMs, rows.value, line, ...rows.modules]) {
    const before = column.slice(0, length)
    order.forEach((from, at) => {
      column[at] = before[from]!
    })
  }
}

/** Equal repeats count once; of unequal ones nobody knows which is right, and none counts. Rows are in order of time. */
export function dropRepeats(rows: TimedReadings, file: string, find: FindCells, findings: Finding[]): void {
  const { beginMs, value, line, length } = rows
  const columns = [beginMs, value, line, ...rows.modules]
  const same = { count: 0, line: 0 }
  const different = { count: 0, line: 0 }
  let kept = 0
  for (let at = 0; at < length;) {
    let [end, differs] = [at + 1, false]
    // Rows are in order of time, so that repeats are neighbours.
    for (; end < length && beginMs[end] === beginMs[at]; end += 1) {
      if (!Object.is(value[end], value[at])) differs ||= value[end] !== value[at]
    }
    if (end > at + 1) {
      const told = differs ? different : same
      if (told.count === 0) told.line = line[at + 1]!
      told.count += end - at - 1
    }
    if (kept !== at) for (const column of columns) column[kept] = column[at]!
    if (differs) for (const column of [value, ...rows.modules]) column[kept] = Number.NaN
    kept += 1
    at = end
  }
  rows.length = kept
  const cells = find.reading([same, different].flatMap((told) => (told.count === 0 ? [] : [told.line])))
  const at = (own: number): string => `${file}:${cells.get(own)?.line ?? 0}:${cells.get(own)?.column ?? 0}`
  if (same.count > 0) {
    findings.push({
      severity: 'note',
      id: 'output.rows-repeated',
      message: `${plural(same.count, 'row')} repeat a time with the same value, the first at ${at(same.line)}; each time counts once`,
      where: 'production',
    })
  }
  if (different.count > 0) {
    findings.push({
      severity: 'warning',
      id: 'output.rows-contradict',
      message: `${plural(different.count, 'row')} repeat a time with another value, the first at ${at(different.line)}; these times are left out`,
      where: 'production',
      fix: 'find out which reading is right and delete the other',
    })
  }
}
