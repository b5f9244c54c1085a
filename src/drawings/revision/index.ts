export { changesSince, sheetsGone, type SheetChange } from './changes-since.js'
export { isPacketRecord } from './is-record.js'
export { markChanges } from './mark-changes.js'
export { RECORD_FORMAT, RECORD_FORMATS, recordPacket, type PacketRecord, type SheetRecord } from './packet-record.js'
