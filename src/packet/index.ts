export { preparePacket, type DrawnPacket, type PacketOptions, type PreparedPacket } from './prepare-packet.js'
