import type { CircuitValues, ConductorValues } from '../../electrical/index.js'
import { label, line, TYPE_PT } from '../layout/index.js'
import type { Primitive } from '../model/index.js'
import { tagSymbol } from '../diagram/one-line-symbols.js'

/** A conductor of a circuit by its use: lines, neutral, equipment ground, plus and minus of direct current. */
export type Wire = 'L1' | 'L2' | 'L3' | 'N' | 'G' | '+' | '-'

/** Distance of two wires, and height of a row of them with its tag, points. */
export const PITCH_PT = 10
export const ROW_PT = 64

const SIZE = TYPE_PT.small

/** Places of the wires in a row, from its middle down. */
export interface Slots {
  /** Half of the height of a row of all wires, points. */
  readonly halfPt: number
  readonly phases: 1 | 3
  readonly dy: (wire: Wire) => number
}

/** @param phases Phases of the service: with three there is a place for a third line. */
export function slotsOf(phases: 1 | 3): Slots {
  const order: readonly Wire[] = phases === 3 ? ['L1', 'L2', 'L3', 'N', 'G'] : ['L1', 'L2', 'N', 'G']
  const at: Readonly<Record<Wire, Wire>> = { L1: 'L1', L2: 'L2', L3: 'L3', N: 'N', G: 'G', '+': 'L1', '-': 'L2' }
  return {
    halfPt: ((order.length - 1) / 2) * PITCH_PT,
    phases,
    dy: (wire) => (order.indexOf(at[wire]) - (order.length - 1) / 2) * PITCH_PT,
  }
}

/** Lines of an alternating-current circuit on the service: the pair that it stands on, or all three. */
function linesOf(count: number, circuit: Pick<CircuitValues, 'lines'> | undefined): Wire[] {
  if (count === 3) return ['L1', 'L2', 'L3']
  if (circuit?.lines === 'BC') return ['L2', 'L3']
  return circuit?.lines === 'CA' ? ['L1', 'L3'] : ['L1', 'L2']
}

/** The wires of a conductor of the list, one for each that it counts. */
export function wiresOf({ count }: ConductorValues, circuit: CircuitValues | undefined): Wire[] {
  const direct = circuit?.kind === 'dc_string' || circuit?.kind === 'dc_output'
  return [
    ...(direct ? (['+', '-'] as const) : linesOf(count.lines, circuit)),
    ...(count.neutral > 0 ? (['N'] as const) : []),
    ...(count.ground > 0 ? (['G'] as const) : []),
  ]
}

/** Wires that a switch or breaker opens. */
export const isSwitched = (wire: Wire): boolean => wire !== 'N' && wire !== 'G'

/** One wire from place to place: the equipment ground dashed. */
export const run = (wire: Wire, x1: number, y1: number, x2: number, y2: number): Primitive =>
  line(x1, y1, x2, y2, wire === 'G' ? { pen: 'thin', dash: 'dashed' } : { pen: 'thin' })

/** Level wires of a circuit. */
export const bundle = (slots: Slots, wires: readonly Wire[], x1: number, x2: number, y: number): Primitive[] =>
  wires.map((wire) => run(wire, x1, y + slots.dy(wire), x2, y + slots.dy(wire)))

/** Names of the wires over their beginnings. */
export const wireNames = (slots: Slots, wires: readonly Wire[], x: number, y: number): Primitive[] =>
  wires.map((wire) =>
    label(x, y + slots.dy(wire) - 0.8, wire === '-' ? '−' : wire, { sizePt: SIZE, align: 'right', valign: 'bottom' }),
  )

/** Tag of a conductor over its wires, with a stroke through all that belong to it. */
export function tagStroke(slots: Slots, wires: readonly Wire[], x: number, y: number, tag: string): Primitive[] {
  const ys = wires.map((wire) => y + slots.dy(wire))
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)]
  const head = y - slots.halfPt - 12
  return [line(x, head, x, Math.max(top, bottom) + 3, { pen: 'hair' }), ...tagSymbol(x, head, tag)]
}

/** A symbol in every wire that is opened, joined by a dashed line because they open together. */
export function poles(
  slots: Slots,
  wires: readonly Wire[],
  x: number,
  y: number,
  symbol: (x: number, y: number) => readonly Primitive[],
): Primitive[] {
  const ys = wires.filter(isSwitched).map((wire) => y + slots.dy(wire))
  return [
    ...ys.flatMap((each) => symbol(x, each)),
    ...(ys.length < 2 ? [] : [line(x, Math.min(...ys) - 4, x, Math.max(...ys) - 4, { pen: 'hair', dash: 'dotted' })]),
  ]
}

/** Box in which wires are spliced or end, between two conductors of a circuit. */
export function boxOn(slots: Slots, x: number, y: number, word: string): Primitive[] {
  const half = slots.halfPt + 6
  return [
    { kind: 'rectangle', x: x - 7, y: y - half, width: 14, height: 2 * half, pen: 'medium' },
    label(x, y + half + 1.5, word, { sizePt: SIZE, align: 'center' }),
  ]
}
