import { label, line, TYPE_PT } from '../layout/index.js'
import type { Primitive } from '../model/index.js'
import { nodeTitle } from '../node-title.js'
import { breakerSymbol } from '../diagram/one-line-symbols.js'
import { clipName } from '../tree/clip-name.js'
import type { FeederPart, Leaf, PanelPart, TapPart } from '../tree/tree-parts.js'
import { dot } from '../tree/tree-symbols.js'
import { toBuses, type Buses } from './buses.js'
import { allWires, type PanelJob } from './panel-job.js'
import { leafSymbol, leafWires } from './panel-leaves.js'
import { bundle, poles, ROW_PT, run, tagStroke, wireNames, wiresOf, type Wire } from './wires.js'

const SIZE = TYPE_PT.small

/** What hangs on a panel, one below the other. */
export type PanelRow =
  | { readonly kind: 'loads' }
  | { readonly kind: 'leaf'; readonly leaf: Leaf }
  | { readonly kind: 'feeder'; readonly feeder: FeederPart }
  | { readonly kind: 'tap'; readonly tap: TapPart; readonly index: number; readonly feeder: FeederPart }

/** Rows of a panel: its loads, sources, then feeders with their taps. */
export function rowsOf({ leaves, feeders }: PanelPart): PanelRow[] {
  return [
    { kind: 'loads' },
    ...leaves.map((leaf): PanelRow => ({ kind: 'leaf', leaf })),
    ...feeders.flatMap((feeder): PanelRow[] => [
      { kind: 'feeder', feeder },
      ...feeder.taps.map((tap, index): PanelRow => ({ kind: 'tap', tap, index, feeder })),
    ]),
  ]
}

interface RowPlace {
  /** Left side of the box. */
  readonly x: number
  readonly buses: Buses
  readonly y: number
  readonly left: number
}

/** A row from its busbars to the left. */
export function drawRowOfPanel(job: PanelJob, row: PanelRow, place: RowPlace): Primitive[] {
  const { slots } = job
  const { x, buses, y } = place
  const onBus = (wires: readonly Wire[], rating: string, device = true): Primitive[] => [
    ...toBuses(slots, buses, wires, x - 20, y),
    ...(device ? poles(slots, wires, x + 17, y, breakerSymbol) : []),
    label(x + 27, y - slots.halfPt - 12, rating, { sizePt: SIZE, align: 'right' }),
  ]
  switch (row.kind) {
    case 'loads':
      return [
        ...onBus(allWires(slots.phases, true), ''),
        label(x - 24, y, 'existing loads', { sizePt: SIZE, align: 'right', valign: 'middle' }),
      ]
    case 'leaf': {
      const wires = leafWires(job, row.leaf)
      const device = row.leaf.kind === 'pv' ? row.leaf.landing.breakerA : row.leaf.node.main_a
      return [
        ...onBus(wires, device === null ? '' : `${device} A`),
        ...leafSymbol(job, row.leaf, wires, x - 20, y, place.left),
      ]
    }
    case 'feeder': {
      const { conductor, breakerA, throughLugs } = row.feeder
      const wires = conductor === undefined ? allWires(slots.phases, true) : wiresOf(conductor, undefined)
      const end = place.left + 60
      return [
        ...onBus(wires, breakerA === undefined ? (throughLugs ? 'lugs' : '') : `${breakerA} A`, breakerA !== undefined),
        ...bundle(slots, wires, end, x - 20, y),
        ...wireNames(slots, wires, x - 4, y),
        ...(conductor === undefined ? [] : tagStroke(slots, wires, x - 34, y, conductor.tag)),
        ...goesOn(end, y, conductor?.tag ?? '', nodeTitle(row.feeder.to.node), place.left),
      ]
    }
    case 'tap':
      return drawTapRow(job, row, place)
  }
}

/** A tap: a wire from each of the feeder's down to a row of its own, its device, and what hangs on it. */
function drawTapRow(
  job: PanelJob,
  { tap, index }: Extract<PanelRow, { kind: 'tap' }>,
  { x, y, left }: RowPlace,
): Primitive[] {
  const { slots } = job
  const { conductor, leaves, node } = tap
  const wires = conductor === undefined ? allWires(slots.phases, true) : wiresOf(conductor, undefined)
  const [leaf] = leaves
  const from = x - 50 - index * 8
  const feederY = y - (index + 1) * ROW_PT
  // The tag stands between the device and where the wires come down.
  const end = Math.min(left + 130, from - 67)
  const pv = leaf?.kind === 'pv'
  return [
    ...wires.flatMap((wire, each) => {
      const at = from - each * 6
      return [
        dot(at, feederY + slots.dy(wire)),
        run(wire, at, feederY + slots.dy(wire), at, y + slots.dy(wire)),
        run(wire, at, y + slots.dy(wire), end, y + slots.dy(wire)),
      ]
    }),
    ...(conductor === undefined ? [] : tagStroke(slots, wires, from - 28, y, conductor.tag)),
    ...(pv
      ? []
      : [
          ...poles(slots, wires, end + 20, y, breakerSymbol),
          label(end + 20, y + 22, node.main_a === null ? '' : `${node.main_a} A`, { sizePt: SIZE, align: 'center' }),
        ]),
    ...(leaf === undefined
      ? [
          label(end - 4, y, `load of ${nodeTitle(node)}`, {
            sizePt: SIZE,
            align: 'right',
            valign: 'middle',
            maxWidthPt: end - left - 4,
          }),
        ]
      : leafSymbol(job, leaf, wires, end, y, left)),
  ]
}

/** Where a feeder goes on. */
function goesOn(x: number, y: number, tag: string, to: string, left: number): Primitive[] {
  return [
    line(x, y - 22, x, y + 22, { pen: 'medium' }),
    label(x - 4, y, `${tag === '' ? '' : 'goes on '}to ${clipName(to, SIZE, 'plain', x - left - 4)}`, {
      sizePt: SIZE,
      align: 'right',
      valign: 'middle',
      maxWidthPt: x - left - 4,
    }),
  ]
}
