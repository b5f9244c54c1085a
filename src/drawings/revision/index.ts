export { changesSince, markChanges, sheetsGone, type SheetChange } from './mark-changes.js'
export { RECORD_FORMAT, recordPacket, type PacketRecord, type SheetRecord } from './packet-record.js'
