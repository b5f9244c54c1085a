import type { ConductorValues } from '../../electrical/index.js'
import { label, line, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, wrapText, xy, type Box, type Primitive } from '../model/index.js'
import { nodeTitle } from '../node-title.js'
import { bondingList, bondingOf } from '../diagram/bonding.js'
import { breakerSymbol, earthSymbol, meterSymbol, tagSymbol } from '../diagram/one-line-symbols.js'
import { lettered, sizeText } from '../diagram/wire-tags.js'
import { clipName } from '../tree/clip-name.js'
import type { Leaf } from '../tree/tree-parts.js'
import { dot } from '../tree/tree-symbols.js'
import type { Buses } from './buses.js'
import { type PanelJob, type PanelStrip } from './panel-job.js'
import { leafSymbol, leafWires } from './panel-leaves.js'
import { bundle, poles, ROW_PT, run, tagStroke, wireNames, type Wire } from './wires.js'

const SIZE = TYPE_PT.small

/** The end of the feeder that was drawn at another panel. */
export function fedFrom(
  { slots, wiring, rightPt }: PanelJob,
  feeding: ConductorValues | undefined,
  wires: readonly Wire[],
  right: number,
  y: number,
): Primitive[] {
  const from = wiring.distribution.find(({ id }) => id === feeding?.from)
  const words = `from ${from === undefined ? 'the panel before' : clipName(nodeTitle(from), SIZE, 'plain', rightPt - 46)}${feeding === undefined ? '' : `, feeder ${feeding.tag}: ${sizeText(feeding)}`}`
  return [
    ...bundle(slots, wires, right, right + 40, y),
    ...wireNames(slots, wires, right + 14, y),
    line(right + 40, y - 22, right + 40, y + 22, { pen: 'medium' }),
    label(right + 44, y, words, { sizePt: SIZE, valign: 'middle', maxWidthPt: rightPt - 46 }),
  ]
}

interface ServicePlace {
  readonly right: number
  readonly box: Box
  readonly entryY: number
  readonly buses: Buses
  readonly incoming: readonly Wire[]
  readonly frameBottom: number
}

/** Conductors of the service with meter, what joins them ahead of the panel, electrode and bonding. */
export function serviceSide(job: PanelJob, { first, supplySide }: PanelStrip, place: ServicePlace): Primitive[] {
  const { slots, wiring, project, rightPt } = job
  const { right, box, entryY, buses, incoming, frameBottom } = place
  const edge = box.x + box.width
  if (!first)
    return [
      ...bundle(slots, incoming, right, right + 40, entryY),
      line(right + 40, entryY - 22, right + 40, entryY + 22, { pen: 'medium' }),
      label(right + 44, entryY, 'from the service conductors, behind the meter', {
        sizePt: SIZE,
        valign: 'middle',
        maxWidthPt: rightPt - 46,
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
      rightPt - 8,
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
          label(end + 24, y - slots.halfPt - 12, device === null ? '' : `${device} A`, {
            sizePt: SIZE,
            align: 'center',
          }),
        ]),
    ...leafSymbol(job, leaf, wires, end, y, place.box.x),
  ]
}
