import type { ConductorValues, WiringValues } from '../../electrical/index.js'
import type { Project } from '../../project/index.js'
import { label, line, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, wrapText, xy, type Box, type Primitive } from '../model/index.js'
import { nodeTitle } from '../node-title.js'
import { bondingList, bondingOf } from '../diagram/bonding.js'
import { breakerSymbol, earthSymbol, meterSymbol, tagSymbol } from '../diagram/one-line-symbols.js'
import { lettered, sizeText } from '../diagram/wire-tags.js'
import { clipName } from '../tree/clip-name.js'
import { panelFacts } from '../tree/panel-facts.js'
import type { FeederPart, Leaf, PanelPart, TapPart } from '../tree/tree-parts.js'
import { dot, existingSource, joinFlag } from '../tree/tree-symbols.js'
import { busesFrom, BUS_STEP_PT, drawBuses, neutralBond, toBuses } from './buses.js'
import { bundle, poles, ROW_PT, run, tagStroke, wireNames, wiresOf, type Slots, type Wire } from './wires.js'

const SIZE = TYPE_PT.small
/** Width of the gear of a service right of its panel, and of the flag of another panel, points. */
const RIGHT_PT = 190
const HEAD_PT = 34

export interface PanelJob {
  readonly project: Project
  readonly wiring: WiringValues
  readonly slots: Slots
}

/** A panel that is drawn by itself: fed by the service, or by the feeder whose tag is on its flag. */
export interface PanelStrip {
  readonly panel: PanelPart
  readonly fedBy: ConductorValues | 'service' | undefined
  /** Whether the conductors of the service, its meter and its electrode stand at it. */
  readonly first: boolean
  readonly supplySide: readonly Leaf[]
}

/** Panels from the service inwards, each once. */
export function stripsOf(roots: readonly PanelPart[], supplySide: readonly Leaf[]): PanelStrip[] {
  const below = (panel: PanelPart): PanelStrip[] =>
    panel.feeders.flatMap(({ to, conductor }) => [
      { panel: to, fedBy: conductor, first: false, supplySide: [] },
      ...below(to),
    ])
  // The first of the list of conductors is the last root.
  return roots
    .toReversed()
    .flatMap((panel, index): PanelStrip[] => [
      { panel, fedBy: 'service', first: index === 0, supplySide: index === 0 ? supplySide : [] },
      ...below(panel),
    ])
}

/** Height of a panel with all its rows, points. */
export function stripHeightPt(strip: PanelStrip): number {
  const { panel, supplySide } = strip
  const rows = 1 + panel.leaves.length + panel.feeders.reduce((sum, { taps }) => sum + 1 + taps.length, 0)
  return HEAD_PT + supplySide.length * ROW_PT + Math.max(rows * ROW_PT, strip.first ? 190 : 0) + 40
}

/** A panel with its busbars, what feeds it on the right and what hangs on it on the left. */
export function drawStrip(job: PanelJob, strip: PanelStrip, box: Box): Primitive[] {
  const { slots, wiring } = job
  const { panel, fedBy, first, supplySide } = strip
  const right = box.x + box.width - RIGHT_PT
  const phases = slots.phases
  const width = 44 + (phases === 3 ? 5 : 4) * BUS_STEP_PT + 30
  const x = right - width
  const buses = busesFrom(x + 44, phases)
  const entryY = box.y + HEAD_PT + supplySide.length * ROW_PT + 24
  const rows = rowsOf(panel)
  const ys = rows.map((_, index) => entryY + index * ROW_PT)
  const frameBottom = (ys.at(-1) ?? entryY) + 40
  const root = fedBy === 'service'
  const feeding = root ? lettered(wiring, 'S')[0] : fedBy
  const incoming: readonly Wire[] = feeding === undefined ? allWires(phases, !root) : wiresOf(feeding, undefined)
  const { jumper } = bondingOf(wiring)
  const name = clipName(nodeTitle(panel.node).toUpperCase(), SIZE, 'bold', width + 60)
  const facts = panelFacts(panel)
  return [
    { kind: 'rectangle', x, y: entryY - 30, width, height: frameBottom - entryY + 30, pen: 'medium' },
    label(x, entryY - 33, name, { sizePt: SIZE, face: 'bold', valign: 'bottom', maxWidthPt: width + 60 }),
    // Left of the conductor to the electrode.
    label(buses.x('G') - 9, frameBottom + 3, facts, { sizePt: SIZE, align: 'right', maxWidthPt: 190 }),
    ...drawBuses(buses, entryY - 20, frameBottom - 6),
    // What feeds it.
    ...incoming.flatMap((wire) => [
      run(wire, buses.x(wire), entryY + slots.dy(wire), right, entryY + slots.dy(wire)),
      dot(buses.x(wire), entryY + slots.dy(wire)),
    ]),
    ...(panel.ownMainA === undefined
      ? []
      : [
          ...poles(slots, incoming, right - 11, entryY, breakerSymbol),
          label(right - 3, entryY - 27, `${panel.ownMainA} A`, { sizePt: SIZE, align: 'right' }),
        ]),
    ...(root
      ? [
          ...neutralBond(buses, frameBottom - 16),
          ...bondWords(buses.x('G'), frameBottom - 16, first ? jumper?.tag : undefined),
        ]
      : []),
    ...(root
      ? serviceSide(job, strip, { right, box, entryY, buses, incoming, frameBottom })
      : fedFrom(job, feeding, incoming, right, entryY)),
    // What hangs on it.
    ...rows.flatMap((row, index) => drawRowOfPanel(job, row, { x, buses, y: ys[index] ?? entryY, left: box.x })),
  ]
}

