import { documentName, documentsOf } from '../../project/facts.js'
import type { PacketInput } from '../inputs.js'
import { documentSheets } from './document-index.js'

/** What the rafters stand on beside the calculation: `south, west: Letter about the rafters, 2026-02-20 (sheet X-001)`. */
export function rafterDocuments({ project, documents }: Pick<PacketInput, 'project' | 'documents'>): string[] {
  const framing = Object.entries(project.structure?.framing ?? {})
  const sheets = documentSheets(documents)
  return documentsOf(project).flatMap((document) => {
    const planes = framing.filter(([, each]) => document.id !== undefined && each.rafters_verified_by === document.id)
    if (planes.length === 0) return []
    const [sheet] = sheets[documents.findIndex((each) => each.id === document.id)] ?? []
    const place = sheet === undefined ? 'not appended' : `sheet ${sheet}`
    return [`${planes.map(([id]) => id).join(', ')}: stand on ${documentName(document)} (${place})`]
  })
}
