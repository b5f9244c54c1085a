import { auditPacket, drawPacket, type AuditValues, type PacketInput } from '../../drawings/index.js'
import { sortFindings, type Result } from '../../worksheet/index.js'

/** The packet as it would be drawn, held against what its reviewer asks for; checks that fail stand among the findings. */
export function auditOf(input: Omit<PacketInput, 'draft'>): Result<AuditValues> {
  const failing = input.findings.filter(({ severity }) => severity === 'error')
  const whole = { ...input, draft: failing.length > 0 }
  const { values, findings } = auditPacket(whole, drawPacket(whole))
  return { values, worksheet: [], findings: sortFindings([...failing, ...findings]), assumptions: [] }
}
