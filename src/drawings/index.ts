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
export { PAPER_SIZES, type PaperName } from './layout/index.js'
export { flattenSheet, missingGlyphs, type FlatSheet, type Mark, type Sheet } from './model/index.js'
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
export { moduleMap, shadeChart, type ModuleMapInput, type ShadeChartInput } from './pictures/index.js'
export { renderPdf, type FontFiles, type PdfInfo } from './render/render-pdf.js'
export { renderSvg } from './render/render-svg.js'
export { renderDxf } from './dxf/render-dxf.js'
export { documentPageId } from './sheets/document-index.js'
