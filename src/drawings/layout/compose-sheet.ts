import {
  inset,
  onLayer,
  textWidthPt,
  type Box,
  type PaperSize,
  type Primitive,
  type Sheet,
  type Viewport,
} from '../model/index.js'
import { label, TYPE_PT } from './text.js'
import { drawTitleBlock, titleBlockHeightPt, type TitleFacts } from './title-block.js'

/** What one trade's sheet holds before frame and title block are put round it. */
export interface SheetDraft {
  readonly id: string
  readonly title: string
  readonly scale: string
  readonly viewports?: readonly Viewport[]
  readonly paper: readonly Primitive[]
}

/** The paper that a packet is drawn on, and what its sheets have in common. */
export interface Stationery {
  readonly size: PaperSize
  readonly facts: TitleFacts
  /** Outer frame. */
  readonly frame: Box
  /** Room for the drawing. */
  readonly body: Box
  readonly titleHeightPt: number
}

/** Margins, points: a wider one at the left for binding. */
const MARGIN = { left: 36, right: 20, top: 20, bottom: 20 } as const

/** Titles long enough to set the height of the title block. */
const LONGEST_TITLES = ['Electrical calculation, continued', 'Attachment and rail details']

/** @param planeNames Names of roof planes, which stand in titles of sheets. */
export function makeStationery(size: PaperSize, facts: TitleFacts, planeNames: readonly string[] = []): Stationery {
  const frame = {
    x: MARGIN.left,
    y: MARGIN.top,
    width: size.widthPt - MARGIN.left - MARGIN.right,
    height: size.heightPt - MARGIN.top - MARGIN.bottom,
  }
  const titles = [...LONGEST_TITLES, ...planeNames.map((name) => `Roof plan: ${name}`)]
  const titleHeightPt = Math.ceil(titleBlockHeightPt(facts, titles, frame.width))
  const body = inset({ ...frame, height: frame.height - titleHeightPt }, 12)
  return { size, facts, frame, body, titleHeightPt }
}

/** Puts frame, title block and, on a draft, the stamp round a drawing. */
export function composeSheet(draft: SheetDraft, stationery: Stationery): Sheet {
  const { size, facts, frame, titleHeightPt } = stationery
  const box = { x: frame.x, y: frame.y + frame.height - titleHeightPt, width: frame.width, height: titleHeightPt }
  const { id, title, scale } = draft
  return {
    id,
    title,
    size,
    frame,
    scaleNote: scale,
    viewports: draft.viewports ?? [],
    paper: [
      { kind: 'rectangle', ...frame, pen: 'heavy', layer: 'titleBlock' },
      ...draft.paper,
      ...drawTitleBlock(facts, { id, title, scale, size: `${size.name} sheet` }, box),
      ...(facts.draft ? onLayer('titleBlock', draftStamp(frame)) : []),
    ],
  }
}

function draftStamp(frame: Box): Primitive[] {
  const text = 'DRAFT - NOT FOR PERMIT'
  const width = textWidthPt(text, TYPE_PT.text, 'bold') + 12
  const [x, y] = [frame.x + frame.width - width, frame.y]
  return [
    { kind: 'rectangle', x, y, width, height: 12, pen: 'medium', fill: 'white' },
    label(x + width / 2, y + 6, text, { face: 'bold', align: 'center', valign: 'middle' }),
  ]
}
