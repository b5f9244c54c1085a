import { ARTIFACT, inset, type Box, type PaperSize, type Primitive, type Sheet, type Viewport } from '../model/index.js'
import { enlargedBox, enlargedPaper, enlargedViewport } from './enlarge.js'
import { enlargementOf, isReduced } from './lettering.js'
import type { RevisionRow } from './revision-rows.js'
import { drawTitleStrip, type TitleFacts } from './title-strip.js'

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
const NARROW_MARGIN = { left: 36, right: 18, top: 18, bottom: 18 } as const
/** Width of the title strip, units of the layout. */
const STRIP = 104
const NARROW_STRIP = 80
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
  const [margin, stripWidth] = isReduced(size) ? [NARROW_MARGIN, NARROW_STRIP] : [MARGIN, STRIP]
  const paper = {
    x: margin.left,
    y: margin.top,
    width: size.widthPt - margin.left - margin.right,
    height: size.heightPt - margin.top - margin.bottom,
  }
  const frame = enlargedBox(paper, 1 / unitPt)
  const strip = { ...frame, x: frame.x + frame.width - stripWidth, width: stripWidth }
  const body = inset({ ...frame, width: frame.width - stripWidth }, AROUND)
  return { size, facts, unitPt, frame, body, strip, revisions: wishes.revisions ?? [] }
}

/**
 * Puts frame and title strip round a drawing, and enlarges all to the paper.
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
    { kind: 'rectangle', ...frame, pen: 'heavy', layer: 'titleBlock', tag: ARTIFACT },
    ...draft.paper,
    ...drawTitleStrip(facts, { id, title, scale, size: `${size.name} sheet`, place }, stationery.revisions, strip),
  ]
  return {
    id,
    title,
    size,
    frame: enlargedBox(frame, unitPt),
    body: enlargedBox(body, unitPt),
    unitPt,
    scaleNote: scale,
    viewports: (draft.viewports ?? []).map((each) => enlargedViewport(each, unitPt)),
    paper: enlargedPaper(paper, unitPt),
  }
}
