import { inCapitals } from '../model/index.js'
import { label, TYPE_PT } from '../layout/index.js'
import type { Box, Primitive } from '../model/index.js'
import { nodeTitle } from '../node-title.js'
import { bondingOf } from '../diagram/bonding.js'
import { breakerSymbol, tagSymbol } from '../diagram/one-line-symbols.js'
import { lettered } from '../diagram/wire-tags.js'
import { clipName } from '../tree/clip-name.js'
import { panelFacts } from '../tree/panel-facts.js'
import type { Leaf, PanelPart } from '../tree/tree-parts.js'
import { lowestWordPt } from '../sheets/one-line-job.js'
import { busesFrom, BUS_STEP_PT, drawBuses, neutralBond } from './buses.js'
import { allWires, type PanelJob, type PanelStrip } from './panel-job.js'
import { drawRowOfPanel, rowsOf } from './panel-rows.js'
import { fedFrom, serviceSide } from './service-side.js'
import { poles, ROW_PT, run, wiresOf, type Wire } from './wires.js'

const SIZE = TYPE_PT.small
/** Room over the box of a panel for its name, points. */
const HEAD_PT = 34
const BELOW_PT = 12

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

/** Height of a panel with all its rows and words, and some room below them, points. */
export function stripHeightPt(job: PanelJob, strip: PanelStrip, box: Omit<Box, 'height' | 'y'>): number {
  return lowestPt(drawStrip(job, strip, { ...box, y: 0, height: 0 })) + BELOW_PT
}

/** How far down figures and words reach, points. */
function lowestPt(drawn: readonly Primitive[]): number {
  const figures = drawn.flatMap((each) => {
    if (each.kind === 'path') return each.points.map(({ y }) => y)
    if (each.kind === 'rectangle') return [each.y + each.height]
    return each.kind === 'circle' ? [each.center.y + (each.radiusPt ?? 0)] : []
  })
  return Math.max(lowestWordPt(drawn), ...figures)
}

/** A panel with its busbars, what feeds it on the right and what hangs on it on the left. */
export function drawStrip(job: PanelJob, strip: PanelStrip, box: Box): Primitive[] {
  const { slots, wiring, rightPt } = job
  const { panel, fedBy, first, supplySide } = strip
  const right = box.x + box.width - rightPt
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
  // What joins ahead of the panel comes down beside its name.
  const namePt = width + (supplySide.length > 0 ? 24 : 60)
  const lines = supplySide.length > 0 ? 1 : 2
  const name = clipName(inCapitals(nodeTitle(panel.node)), SIZE, 'bold', namePt, lines)
  const facts = panelFacts(panel)
  return [
    {
      kind: 'rectangle',
      x,
      y: entryY - slots.halfPt - 15,
      width,
      height: frameBottom - entryY + slots.halfPt + 15,
      pen: 'medium',
    },
    label(x, entryY - slots.halfPt - 18, name, {
      sizePt: SIZE,
      face: 'bold',
      valign: 'bottom',
      maxWidthPt: namePt,
    }),
    // Left of the conductor to the electrode.
    label(buses.x('G') - 9, frameBottom + 3, facts, { sizePt: SIZE, align: 'right', maxWidthPt: 190 }),
    ...drawBuses(buses, entryY - slots.halfPt - 5, frameBottom - 6),
    // What feeds it.
    // The first row, of the loads, has its dots at the same height.
    ...incoming.map((wire) => run(wire, buses.x(wire), entryY + slots.dy(wire), right, entryY + slots.dy(wire))),
    ...(panel.ownMainA === undefined
      ? []
      : [
          ...poles(slots, incoming, right - 11, entryY, breakerSymbol),
          label(right - 3, entryY - slots.halfPt - 12, `${panel.ownMainA} A`, { sizePt: SIZE, align: 'right' }),
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

function bondWords(x: number, y: number, tag: string | undefined): Primitive[] {
  return tag === undefined ? [label(x + 4, y, 'bond', { sizePt: SIZE, valign: 'middle' })] : tagSymbol(x + 11, y, tag)
}
