import type { Complaint } from '../explain/complaint.js'
import { explain } from '../explain/explain.js'
import { formatPath } from '../path.js'
import type { Problem } from '../problem.js'
import { checkEquipment } from '../rules/index.js'
import { projectSchema } from '../schema.js'
import { showValue } from '../words.js'
import type { EquipmentEntry } from './entry.js'
import { EQUIPMENT_GROUPS, schemaOfKind } from './groups.js'

/** All that is wrong with an entry by the schema or, when the schema is content, by the rules; each at its place. */
export function checkEntry(entry: EquipmentEntry): Problem[] {
  const path = ['equipment', EQUIPMENT_GROUPS[entry.kind], entry.id]
  return complaintsOf(entry, path).map(({ segments, message }) => ({
    ...entry.placeOf(formatPath(segments.slice(path.length))),
    path: formatPath(segments),
    message,
  }))
}

function complaintsOf({ kind, id, values }: EquipmentEntry, path: readonly string[]): Complaint[] {
  const root = projectSchema()
  const context = { root, sourceAt: () => undefined }
  if (!new RegExp(root.$defs?.['id']?.pattern ?? '', 'u').test(id)) {
    const message = `${showValue(id)} is no id: a letter, then letters, digits, - and _, for example ${kind.slice(0, 1)}410`
    return [{ segments: path, at: 'key', message }]
  }
  const bySchema = explain(schemaOfKind(kind), values, path, context)
  if (bySchema.length > 0) return bySchema
  return checkEquipment({ [EQUIPMENT_GROUPS[kind]]: { [id]: values } })
}
