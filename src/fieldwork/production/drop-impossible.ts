import type { KilowattHours } from '../../values/index.js'
import { plural } from './plural.js'
import type { Span, SpanColumns } from './span-list.js'
import type { SpanRequest } from './span-request.js'

/** Share of impossible rows above which the unit, not the row, is wrong. */
const WRONG_UNIT_SHARE = 0.25
/** Own consumption at night may be metered as negative energy, as a share of the most that the system can give. */
const NIGHT_SHARE = 0.02
/** Readings that are named one by one. */
const MOST_NAMED = 5

/** Leaves out readings that this system cannot give; false, with a complaint, when there are so many that the unit must be wrong. */
export function dropImpossible(request: SpanRequest, spans: SpanColumns): boolean {
  const { file, unit, limits, complain, findings, find } = request
  const cannotBe = ({ startMs, endMs, kwh }: Span): boolean => {
    const most = limits.mostKwh(startMs, endMs)
    return kwh > most || kwh < -NIGHT_SHARE * most
  }
  let [impossible, made, wouldFit] = [0, 0, true]
  const named: Span[] = []
  let worst: Span | undefined
  for (let index = 0; index < spans.length; index += 1) {
    const span = spans.at(index)!
    if (span.kwh > 0) made += 1
    if (!cannotBe(span)) continue
    impossible += 1
    if (named.length < MOST_NAMED) named.push(span)
    if (worst === undefined || Math.abs(span.kwh) > Math.abs(worst.kwh)) worst = span
    wouldFit &&= span.kwh / 1000 <= limits.mostKwh(span.startMs, span.endMs)
  }
  if (worst === undefined) return true
  if (impossible > WRONG_UNIT_SHARE * Math.max(1, made) && made > 3) {
    const guess =
      wouldFit && unit.startsWith('k')
        ? `; as ${unit.slice(1)} they would fit`
        : '; a counter is declared with meter: cumulative'
    complain(
      find.reading([worst.line]).get(worst.line),
      `${impossible} of ${spans.length} readings are more than this system can give when read as ${unit}${guess}`,
    )
    return false
  }
  const cells = find.reading(named.map(({ line }) => line))
  const list = named.map(({ line, kwh }) => `${file}:${line}:${cells.get(line)?.column ?? 1} (${sayKwh(kwh)})`)
  findings.push({
    severity: 'warning',
    id: 'output.reading-impossible',
    message: `${plural(impossible, 'reading')} cannot be and are left out: ${list.join(', ')}${impossible > MOST_NAMED ? ' ...' : ''}`,
    where: 'production',
    fix: 'a single value a thousand times too large is a slip of the unit; correct it in the file',
  })
  spans.keep((span) => !cannotBe(span))
  return true
}

/** Rounded, but not the largest of all numbers up to none. */
function sayKwh(kwh: KilowattHours): string {
  return Math.abs(kwh) < 1e15 ? `${Number(kwh.toPrecision(4))} kWh` : `${kwh.toExponential(3)} kWh`
}
