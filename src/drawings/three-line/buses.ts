import { label, line, TYPE_PT } from '../layout/index.js'
import { type Primitive } from '../model/index.js'
import { dot } from '../tree/tree-symbols.js'
import { run, type Slots, type Wire } from './wires.js'

/** Distance of two busbars of a panel, points. */
export const BUS_STEP_PT = 13

/** Busbars of a panel: lines, neutral and ground, each a place across its box. */
export interface Buses {
  readonly wires: readonly Wire[]
  readonly x: (wire: Wire) => number
}

export function busesFrom(x: number, phases: 1 | 3): Buses {
  const wires: readonly Wire[] = phases === 3 ? ['L1', 'L2', 'L3', 'N', 'G'] : ['L1', 'L2', 'N', 'G']
  return { wires, x: (wire) => x + wires.indexOf(wire) * BUS_STEP_PT }
}

/** The busbars from a height to another with their names over them. */
export function drawBuses({ wires, x }: Buses, top: number, bottom: number): Primitive[] {
  return wires.flatMap((wire) => [
    line(x(wire), top, x(wire), bottom, { pen: 'heavy', color: wire === 'G' ? 'grey' : 'black' }),
    label(x(wire), top - 1, wire, { sizePt: TYPE_PT.small, align: 'center', valign: 'bottom' }),
  ])
}

/** Wires from a side of the box to their busbars, a dot where each ends. */
export function toBuses(slots: Slots, buses: Buses, wires: readonly Wire[], fromX: number, y: number): Primitive[] {
  return wires.flatMap((wire) => {
    const at = y + slots.dy(wire)
    return [run(wire, fromX, at, buses.x(wire), at), dot(buses.x(wire), at)]
  })
}

/** The main bonding jumper: neutral bar to ground bar, with its tag or without. */
export function neutralBond(buses: Buses, y: number): Primitive[] {
  return [line(buses.x('N'), y, buses.x('G'), y, { pen: 'heavy' }), dot(buses.x('N'), y), dot(buses.x('G'), y)]
}
