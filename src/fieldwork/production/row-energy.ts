import { MS_PER_DAY, type Milliseconds } from '../../values/index.js'
import { plural } from './plural.js'
import { SpanColumns } from './span-list.js'
import type { SpanRequest } from './span-request.js'

/** Energy of each row, of the interval, day or month that it stands for. */
export function energies({ rows, resolution, stepMs }: SpanRequest, factor: number): SpanColumns {
  const spans = new SpanColumns(rows.length, rows.modules.length)
  for (let at = 0; at < rows.length; at += 1) {
    const value = rows.value[at]!
    if (Number.isNaN(value)) continue
    const beginMs = rows.beginMs[at]!
    const startMs = resolution === 'interval' ? beginMs : Math.floor(beginMs / MS_PER_DAY) * MS_PER_DAY
    const first = resolution === 'month' ? monthOf(startMs) : startMs
    const endMs = resolution === 'month' ? monthOf(first + 32 * MS_PER_DAY) : first + stepMs
    spans.push(first, endMs, value * factor, rows.line[at]!)
    rows.modules.forEach((column, module) => spans.setModule(module, column[at]! * factor))
  }
  return spans
}

/** Energy between two readings of a counter. A date without time is read at the end of that day unless declared otherwise. */
export function differences(request: SpanRequest, factor: number): SpanColumns {
  const { rows, findings, resets: resetMs } = request
  const spans = new SpanColumns(rows.length, rows.modules.length)
  let [resets, resetLine, before] = [0, 0, -1]
  for (let at = 0; at < rows.length; at += 1) {
    if (Number.isNaN(rows.value[at]!)) continue
    const earlier = before
    before = at
    if (earlier < 0) continue
    const rise = rows.value[at]! - rows.value[earlier]!
    if (rise < 0) {
      if (resets === 0) resetLine = rows.line[at]!
      resets += 1
      resetMs.push(rows.beginMs[at]!)
      continue
    }
    spans.push(
      readAt(request, rows.beginMs[earlier]!),
      readAt(request, rows.beginMs[at]!),
      rise * factor,
      rows.line[at]!,
    )
    rows.modules.forEach((column, module) => {
      const [value, held] = [column[at]!, column[earlier]!]
      spans.setModule(module, value < held ? Number.NaN : (value - held) * factor)
    })
  }
  if (resets > 0) {
    findings.push({
      severity: 'note',
      id: 'output.meter-reset',
      message: `the counter went back ${plural(resets, 'time')}, first on line ${resetLine}; what was made between the readings before and after is unknown and left out`,
      where: 'production',
    })
  }
  return spans
}

/** When a counter was read that has a stamp. */
function readAt({ resolution, namedMonths, mapping, stepMs }: SpanRequest, beginMs: Milliseconds): Milliseconds {
  if (resolution === 'interval') return beginMs + (mapping.stamps_mark === 'ending' ? stepMs : 0)
  const atEnd = mapping.stamps_mark !== 'beginning'
  if (!namedMonths) return beginMs + (atEnd ? MS_PER_DAY : 0)
  return atEnd ? monthOf(monthOf(beginMs) + 32 * MS_PER_DAY) : monthOf(beginMs)
}

/** First instant of the month. */
function monthOf(ms: number): number {
  const date = new Date(ms)
  return Date.UTC(date.getUTCFullYear(), date.getUTCMonth(), 1)
}
