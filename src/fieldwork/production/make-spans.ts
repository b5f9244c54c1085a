import type { Production } from '../../project/index.js'
import type { Finding } from '../../worksheet/index.js'
import type { EnergyUnit } from './find-columns.js'
import type { Resolution, Span, TakenSetting } from './production-series.js'
import type { ProductionLimits, RawRow } from './raw-row.js'
import type { Complain } from './read-stamps.js'
import { MS_PER_DAY, MS_PER_HOUR, type KilowattHours, type Milliseconds } from '../../values/index.js'

/** Share of impossible rows above which the unit, not the row, is wrong. */
const WRONG_UNIT_SHARE = 0.25
/** Own consumption at night may be metered as negative energy, as a share of the most that the system can give. */
const NIGHT_SHARE = 0.02

export interface SpanRequest {
  readonly file: string
  readonly rows: readonly RawRow[]
  readonly unit: EnergyUnit
  readonly mapping: Production
  readonly namedCumulative: boolean
  readonly resolution: Resolution
  readonly namedMonths: boolean
  readonly stepMs: Milliseconds
  readonly limits: ProductionLimits
  readonly complain: Complain
  readonly findings: Finding[]
  readonly taken: TakenSetting[]
  /** Takes the times at which a counter went back. */
  readonly resets: Milliseconds[]
}

/** Turns rows into energy of stretches of time: sorts, drops repeats, takes differences of a counter, drops what cannot be. */
export function makeSpans(request: SpanRequest): { spans: Span[]; meter: 'interval' | 'cumulative' } | undefined {
  const { rows, unit, mapping, stepMs, complain, findings, taken } = request
  const ordered = dropRepeats(request, sortRows(request))
  const meter = mapping.meter ?? guessMeter(request, ordered)
  if (meter === 'cumulative' && (unit === 'kw' || unit === 'w')) {
    complain(rows[0]?.cell, `a cumulative meter cannot read ${unit}; declare unit as kwh or wh, or meter as interval`)
    return undefined
  }
  if (mapping.meter === undefined) {
    const why =
      meter === 'cumulative' ? 'the readings only rise, or the column name says so' : 'the readings do not only rise'
    taken.push({ path: 'production.meter', value: meter, why })
  }
  const perUnit = unit === 'wh' || unit === 'w' ? 0.001 : 1
  const factor = unit === 'kwh' || unit === 'wh' ? perUnit : (perUnit * stepMs) / MS_PER_HOUR
  const energies =
    meter === 'cumulative'
      ? differences(request, ordered, factor)
      : ordered.flatMap((row) => energyOf(request, row, factor))
  const spans = dropImpossible(request, energies)
  if (spans !== undefined && spans.length === 0) complain(rows[0]?.cell, 'no row holds a reading that can be used')
  else if (spans !== undefined) tellMissingCells(rows, findings)
  return spans === undefined ? undefined : { spans, meter }
}

function sortRows({ rows, findings }: SpanRequest): RawRow[] {
  const late = rows.filter((row, at) => at > 0 && row.beginMs < rows[at - 1]!.beginMs)
  if (late.length > 0) {
    findings.push({
      severity: 'note',
      id: 'output.rows-out-of-order',
      message: `${plural(late.length, 'row')} stand before an earlier time, the first on line ${late[0]?.cell.line ?? 0}; they were sorted`,
      where: 'production',
    })
  }
  return rows.toSorted((a, b) => a.beginMs - b.beginMs)
}

/** Equal repeats count once; of unequal ones nobody knows which is right, and none counts. */
function dropRepeats({ file, findings }: SpanRequest, rows: readonly RawRow[]): RawRow[] {
  const same: RawRow[] = []
  const different: RawRow[] = []
  const kept: RawRow[] = []
  for (let at = 0; at < rows.length;) {
    const first = rows[at]!
    let [end, differs] = [at + 1, false]
    // Rows are in order of time, so that repeats are neighbours.
    for (; end < rows.length && rows[end]!.beginMs === first.beginMs; end += 1) {
      if (rows[end]!.value !== first.value) differs = true
    }
    if (end > at + 1) (differs ? different : same).push(...rows.slice(at + 1, end))
    kept.push(differs ? { ...first, value: undefined, moduleValues: first.moduleValues.map(() => undefined) } : first)
    at = end
  }
  const at = (row: RawRow | undefined): string => `${file}:${row?.cell.line ?? 0}:${row?.cell.column ?? 0}`
  if (same.length > 0) {
    findings.push({
      severity: 'note',
      id: 'output.rows-repeated',
      message: `${plural(same.length, 'row')} repeat a time with the same value, the first at ${at(same[0])}; each time counts once`,
      where: 'production',
    })
  }
  if (different.length > 0) {
    findings.push({
      severity: 'warning',
      id: 'output.rows-contradict',
      message: `${plural(different.length, 'row')} repeat a time with another value, the first at ${at(different[0])}; these times are left out`,
      where: 'production',
      fix: 'find out which reading is right and delete the other',
    })
  }
  return kept
}

function guessMeter({ namedCumulative, unit }: SpanRequest, rows: readonly RawRow[]): 'interval' | 'cumulative' {
  if (unit === 'kw' || unit === 'w') return 'interval'
  if (namedCumulative) return 'cumulative'
  const values = rows.flatMap((row) => row.value ?? [])
  if (values.length < 10) return 'interval'
  let [rises, falls] = [0, 0]
  for (let at = 1; at < values.length; at += 1) {
    if (values[at]! > values[at - 1]!) rises += 1
    else if (values[at]! < values[at - 1]!) falls += 1
  }
  // A counter may be reset now and then; energies of days or hours fall about as often as they rise.
  return rises >= 5 && falls <= rises / 20 ? 'cumulative' : 'interval'
}

