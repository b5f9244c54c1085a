export { doesNotFit } from './does-not-fit.js'
export { documentStamps } from './document-stamps.js'
export type { AppendedDocument, PacketInput } from './inputs.js'
export {
  labelsToAsk,
  requiredLabels,
  type LabelAsk,
  type LabelPlace,
  type RequiredLabel,
} from './labels/required-labels.js'
export type { LabelPart } from './labels/label-style.js'
export { checkGlyphs, checkTexts } from './check-glyphs.js'
export { BREAK, flowPieces, label, line, northArrow, PAPER_SIZES, type PaperName, type Piece } from './layout/index.js'
export {
  asArtifact,
  blockHeightPt,
  COLORS,
  flattenSheet,
  missingGlyphs,
  rowCells,
  textWidthPt,
  wrapText,
  type Box,
  type Color,
  type Face,
  type FlatSheet,
  type Mark,
  type Primitive,
  type Sheet,
  type Tag,
} from './model/index.js'
export { drawLoadSheet } from './load-sheet.js'
export { packetGaps } from './packet-gaps.js'
export { isUnconfirmed } from './unconfirmed.js'
export { wallFindings } from './wall/working-space.js'
export { drawPacket } from './packet.js'
export { drawPreparerReport } from './preparer-report.js'
export {
  changesSince,
  markChanges,
  RECORD_FORMAT,
  RECORD_FORMATS,
  isPacketRecord,
  recordPacket,
  sheetsGone,
  type PacketRecord,
  type SheetChange,
} from './revision/index.js'
export {
  auditPacket,
  expeditedReview,
  JUDGES,
  type AuditPoint,
  type AuditValues,
  type ExpeditedReview,
} from './audit/index.js'
export {
  moduleMap,
  shadeChart,
  siteSketch,
  type ModuleMapInput,
  type ShadeChartInput,
  type SiteSketch,
  type SiteSketchInput,
} from './pictures/index.js'
export { renderPdf, type FontFiles, type PdfInfo, type PdfWishes } from './render/render-pdf.js'
export { renderSvg, renderSvgFigure } from './render/render-svg.js'
export { renderDxf } from './dxf/render-dxf.js'
export { documentPageId } from './sheets/document-index.js'
