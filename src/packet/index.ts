export { bindDocumentsTask, readDocumentTask } from './document-tasks.js'
export { loadSheetPdf } from './draw-load-sheet.js'
export { readRecord } from './read-record.js'
export {
  preparePacket,
  valuesBehind,
  type DrawnPacket,
  type PacketOptions,
  type PreparedPacket,
} from './prepare-packet.js'
export { imprintOf, readPdfSeal, sealPdf, valueSeals, type PdfSeal, type SealedPaper } from './pdf-seal.js'
export { readFonts } from './read-fonts.js'
