import type { CircuitValues, ConductorValues, WiringValues } from '../../electrical/index.js'
import { label, line, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, wrapText, type Box, type Primitive } from '../model/index.js'
import {
  converterSymbol,
  inverterSymbol,
  shutdownUnitSymbol,
  sourceSymbol,
  switchSymbol,
} from '../diagram/one-line-symbols.js'
import type { PacketInput } from '../inputs.js'
import type { OneLineSource } from '../sheets/one-line-sources.js'
import { own } from '../../values/index.js'
import type { Across } from './across.js'
import { boxOn, bundle, poles, ROW_PT, tagStroke, wireNames, wiresOf, type Slots, type Wire } from './wires.js'

const SIZE = TYPE_PT.small
/** From words over a row to its first wire, with the tags between them, and from its last wire to the next row, points. */
const ABOVE_PT = 22
const BELOW_PT = 20
/** Share of the width for words beside their wires. */
const WORDS = 0.17

/** What the drawers of the PV system share. */
export interface PvJob {
  readonly input: PacketInput
  readonly wiring: WiringValues
  readonly slots: Slots
  readonly box: Box
  readonly across: Across
}

/** A row of wires that leaves what is drawn so far. */
export interface Leaving {
  readonly circuit: CircuitValues
  readonly wires: readonly Wire[]
  readonly x: number
  readonly y: number
}

export const conductorsOf = ({ wiring }: PvJob, ids: readonly string[]): ConductorValues[] =>
  wiring.conductors.filter(({ tag, circuits }) => /^\d/u.test(tag) && circuits.some((id) => ids.includes(id)))

/** Conductors of a circuit one after the other between two places, boxes where one ends and the next begins. */
export function inSeries(
  { slots }: PvJob,
  conductors: readonly ConductorValues[],
  circuit: CircuitValues | undefined,
  [from, to]: readonly [number, number],
  y: number,
): { readonly drawn: Primitive[]; readonly last: readonly Wire[] } {
  const step = (to - from) / conductors.length
  const drawn = conductors.flatMap((conductor, index) => {
    const wires = wiresOf(conductor, circuit)
    const [start, end] = [from + index * step, from + (index + 1) * step]
    return [
      ...bundle(slots, wires, start, end, y),
      ...wireNames(
        slots,
        newcomers(wires, index === 0 ? [] : wiresOf(conductors[index - 1] ?? conductor, circuit)),
        start + (index === 0 ? 14 : 21),
        y,
      ),
      ...tagStroke(slots, wires, (start + end) / 2 + (index === 0 ? 5 : 0), y, conductor.tag),
      ...(index === conductors.length - 1
        ? []
        : boxOn(slots, end, y, conductor.circuits[0] === conductors[index + 1]?.circuits[0] ? 'JB' : 'DC combiner')),
    ]
  })
  const last = conductors.at(-1)
  return { drawn, last: last === undefined ? [] : wiresOf(last, circuit) }
}

/** Wires that begin where those before them went on. */
const newcomers = (wires: readonly Wire[], before: readonly Wire[]): Wire[] =>
  wires.filter((wire) => !before.includes(wire))

const wordsOf = ({ title, lines }: OneLineSource): string => [title, ...lines].join('\n')

/** Width of the words of a row: a share of the sheet beside its wires, above them up to the inverter or collector. */
const wordsPt = ({ box, across }: PvJob, { unit }: OneLineSource): number =>
  box.width * (across.stacked ? (unit === undefined ? across.combiner : across.inverter) - across.symbol : WORDS) -
  (across.stacked ? 10 : 0)

/** Height of a row, and from its upper edge to the middle of its wires, points. */
export function rowPlace(job: PvJob, source: OneLineSource): { readonly heightPt: number; readonly middlePt: number } {
  const lines = wordsOf(source)
    .split('\n')
    .flatMap((line) => wrapText(line, SIZE, 'plain', wordsPt(job, source))).length
  if (!job.across.stacked) {
    const heightPt = Math.max(ROW_PT, blockHeightPt(lines, SIZE) + 6)
    return { heightPt, middlePt: heightPt / 2 }
  }
  const middlePt = blockHeightPt(lines, SIZE) + ABOVE_PT + job.slots.halfPt
  return { heightPt: middlePt + job.slots.halfPt + BELOW_PT, middlePt }
}