const allWires = (phases: 1 | 3, ground: boolean): Wire[] => [
  ...(phases === 3 ? (['L1', 'L2', 'L3'] as const) : (['L1', 'L2'] as const)),
  'N',
  ...(ground ? (['G'] as const) : []),
]

function bondWords(x: number, y: number, tag: string | undefined): Primitive[] {
  return tag === undefined ? [label(x + 4, y, 'bond', { sizePt: SIZE, valign: 'middle' })] : tagSymbol(x + 11, y, tag)
}

type PanelRow =
  | { readonly kind: 'loads' }
  | { readonly kind: 'leaf'; readonly leaf: Leaf }
  | { readonly kind: 'feeder'; readonly feeder: FeederPart }
  | { readonly kind: 'tap'; readonly tap: TapPart; readonly index: number; readonly feeder: FeederPart }

function rowsOf({ leaves, feeders }: PanelPart): PanelRow[] {
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
  readonly buses: ReturnType<typeof busesFrom>
  readonly y: number
  readonly left: number
}

function drawRowOfPanel(job: PanelJob, row: PanelRow, place: RowPlace): Primitive[] {
  const { slots, wiring } = job
  const { x, buses, y } = place
  const onBus = (wires: readonly Wire[], rating: string, device = true): Primitive[] => [
    ...toBuses(slots, buses, wires, x - 20, y),
    ...(device ? poles(slots, wires, x + 17, y, breakerSymbol) : []),
    label(x + 27, y - 27, rating, { sizePt: SIZE, align: 'right' }),
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
      return [...onBus(wires, device === null ? '' : `${device} A`), ...leafSymbol(job, row.leaf, wires, x - 20, y)]
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
      return drawTapRow({ slots, wiring, project: job.project }, row, place)
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
  const from = x - 60 - index * 8
  const feederY = y - (index + 1) * ROW_PT
  const end = left + 130
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
      : leafSymbol(job, leaf, wires, end, y)),
  ]
}

