import type { TableCell } from '../../values/index.js'
import { MS_PER_HOUR } from '../../values/index.js'
import { dropImpossible } from './drop-impossible.js'
import { guessMeter } from './meter-kind.js'
import { dropRepeats, sortRows } from './order-rows.js'
import { plural } from './plural.js'
import { differences, energies } from './row-energy.js'
import type { SpanList } from './span-list.js'
import type { SpanRequest } from './span-request.js'

/** Turns rows into energy of stretches of time: sorts, drops repeats, takes differences of a counter, drops what cannot be. */
export function makeSpans(request: SpanRequest): { spans: SpanList; meter: 'interval' | 'cumulative' } | undefined {
  const { file, rows, find, unit, mapping, stepMs, complain, findings, taken } = request
  const firstLine = rows.line[0] ?? 0
  const firstCell = (): TableCell | undefined => find.reading([firstLine]).get(firstLine)
  const empty = emptyCells(request)
  sortRows(rows, findings)
  dropRepeats(rows, file, find, findings)
  const meter = mapping.meter ?? guessMeter(unit, request.namedCumulative, rows)
  if (meter === 'cumulative' && (unit === 'kw' || unit === 'w')) {
    complain(firstCell(), `a cumulative meter cannot read ${unit}; declare unit as kwh or wh, or meter as interval`)
    return undefined
  }
  if (mapping.meter === undefined) {
    const why =
      meter === 'cumulative' ? 'the readings only rise, or the column name says so' : 'the readings do not only rise'
    taken.push({ path: 'production.meter', value: meter, why })
  }
  const perUnit = unit === 'wh' || unit === 'w' ? 0.001 : 1
  const factor = unit === 'kwh' || unit === 'wh' ? perUnit : (perUnit * stepMs) / MS_PER_HOUR
  const spans = meter === 'cumulative' ? differences(request, factor) : energies(request, factor)
  if (!dropImpossible(request, spans)) return undefined
  if (spans.length === 0) complain(firstCell(), 'no row holds a reading that can be used')
  else if (empty.count > 0) {
    findings.push({
      severity: 'note',
      id: 'output.cells-empty',
      message: `${plural(empty.count, 'row')} hold no reading, the first on line ${empty.line}`,
      where: 'production',
    })
  }
  return { spans, meter }
}

/** Rows without a reading, and the line of the first in the file. */
function emptyCells({ rows }: SpanRequest): { readonly count: number; readonly line: number } {
  let [count, line] = [0, 0]
  for (let at = 0; at < rows.length; at += 1) {
    if (!Number.isNaN(rows.value[at]!)) continue
    if (count === 0) line = rows.line[at]!
    count += 1
  }
  return { count, line }
}
