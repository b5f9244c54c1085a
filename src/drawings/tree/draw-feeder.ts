import { label, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, wrapText, type Primitive, inCapitals } from '../model/index.js'
import { nodeTitle } from '../node-title.js'
import { breakerSymbol, namedBox, tagSymbol } from '../diagram/one-line-symbols.js'
import { clipName } from './clip-name.js'
import { drawTap, tapHeightPt } from './draw-tap.js'
import { panelPlace } from '../labels/label-places.js'
import { panelFacts } from './panel-facts.js'
import type { FeederPart, PanelPart } from './tree-parts.js'
import { PANEL_PT, type Drawn, type TreeRoom } from './tree-room.js'
import { dot, joinFlag, lighter, wire } from './tree-symbols.js'

const SIZE = TYPE_PT.small
/** A panel with loads only: its box, and room for its words. */
const LOADS = { width: 26, words: 104 } as const

/** A panel at the end of a feeder: where its wire reaches it, and all that is drawn of it. */
export interface FedPanel extends Drawn<Primitive> {
  readonly entryY: number
}

/** Whether a panel carries loads only, so that a box with its words is enough. */
export const carriesLoadsOnly = ({ leaves, feeders }: PanelPart): boolean => leaves.length === 0 && feeders.length === 0

/** A panel that carries loads only. */
export function drawLoadPanel(room: TreeRoom, panel: PanelPart, level: number, top: number): FedPanel {
  const right = room.leftOf(level) + PANEL_PT
  const left = right - LOADS.width
  const name = clipName(inCapitals(nodeTitle(panel.node)), SIZE, 'plain', LOADS.words)
  const words = `${name}\nloads only, ${panelFacts(panel, room.labels(panelPlace(panel.node)))}`
  const height = Math.max(34, blockHeightPt(wrapText(words, SIZE, 'plain', LOADS.words).length, SIZE) + 12)
  const y = top + height / 2
  return {
    drawn: [
      ...lighter([namedBox(left, y - 10, LOADS.width, 20)]),
      label(left + LOADS.width / 2, y, 'SUB', { sizePt: SIZE, face: 'bold', align: 'center', valign: 'middle' }),
      label(left - 5, y, words, { sizePt: SIZE, align: 'right', valign: 'middle', maxWidthPt: LOADS.words }),
    ],
    bottom: top + height,
    entryY: y,
  }
}

/** The end of a feeder whose panel stands on another sheet. */
export function drawCut(room: TreeRoom, letter: string, level: number, top: number): FedPanel {
  const right = room.leftOf(level) + PANEL_PT
  const y = top + 17
  return {
    drawn: [
      ...joinFlag(right - 24, y, letter),
      label(right - 29, y, `goes on at ${letter} on a sheet that follows`, {
        sizePt: SIZE,
        align: 'right',
        valign: 'middle',
        maxWidthPt: LOADS.words,
      }),
    ],
    bottom: top + 34,
    entryY: y,
  }
}

/**
 * A feeder with its taps above it, from the busbar that it starts at to the panel at its end.
 *
 * @param draw Draws that panel from a height on.
 */
export function drawFeeder(
  room: TreeRoom,
  feeder: FeederPart,
  level: number,
  top: number,
  draw: (top: number) => FedPanel,
): FedPanel {
  const heights = feeder.taps.map(tapHeightPt)
  const to = draw(top + heights.reduce((sum, each) => sum + each, 0))
  const [x, farX] = [room.leftOf(level), room.leftOf(level + 1) + PANEL_PT]
  const y = to.entryY
  const { conductor } = feeder
  const taps = feeder.taps.flatMap((tap, index) => {
    const start = top + heights.slice(0, index).reduce((sum, each) => sum + each, 0)
    const along = farX + room.gapPt * 0.3 + index * 5
    return drawTap(tap, tap.farEnd ? farX + 8 + index * 5 : along, start, y).drawn
  })
  return {
    ...to,
    drawn: [
      ...run(feeder, farX, x, y),
      ...to.drawn,
      ...taps,
      ...(conductor === undefined ? [] : tagSymbol(farX + room.gapPt * 0.72, y, conductor.tag)),
      label(x - 5, y + 9, feederWords(room, feeder), { sizePt: SIZE, align: 'right', maxWidthPt: room.gapPt - 8 }),
    ],
  }
}

/** The wire with the device at its start, whose rating stands right of the busbar. */
function run({ breakerA, throughLugs, existing }: FeederPart, farX: number, x: number, y: number): Primitive[] {
  const busX = x + PANEL_PT / 2
  const drawn = [wire(farX, y, busX, y), ...(breakerA === undefined ? [] : breakerSymbol(x + 18, y))]
  const words = [throughLugs ? 'lugs' : '', breakerA === undefined ? '' : `${breakerA} A`]
  return [
    ...(existing ? lighter(drawn) : drawn),
    dot(busX, y),
    label(busX + 4, y, words.filter((each) => each !== '').join('\n'), { sizePt: SIZE, valign: 'middle' }),
  ]
}

/** Height of the words under a feeder, points. */
export function feederWordsPt(room: TreeRoom, feeder: FeederPart): number {
  return blockHeightPt(wrapText(feederWords(room, feeder), SIZE, 'plain', room.gapPt - 8).length, SIZE)
}

function feederWords(room: TreeRoom, { node, existing, oppositeEnd }: FeederPart): string {
  const name = clipName(inCapitals(nodeTitle(node)), SIZE, 'plain', room.gapPt - 8)
  return `${name}\n${existing ? 'EXISTING' : 'NEW'}${oppositeEnd ? ', breaker at the end of the bus opposite the main' : ''}${node.complies ? '' : ', DOES NOT COMPLY'}`
}