/** Wires of what lands: of the last conductors of the PV system, or lines of a source that is there already. */
function leafWires({ wiring, slots }: PanelJob, leaf: Leaf): readonly Wire[] {
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

/** A flag of the PV system, or a source that is there already, left of its wires. */
function leafSymbol({ slots }: PanelJob, leaf: Leaf, wires: readonly Wire[], x: number, y: number): Primitive[] {
  const bar = line(x, y - 22, x, y + 22, { pen: 'medium' })
  if (leaf.kind === 'pv')
    return [
      bar,
      ...wireNames(slots, wires, x + 13, y),
      ...joinFlag(x - 27, y, leaf.landing.letter),
      label(x - 31, y, 'PV system of this project', { sizePt: SIZE, align: 'right', valign: 'middle', maxWidthPt: 90 }),
    ]
  return [
    bar,
    ...existingSource(leaf.of, x - 30, y),
    label(
      x - 34,
      y,
      `${clipName(nodeTitle(leaf.node), SIZE, 'plain', 90)}\nexisting, neutral and ground as installed`,
      {
        sizePt: SIZE,
        align: 'right',
        valign: 'middle',
        maxWidthPt: 96,
      },
    ),
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

/** The end of the feeder that was drawn at another panel. */
function fedFrom(
  { slots, wiring }: PanelJob,
  feeding: ConductorValues | undefined,
  wires: readonly Wire[],
  right: number,
  y: number,
): Primitive[] {
  const from = wiring.distribution.find(({ id }) => id === feeding?.from)
  const words = `from ${from === undefined ? 'the panel before' : clipName(nodeTitle(from), SIZE, 'plain', RIGHT_PT - 46)}${feeding === undefined ? '' : `, feeder ${feeding.tag}: ${sizeText(feeding)}`}`
  return [
    ...bundle(slots, wires, right, right + 40, y),
    ...wireNames(slots, wires, right + 14, y),
    line(right + 40, y - 22, right + 40, y + 22, { pen: 'medium' }),
    label(right + 44, y, words, { sizePt: SIZE, valign: 'middle', maxWidthPt: RIGHT_PT - 46 }),
  ]
}

interface ServicePlace {
  readonly right: number
  readonly box: Box
  readonly entryY: number
  readonly buses: ReturnType<typeof busesFrom>
  readonly incoming: readonly Wire[]
  readonly frameBottom: number
}

/** Conductors of the service with meter, what joins them ahead of the panel, electrode and bonding. */
function serviceSide(job: PanelJob, { first, supplySide }: PanelStrip, place: ServicePlace): Primitive[] {
  const { slots, wiring, project } = job
  const { right, box, entryY, buses, incoming, frameBottom } = place
  const edge = box.x + box.width
  if (!first)
    return [
      ...bundle(slots, incoming, right, right + 40, entryY),
      line(right + 40, entryY - 22, right + 40, entryY + 22, { pen: 'medium' }),
      label(right + 44, entryY, 'from the service conductors, behind the meter', {
        sizePt: SIZE,
        valign: 'middle',
        maxWidthPt: RIGHT_PT - 46,
      }),
    ]
  const [tag] = lettered(wiring, 'S')
  const meterX = edge - 46
  const words = `TO ${project.parties?.utility?.name ?? 'the utility'}${tag === undefined ? '\nservice conductors: size not stated' : ''}`
  const { electrode, others } = bondingOf(wiring)
  const pvBondTag = others.find(({ from, method }) => from === 'PV disconnect' && method === 'main bonding jumper')?.tag
  const earthX = buses.x('G')
  return [
    ...bundle(slots, incoming, right, edge - 8, entryY),
    ...wireNames(slots, incoming, right + 14, entryY),
    ...(tag === undefined ? [] : tagStroke(slots, incoming, edge - 86, entryY, tag.tag)),
    ...meterSymbol(meterX, entryY - 5),
    label(meterX, entryY - 24, 'METER', { sizePt: SIZE, face: 'bold', align: 'center', valign: 'bottom' }),
    ...incoming.map((wire): Primitive => ({
      kind: 'path',
      points: [
        xy(edge - 8, entryY + slots.dy(wire) - 3),
        xy(edge - 1, entryY + slots.dy(wire)),
        xy(edge - 8, entryY + slots.dy(wire) + 3),
      ],
      closed: true,
      pen: 'thin',
      fill: 'black',
    })),
    label(edge, entryY + 22, words, {
      sizePt: SIZE,
      align: 'right',
      maxWidthPt: 120,
    }),
    ...supplySide.flatMap((leaf, index) => joinAhead(job, leaf, index, place, supplySide.length)),
    line(earthX, frameBottom - 6, earthX, frameBottom + 26, { dash: 'dashed' }),
    ...(electrode === undefined ? [] : tagSymbol(earthX, frameBottom + 10, electrode.tag)),
    ...earthSymbol(earthX, frameBottom + 22),
    ...bondingList(
      others.filter(({ tag: each }) => each !== pvBondTag),
      right + 6,
      entryY + 22 + blockHeightPt(wrapText(words, SIZE, 'plain', 120).length, SIZE) + 6,
      RIGHT_PT - 8,
    ).drawn,
  ]
}

/** A source that joins ahead of the service disconnect: a wire from each conductor of the service up to its row. */
function joinAhead(job: PanelJob, leaf: Leaf, index: number, place: ServicePlace, count: number): Primitive[] {
  const { slots } = job
  const { right, entryY } = place
  const y = entryY - (count - index) * ROW_PT
  const wires = leafWires(job, leaf).filter((wire) => wire !== 'G')
  const end = right - 60
  const device = leaf.kind === 'pv' ? null : leaf.node.main_a
  return [
    ...wires.flatMap((wire, each) => {
      const x = right + 34 + index * 22 + each * 6
      return [
        dot(x, entryY + slots.dy(wire)),
        run(wire, x, entryY + slots.dy(wire), x, y + slots.dy(wire)),
        run(wire, x, y + slots.dy(wire), end, y + slots.dy(wire)),
      ]
    }),
    ...(leaf.kind === 'pv'
      ? []
      : [
          ...poles(slots, wires, end + 24, y, breakerSymbol),
          label(end + 24, y - 27, device === null ? '' : `${device} A`, { sizePt: SIZE, align: 'center' }),
        ]),
    ...leafSymbol(job, leaf, wires, end, y),
  ]
}