/** A row from the modules to the collector, or to the string inverter. */
export function drawRow(job: PvJob, source: OneLineSource, y: number): { drawn: Primitive[]; leaving: Leaving } {
  const { box, across, slots, wiring } = job
  const { circuit, device, unit } = source
  const micro = unit === undefined
  const x = box.x + box.width * across.symbol
  const start = x + (micro ? 56 : device === undefined ? 26 : 50)
  const end = box.x + box.width * (micro ? across.combiner : across.inverter)
  const [first, ...rest] = (wiring.dc_combiners ?? []).filter(({ strings }) => strings.includes(circuit.id))
  const combiner = rest.length === 0 ? first : undefined
  const leads = combiner === undefined || combiner.strings[0] === circuit.id
  const ids = [circuit.id, ...(combiner !== undefined && leads ? [combiner.id] : [])]
  const outside = micro
    ? undefined
    : Object.values(job.input.project.electrical?.disconnects ?? {}).find(({ kind }) => kind === 'dc')
  const stop = end - (outside === undefined ? 0 : 36)
  const series = inSeries(job, conductorsOf(job, ids), circuit, [start, leads ? stop : stop - 60], y)
  const wires = series.last
  return {
    drawn: [
      label(across.stacked ? x : box.x, across.stacked ? y - slots.halfPt - ABOVE_PT : y, wordsOf(source), {
        sizePt: SIZE,
        valign: across.stacked ? 'bottom' : 'middle',
        maxWidthPt: wordsPt(job, source),
      }),
      ...sourceSymbol(x, y),
      ...(micro ? [line(x + 26, y, x + 33, y), ...inverterSymbol(x + 33, y, 22)] : []),
      ...(device === undefined
        ? []
        : [
            line(x + 26, y, x + 32, y),
            ...(device === 'converter' ? converterSymbol(x + 32, y) : shutdownUnitSymbol(x + 32, y)),
          ]),
      // Terminals of what feeds the row.
      line(start, y - 21, start, y + 21, { pen: 'medium' }),
      line(x + (micro ? 55 : device === undefined ? 26 : 50), y, start, y),
      ...series.drawn,
      ...(leads
        ? []
        : [label(stop - 56, y, `to DC combiner ${combiner?.id}`, { sizePt: SIZE, valign: 'middle', maxWidthPt: 56 })]),
      ...(outside === undefined || !leads ? [] : dcDisconnect(slots, wires, stop + 18, y)),
    ],
    leaving: { circuit, wires: leads ? wires : [], x: end, y },
  }
}

function dcDisconnect(slots: Slots, wires: readonly Wire[], x: number, y: number): Primitive[] {
  return [
    { kind: 'rectangle', x: x - 14, y: y - 26, width: 28, height: 48, pen: 'medium', fill: 'white' },
    ...bundle(slots, wires, x - 18, x + 18, y),
    ...poles(slots, wires, x, y, (at, each) => switchSymbol(at, each, 'left')),
    label(x, y + 23, 'DC', { sizePt: SIZE, align: 'center' }),
  ]
}

/** A string inverter with its inputs on the left; its output leaves at its middle. */
export function drawInverter(
  job: PvJob,
  unit: string,
  inputs: readonly Leaving[],
): { drawn: Primitive[]; leaving: Leaving | undefined } {
  const { box, across, slots, wiring, input } = job
  const circuit = wiring.circuits.find(({ id }) => id === unit)
  const stated = own(input.project.equipment.inverters, own(input.project.inverter_units, unit)?.inverter)
  const x = box.x + box.width * across.inverter
  const end = box.x + box.width * across.combiner
  const ys = inputs.map((each) => each.y)
  const [top, bottom] = [Math.min(...ys) - 24, Math.max(...ys) + 24]
  const y = (top + bottom) / 2
  const conductors = conductorsOf(job, [unit])
  const series = inSeries(job, conductors, circuit, [x + 62, end], y)
  const drawn: Primitive[] = [
    { kind: 'rectangle', x, y: top, width: 62, height: bottom - top, pen: 'medium' },
    label(x, top - 2, `INVERTER ${unit}`, { sizePt: SIZE, face: 'bold', valign: 'bottom' }),
    ...inputs.flatMap((each) => [
      ...bundle(slots, each.wires, x, x + 24, each.y),
      ...(stated?.dc_disconnect === true
        ? poles(slots, each.wires, x + 12, each.y, (at, to) => switchSymbol(at, to, 'left'))
        : []),
    ]),
    line(x + 26, top + 6, x + 26, bottom - 6, { pen: 'medium' }),
    ...inverterSymbol(x + 34, y, 18),
    line(x + 58, y - 21, x + 58, y + 21, { pen: 'medium' }),
    ...(series.last.length === 0 ? [] : bundle(slots, wiresOf(conductors[0]!, circuit), x + 58, x + 62, y)),
    ...series.drawn,
  ]
  return { drawn, leaving: circuit === undefined ? undefined : { circuit, wires: series.last, x: end, y } }
}
