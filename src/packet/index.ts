export { loadSheetPdf } from './draw-load-sheet.js'
export { readRecord } from './read-record.js'
export { preparePacket, type DrawnPacket, type PacketOptions, type PreparedPacket } from './prepare-packet.js'
export { readFonts } from './read-fonts.js'
