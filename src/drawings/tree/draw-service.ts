import type { Project } from '../../project/index.js'
import type { WiringValues } from '../../electrical/index.js'
import { labelMarks } from '../labels/label-marks.js'
import { label, line, plainNumber, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, wrapText, xy, type Box, type Primitive } from '../model/index.js'
import { bondingList, bondingOf } from '../diagram/bonding.js'
import { earthSymbol, meterSymbol, tagSymbol } from '../diagram/one-line-symbols.js'
import { serviceWords } from '../diagram/service-words.js'
import { lettered } from '../diagram/wire-tags.js'
import { drawLeafWithDevice, leafHeightPt } from './draw-leaf.js'
import { drawPanel, type DrawnPanel } from './draw-panel.js'
import { depthFrom, type TreeParts } from './tree-parts.js'
import { PANEL_PT, treeRoom, type Drawn, type TreeRoom } from './tree-room.js'
import { lighter, wire } from './tree-symbols.js'

const SIZE = TYPE_PT.small
/** Middle of the meter, from the right side of the room, points. */
const METER_PT = 52

/**
 * The installation from the utility on the right to the last panel on the left.
 *
 * @param cuts Letters of the feeders whose panels stand on another sheet, by id.
 */
export function drawTree(
  project: Project,
  wiring: WiringValues,
  parts: TreeParts,
  box: Box,
  cuts: ReadonlyMap<string, string>,
): Drawn<Primitive> {
  const depth = Math.max(1, ...parts.roots.map((root) => depthFrom(root, cuts)))
  const room = treeRoom(box, depth, cuts, labelMarks(project, wiring))
  const { jumper } = bondingOf(wiring)
  const drawn: Primitive[] = []
  const rows: number[] = []
  let top = box.y
  for (const leaf of parts.supplySide) {
    const y = top + leafHeightPt(leaf) / 2
    rows.push(y)
    drawn.push(...drawLeafWithDevice(leaf, room.gutterX, y))
    top += leafHeightPt(leaf)
  }
  let last: DrawnPanel | undefined
  for (const [index, root] of parts.roots.entries()) {
    last = drawPanel(room, root, 0, top, index === parts.roots.length - 1 ? jumper : undefined)
    drawn.push(...last.drawn, ...lighter([wire(room.leftOf(0) + PANEL_PT, last.entryY, room.gutterX, last.entryY)]))
    rows.push(last.entryY)
    top = last.bottom
  }
  if (last === undefined) return { drawn, bottom: top }
  const y = last.entryY
  const side = drawSide(project, wiring, room, last)
  return {
    drawn: [
      ...drawn,
      ...lighter([wire(room.gutterX, Math.min(...rows), room.gutterX, y)]),
      ...toUtility(room, wiring, y, project.electrical?.service?.meter?.kind === 'collar_adapter'),
      ...side.drawn,
    ],
    bottom: Math.max(top, side.bottom),
  }
}

/** Service conductors, meter and the way to the utility. */
function toUtility({ box, gutterX, labels }: TreeRoom, wiring: WiringValues, y: number, adapter: boolean): Primitive[] {
  const edge = box.x + box.width
  const meterX = edge - METER_PT
  const collar: Primitive = { kind: 'circle', center: xy(meterX, y), radiusPt: 14, pen: 'medium', fill: 'white' }
  return [
    ...lighter([wire(gutterX, y, edge - 8, y), ...(adapter ? [collar] : [])]),
    ...lighter(meterSymbol(meterX, y)),
    label(meterX, y - 24, labels('meter'), { sizePt: SIZE, align: 'center', valign: 'bottom' }),
    label(meterX, y - 15, adapter ? 'METER ON ADAPTER' : 'METER', {
      sizePt: SIZE,
      face: 'bold',
      align: 'center',
      valign: 'bottom',
    }),
    {
      kind: 'path',
      points: [xy(edge - 8, y - 4), xy(edge, y), xy(edge - 8, y + 4)],
      closed: true,
      pen: 'thin',
      fill: 'black',
    },
    ...lettered(wiring, 'S').flatMap(({ tag }) => tagSymbol((gutterX + meterX - 12) / 2, y, tag)),
  ]
}

/** What is known of the service, its electrode and its bonding, right of the panel at the service. */
function drawSide(project: Project, wiring: WiringValues, room: TreeRoom, root: DrawnPanel): Drawn<Primitive> {
  const [x, widthPt] = [room.gutterX + 6, room.box.x + room.box.width - room.gutterX - 6]
  const facts = serviceFacts(project, wiring).join('\n')
  const factsTop = root.entryY + 18
  const factsBottom = factsTop + blockHeightPt(wrapText(facts, SIZE, 'plain', widthPt).length, SIZE)
  const { electrode, others } = bondingOf(wiring)
  const earthX = room.gutterX - 7
  const leavesY = Math.min(root.frameBottom - 8, factsBottom + 4)
  const earthY = leavesY + 32
  const wordsY = Math.max(earthY + 4, factsBottom + 6)
  const words = 'existing grounding electrode system'
  const listY = wordsY + blockHeightPt(wrapText(words, SIZE, 'plain', widthPt).length, SIZE) + 4
  const list = bondingList(others, x, listY, widthPt)
  return {
    drawn: [
      label(x, factsTop, facts, { sizePt: SIZE, maxWidthPt: widthPt }),
      line(earthX - 9, leavesY, earthX, leavesY, { dash: 'dashed' }),
      line(earthX, leavesY, earthX, earthY, { dash: 'dashed' }),
      ...(electrode === undefined ? [] : tagSymbol(earthX, leavesY + 16, electrode.tag)),
      ...earthSymbol(earthX, earthY),
      label(x, wordsY, words, { sizePt: SIZE, maxWidthPt: widthPt }),
      ...list.drawn,
    ],
    bottom: listY + list.heightPt,
  }
}

function serviceFacts({ electrical, parties }: Project, wiring: WiringValues): string[] {
  const { service } = electrical ?? {}
  const meter = service?.meter
  const known: (string | undefined)[] = [
    `TO ${parties?.utility?.name ?? 'the utility'}`,
    service?.rating_a === undefined ? 'SERVICE' : `SERVICE ${service.rating_a} A, ${serviceWords(service)}`,
    meter?.rating_a === undefined ? undefined : `${(meter.kind ?? 'socket').replaceAll('_', ' ')} ${meter.rating_a} A`,
    meter?.adapter_rating_a === undefined ? undefined : `adapter for sources up to ${meter.adapter_rating_a} A`,
    wiring.fault_current === null
      ? undefined
      : `${Math.round(wiring.fault_current.governs_a)} A fault current available`,
    wiring.service_load_a === null ? undefined : `calculated load ${plainNumber(wiring.service_load_a, 1)} A`,
    lettered(wiring, 'S').length === 0 ? 'service conductors: size not stated' : undefined,
  ]
  return known.filter((each) => each !== undefined)
}
