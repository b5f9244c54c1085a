import { it } from 'vitest'
import { sizeStorage } from './storage-house.js'
it('x', () => {
  const { result, storage, found } = sizeStorage()
  console.log(JSON.stringify(storage, null, 1))
  console.log(found, result.findings.map((f) => `${f.severity} ${f.id} ${f.message}`).join('\n'))
  console.log(result.values.distribution.map((n) => `${n.id} ${n.kind} ${n.inverter_a} ${n.complies} ${n.governs}`))
  console.log(result.values.conductors.map((c) => `${c.tag} ${c.from}>${c.to} ${c.circuits} ${c.size_awg} ${c.ocpd_a}`))
})
