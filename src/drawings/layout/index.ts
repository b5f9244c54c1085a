export type { Block, TableColumn } from './block.js'
export { composeStamp } from './compose-stamp.js'
export {
  composeSheet,
  makeStationery,
  type SheetDraft,
  type Stationery,
  type StationeryWishes,
} from './compose-sheet.js'
export { enlarged, enlargedPaper } from './enlarge.js'
export { BREAK, flowBlocks, flowPieces } from './flow.js'
export type { Piece } from './piece.js'
export { counted, feetInches, inches, plainNumber } from './lengths.js'
export { measureSheet, overprints, type SheetMeasure } from './measure.js'
export { mapMarks, northArrow, scaleBar } from './map-marks.js'
export { PAPER_SIZES, type PaperName } from './paper-sizes.js'
export { notesOf } from './plan-notes.js'
export { planRoom, type PlanRoom } from './plan-room.js'
export {
  ARCHITECT_SCALES,
  centredOrigin,
  SITE_SCALES,
  DETAIL_SCALES,
  largestScale,
  VICINITY_SCALES,
  type Scale,
} from './scales.js'
export { label, line, polyline, TYPE_PT } from './text.js'
export type { RevisionRow } from './revision-rows.js'
export type { TitleFacts } from './title-strip.js'
export { isReduced } from './lettering.js'
