import type { WiringValues } from '../../electrical/index.js'
import { label, line, TYPE_PT } from '../layout/index.js'
import type { Primitive } from '../model/index.js'
import { nodeTitle } from '../node-title.js'
import { clipName } from '../tree/clip-name.js'
import type { Leaf } from '../tree/tree-parts.js'
import { batterySymbol, existingSource, joinFlag } from '../tree/tree-symbols.js'
import type { PanelJob } from './panel-job.js'
import { wireNames, wiresOf, type Wire } from './wires.js'

const SIZE = TYPE_PT.small

/** Wires of what lands: of the last conductors of the PV system, or lines of a source that is there already. */
export function leafWires({ wiring, slots }: PanelJob, leaf: Leaf): readonly Wire[] {
  if (leaf.kind !== 'pv') return slots.phases === 3 ? ['L1', 'L2', 'L3'] : ['L1', 'L2']
  const landing = landingCircuit(wiring, leaf.landing.letter)
  const last = wiring.conductors.findLast(
    ({ tag, circuits }) => /^\d/u.test(tag) && landing !== undefined && circuits.includes(landing.id),
  )
  return last === undefined ? ['L1', 'L2'] : wiresOf(last, landing)
}

/** The circuit that ends at the flag of a letter; ahead of the service it is the conductors beyond the device. */
function landingCircuit(wiring: WiringValues, letter: string) {
  const tap = wiring.circuits.find(({ kind }) => kind === 'ac_supply_tap')
  if (tap !== undefined) return tap
  const combined = wiring.circuits.find(({ kind }) => kind === 'ac_combined_output')
  const outputs =
    combined === undefined
      ? wiring.circuits.filter(({ kind }) => kind === 'ac_inverter_output' || kind === 'ac_branch')
      : [combined]
  return outputs[(letter.codePointAt(0) ?? 65) - 65]
}

/**
 * A flag of the PV system, or a source that is there already, left of its wires.
 *
 * @param leftX Where the room for its words begins.
 */
export function leafSymbol(
  { slots }: PanelJob,
  leaf: Leaf,
  wires: readonly Wire[],
  x: number,
  y: number,
  leftX: number,
): Primitive[] {
  const wordsPt = Math.min(96, x - 34 - leftX)
  const bar = line(x, y - 22, x, y + 22, { pen: 'medium' })
  if (leaf.kind === 'pv')
    return [
      bar,
      ...wireNames(slots, wires, x + 13, y),
      ...joinFlag(x - 27, y, leaf.landing.letter),
      label(x - 31, y, 'PV system of this project', {
        sizePt: SIZE,
        align: 'right',
        valign: 'middle',
        maxWidthPt: Math.min(90, wordsPt),
      }),
    ]
  return [
    bar,
    ...(leaf.planned ? batterySymbol(x - 30, y) : existingSource(leaf.of, x - 30, y)),
    label(
      x - 34,
      y,
      `${clipName(nodeTitle(leaf.node), SIZE, 'plain', Math.min(90, wordsPt))}\n${leaf.planned ? 'see storage, sheet E-601' : 'existing, neutral and ground as installed'}`,
      {
        sizePt: SIZE,
        align: 'right',
        valign: 'middle',
        maxWidthPt: wordsPt,
      },
    ),
  ]
}
