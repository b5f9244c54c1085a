import type { ConductorValues } from '../../electrical/index.js'
import { label, line, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, wrapText, type Primitive, inCapitals } from '../model/index.js'
import { nodeTitle } from '../node-title.js'
import { neutralBar } from '../diagram/bonding.js'
import { breakerSymbol, namedBox } from '../diagram/one-line-symbols.js'
import { clipName } from './clip-name.js'
import { deviceOf, drawLeaf, leafHeightPt, isNew } from './draw-leaf.js'
import { carriesLoadsOnly, drawCut, drawFeeder, drawLoadPanel, feederWordsPt, type FedPanel } from './draw-feeder.js'
import { panelPlace } from '../labels/label-places.js'
import { panelFacts } from './panel-facts.js'
import type { FeederPart, Leaf, PanelPart } from './tree-parts.js'
import { PANEL_PT, type Drawn, type TreeRoom } from './tree-room.js'
import { lighter, wire } from './tree-symbols.js'

const SIZE = TYPE_PT.small
/** From the wire that feeds a panel up to its frame, and down to the first thing that hangs on it, points. */
const ENTRY_PT = { up: 20, down: 38 } as const

export interface DrawnPanel extends Drawn<Primitive> {
  /** Height of the wire that feeds it, and of the lower side of its frame. */
  readonly entryY: number
  readonly frameBottom: number
}

/** A panel with all that hangs on it to the left; its words stand over and under its frame. */
export function drawPanel(
  room: TreeRoom,
  panel: PanelPart,
  level: number,
  top: number,
  jumper?: ConductorValues,
): DrawnPanel {
  const x = room.leftOf(level)
  const busX = x + PANEL_PT / 2
  const wordsPt = PANEL_PT + Math.min(room.gapPt - 8, 66)
  const wordsX = x + PANEL_PT - wordsPt
  const name = clipName(inCapitals(nodeTitle(panel.node)), TYPE_PT.text, 'bold', wordsPt)
  const nameTop = top + blockHeightPt(wrapText(name, TYPE_PT.text, 'bold', wordsPt).length, TYPE_PT.text)
  const entryY = nameTop + 3 + ENTRY_PT.up
  const hung = hangOn(room, panel, level, entryY + ENTRY_PT.down)
  const frameBottom = Math.max(hung.lastRow + 18, hung.wordsBottom + 4, entryY + ENTRY_PT.down + 2)
  const facts = panelFacts(panel, room.labels(panelPlace(panel.node)))
  const factsTop = frameBottom + 4
  const factsBottom = factsTop + blockHeightPt(wrapText(facts, SIZE, 'plain', wordsPt).length, SIZE)
  const frame = [
    namedBox(x, entryY - ENTRY_PT.up, PANEL_PT, frameBottom - entryY + ENTRY_PT.up),
    line(busX, entryY, busX, frameBottom - 8, { pen: 'heavy' }),
    line(busX, entryY, x + PANEL_PT, entryY, { pen: 'medium' }),
    ...(panel.ownMainA === undefined ? [] : breakerSymbol(x + PANEL_PT - 14, entryY)),
    line(x + 6, entryY + 20, busX, entryY + 20),
    ...breakerSymbol(x + 18, entryY + 20),
  ]
  return {
    drawn: [
      ...lighter(frame),
      label(wordsX + wordsPt, top, name, { face: 'bold', align: 'right', maxWidthPt: wordsPt }),
      label(x + PANEL_PT - 14, entryY - 7, panel.ownMainA === undefined ? '' : `${panel.ownMainA} A`, {
        sizePt: SIZE,
        align: 'center',
        valign: 'bottom',
      }),
      label(x - 3, entryY + 20, 'existing\nloads', { sizePt: SIZE, align: 'right', valign: 'middle' }),
      label(wordsX + wordsPt, factsTop, facts, { sizePt: SIZE, align: 'right', maxWidthPt: wordsPt }),
      ...neutralBar(x + 41, entryY + 28, x + PANEL_PT, jumper?.tag),
      ...hung.drawn,
    ],
    bottom: Math.max(hung.bottom, factsBottom) + 10,
    entryY,
    frameBottom,
  }
}

interface Hung extends Drawn<Primitive> {
  readonly lastRow: number
  /** Lower end of the words under the wires. */
  readonly wordsBottom: number
}

/** Sources one below the other, then the feeders, each with its taps above it and its panel at its end. */
function hangOn(room: TreeRoom, panel: PanelPart, level: number, from: number): Hung {
  const drawn: Primitive[] = []
  let [top, lastRow, wordsBottom] = [from, from - 20, from]
  for (const leaf of panel.leaves) {
    const height = leafHeightPt(leaf)
    lastRow = top + height / 2
    drawn.push(...onBus(leaf, room.leftOf(level), lastRow))
    top += height
  }
  for (const feeder of panel.feeders) {
    const each = drawFeeder(room, feeder, level, top, (start) => endOf(room, feeder, level + 1, start))
    drawn.push(...each.drawn)
    lastRow = each.entryY
    wordsBottom = lastRow + 9 + feederWordsPt(room, feeder)
    top = Math.max(each.bottom, wordsBottom)
  }
  return { drawn, bottom: top, lastRow, wordsBottom }
}

/** A source on its breaker. */
export function onBus(leaf: Leaf, x: number, y: number): Primitive[] {
  const device = deviceOf(leaf)
  const breaker = [wire(x, y, x + PANEL_PT / 2, y), ...breakerSymbol(x + 18, y)]
  const rating = device === null ? '' : `${device} A`
  return [
    ...(isNew(leaf) ? breaker : lighter(breaker)),
    ...drawLeaf(leaf, x, y),
    label(x + 35, y, leaf.kind === 'pv' ? `PV\n${rating}` : rating, {
      sizePt: SIZE,
      face: leaf.kind === 'pv' ? 'bold' : 'plain',
      valign: 'middle',
    }),
  ]
}

/** The panel at the end of a feeder: in full, as a box where it carries loads only, or a flag where it is on another sheet. */
function endOf(room: TreeRoom, { node, to }: FeederPart, level: number, top: number): FedPanel {
  const cut = room.cuts.get(node.id)
  if (cut !== undefined) return drawCut(room, cut, level, top)
  return carriesLoadsOnly(to) ? drawLoadPanel(room, to, level, top) : drawPanel(room, to, level, top)
}
