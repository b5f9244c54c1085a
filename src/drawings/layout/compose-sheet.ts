import {
  inset,
  textWidthPt,
  type Box,
  type PaperSize,
  type Primitive,
  type Sheet,
  type Viewport,
} from '../model/index.js'
import { enlarged, enlargedBox, enlargedViewport } from './enlarge.js'
import { enlargementOf } from './lettering.js'
import { label, TYPE_PT } from './text.js'
import { drawTitleStrip, type RevisionRow, type TitleFacts } from './title-strip.js'

/** What one trade's sheet holds before frame and title strip are put round it, in units of the layout. */
export interface SheetDraft {
  readonly id: string
  readonly title: string
  readonly scale: string
  readonly viewports?: readonly Viewport[]
  readonly paper: readonly Primitive[]
}

/** The paper that a packet is drawn on, and what its sheets have in common. Boxes are in units of the layout. */
export interface Stationery {
  readonly size: PaperSize
  readonly facts: TitleFacts
  /** Points of paper for a unit of the layout. Sheets are laid out with `TYPE_PT` and printed larger by this. */
  readonly unitPt: number
  /** Outer frame. */
  readonly frame: Box
  /** Room for the drawing. */
  readonly body: Box
  /** The strip at the right with names, revisions and the number of the sheet. */
  readonly strip: Box
  /** Issues after the first, oldest first. */
  readonly revisions: readonly RevisionRow[]
}

/** Margins, points of paper: a wider one at the left for binding. */
const MARGIN = { left: 36, right: 20, top: 20, bottom: 20 } as const
/** Width of the title strip, units of the layout. */
const STRIP = 104
/** Free room between frame and drawing, units of the layout. */
const AROUND = 9

/** What of the stationery a project may ask for. */
export interface StationeryWishes {
  /** Height of the least capitals, in. */
  readonly leastTextIn?: number | undefined
  readonly revisions?: readonly RevisionRow[] | undefined
}

/** The sheet that a packet is laid out on. */
export function makeStationery(size: PaperSize, facts: TitleFacts, wishes: StationeryWishes = {}): Stationery {
  const unitPt = enlargementOf(size, wishes.leastTextIn)
  const paper = {
    x: MARGIN.left,
    y: MARGIN.top,
    width: size.widthPt - MARGIN.left - MARGIN.right,
    height: size.heightPt - MARGIN.top - MARGIN.bottom,
  }
  const frame = enlargedBox(paper, 1 / unitPt)
  const strip = { ...frame, x: frame.x + frame.width - STRIP, width: STRIP }
  const body = inset({ ...frame, width: frame.width - STRIP }, AROUND)
  return { size, facts, unitPt, frame, body, strip, revisions: wishes.revisions ?? [] }
}

/**
 * Puts frame, title strip and, on a draft, the stamp round a drawing, and enlarges all to the paper.
 *
 * @param place Which sheet of how many it is.
 */
export function composeSheet(
  draft: SheetDraft,
  stationery: Stationery,
  place?: { readonly number: number; readonly of: number },
): Sheet {
  const { size, facts, frame, unitPt, strip, body } = stationery
  const { id, title, scale } = draft
  const paper: Primitive[] = [
    { kind: 'rectangle', ...frame, pen: 'heavy' },
    ...draft.paper,
    ...drawTitleStrip(facts, { id, title, scale, size: `${size.name} sheet`, place }, stationery.revisions, strip),
    ...(facts.draft ? draftStamp(body, frame) : []),
  ]
  return {
    id,
    title,
    size,
    frame: enlargedBox(frame, unitPt),
    body: enlargedBox(body, unitPt),
    scaleNote: scale,
    viewports: (draft.viewports ?? []).map((each) => enlargedViewport(each, unitPt)),
    paper: paper.map((each) => enlarged(each, unitPt)),
  }
}

/** Lies on the frame above the drawing, where nothing else stands. */
function draftStamp(body: Box, frame: Box): Primitive[] {
  const text = 'DRAFT - NOT FOR PERMIT'
  const width = textWidthPt(text, TYPE_PT.text, 'bold') + 12
  const x = body.x + body.width - width
  const height = body.y - frame.y
  return [
    { kind: 'rectangle', x, y: frame.y, width, height, pen: 'medium', fill: 'white' },
    label(x + width / 2, frame.y + height / 2, text, { face: 'bold', align: 'center', valign: 'middle' }),
  ]
}
