export { auditPacket, JUDGES, type AuditPoint, type AuditValues } from './audit-packet.js'
export { expeditedReview, type ExpeditedLine, type ExpeditedReview } from './expedited.js'