function energyOf({ resolution, stepMs }: SpanRequest, row: RawRow, factor: number): Span[] {
  if (row.value === undefined) return []
  const startMs = resolution === 'interval' ? row.beginMs : Math.floor(row.beginMs / MS_PER_DAY) * MS_PER_DAY
  const first = resolution === 'month' ? monthOf(startMs) : startMs
  const endMs = resolution === 'month' ? monthOf(first + 32 * MS_PER_DAY) : first + stepMs
  return [
    {
      startMs: first,
      endMs,
      kwh: row.value * factor,
      moduleKwh: row.moduleValues.map((value) => times(value, factor)),
      line: row.cell.line,
    },
  ]
}

/** Energy between two readings of a counter. A date without time is read at the end of that day unless declared otherwise. */
function differences(
  { resolution, namedMonths, mapping, stepMs, findings, resets: resetMs }: SpanRequest,
  rows: readonly RawRow[],
  factor: number,
): Span[] {
  const atEnd = resolution !== 'interval' && mapping.stamps_mark !== 'beginning'
  const readAt = (row: RawRow): number =>
    resolution === 'interval'
      ? row.beginMs + (mapping.stamps_mark === 'ending' ? stepMs : 0)
      : !namedMonths
        ? row.beginMs + (atEnd ? MS_PER_DAY : 0)
        : atEnd
          ? monthOf(monthOf(row.beginMs) + 32 * MS_PER_DAY)
          : monthOf(row.beginMs)
  const known = rows.filter((row) => row.value !== undefined)
  const resets: RawRow[] = []
  const spans: Span[] = []
  for (let at = 1; at < known.length; at += 1) {
    const [before, row] = [known[at - 1]!, known[at]!]
    const rise = (row.value as number) - (before.value as number)
    if (rise < 0) {
      resets.push(row)
      resetMs.push(row.beginMs)
      continue
    }
    const moduleKwh = row.moduleValues.map((value, index) => {
      const earlier = before.moduleValues[index]
      return value === undefined || earlier === undefined || value < earlier ? undefined : (value - earlier) * factor
    })
    spans.push({ startMs: readAt(before), endMs: readAt(row), kwh: rise * factor, moduleKwh, line: row.cell.line })
  }
  if (resets.length > 0) {
    findings.push({
      severity: 'note',
      id: 'output.meter-reset',
      message: `the counter went back ${plural(resets.length, 'time')}, first on line ${resets[0]?.cell.line ?? 0}; what was made between the readings before and after is unknown and left out`,
      where: 'production',
    })
  }
  return spans
}

function dropImpossible(
  { file, rows, unit, limits, complain, findings }: SpanRequest,
  spans: readonly Span[],
): Span[] | undefined {
  const most = spans.map((span) => limits.mostKwh(span.startMs, span.endMs))
  const impossible = spans.filter((span, at) => span.kwh > most[at]! || span.kwh < -NIGHT_SHARE * most[at]!)
  const made = spans.filter((span) => span.kwh > 0)
  if (impossible.length === 0) return [...spans]
  const cellOf = (span: Span): RawRow | undefined => rows.find((row) => row.cell.line === span.line)
  const [worst] = impossible.toSorted((a, b) => Math.abs(b.kwh) - Math.abs(a.kwh))
  if (impossible.length > WRONG_UNIT_SHARE * Math.max(1, made.length) && made.length > 3) {
    const thousandth = spans.every((span, at) => span.kwh / 1000 <= most[at]!)
    const cell = worst === undefined ? undefined : cellOf(worst)?.cell
    const guess =
      thousandth && unit.startsWith('k')
        ? `; as ${unit.slice(1)} they would fit`
        : '; a counter is declared with meter: cumulative'
    complain(
      cell,
      `${impossible.length} of ${spans.length} readings are more than this system can give when read as ${unit}${guess}`,
    )
    return undefined
  }
  const list = impossible
    .slice(0, 5)
    .map((span) => `${file}:${span.line}:${cellOf(span)?.cell.column ?? 1} (${sayKwh(span.kwh)})`)
  findings.push({
    severity: 'warning',
    id: 'output.reading-impossible',
    message: `${plural(impossible.length, 'reading')} cannot be and are left out: ${list.join(', ')}${impossible.length > 5 ? ' ...' : ''}`,
    where: 'production',
    fix: 'a single value a thousand times too large is a slip of the unit; correct it in the file',
  })
  const dropped = new Set(impossible)
  return spans.filter((span) => !dropped.has(span))
}

function tellMissingCells(rows: readonly RawRow[], findings: Finding[]): void {
  const empty = rows.filter((row) => row.value === undefined)
  if (empty.length === 0) return
  findings.push({
    severity: 'note',
    id: 'output.cells-empty',
    message: `${plural(empty.length, 'row')} hold no reading, the first on line ${empty[0]?.cell.line ?? 0}`,
    where: 'production',
  })
}

/** First instant of the month. */
function monthOf(ms: number): number {
  const date = new Date(ms)
  return Date.UTC(date.getUTCFullYear(), date.getUTCMonth(), 1)
}

function times(value: number | undefined, factor: number): number | undefined {
  return value === undefined ? undefined : value * factor
}

function plural(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`
}

/** Rounded, but not the largest of all numbers up to none. */
function sayKwh(kwh: KilowattHours): string {
  return Math.abs(kwh) < 1e15 ? `${Number(kwh.toPrecision(4))} kWh` : `${kwh.toExponential(3)} kWh`
}
