import type { Complaint } from '../../explain/complaint.js'
import { unitOfPath } from '../../key-unit.js'
import { pathTrouble } from '../../override.js'
import { readCheckedYaml, type CheckedYaml } from '../../read-checked-yaml.js'
import { EQUIPMENT_KINDS, type EquipmentKind } from '../groups.js'
import { entryPath } from '../entry.js'
import { fromSheetUnit, sheetUnitsOf } from '../sheet-units.js'
import { equipmentColumnsSchema } from './equipment-columns-schema.generated.js'
import type { EquipmentColumns } from './equipment-columns-types.generated.js'
import { validate } from './equipment-columns-validator.generated.js'

/** What the columns of a table are, with the way to refuse it for what the table lacks. */
export type ReadColumns = CheckedYaml<EquipmentColumns>

/**
 * Reads what the columns of a table of equipment hold.
 *
 * @param file Name of the file, for the messages.
 * @param text Its content: YAML of the shape of schemas/equipment-columns.schema.json.
 * @throws ProjectError with every problem, each at its line and column.
 */
export function readColumns(file: string, text: string): ReadColumns {
  return readCheckedYaml<EquipmentColumns>(file, text, {
    schema: equipmentColumnsSchema,
    validate,
    check: checkColumns,
  })
}

function checkColumns({ kind, kind_column, columns, values = {} }: EquipmentColumns): Complaint[] {
  const complaints: Complaint[] = []
  if ((kind === undefined) === (kind_column === undefined)) {
    const message = 'state kind, when every row is the same, or kind_column, and not both'
    complaints.push({ segments: [kind === undefined ? 'format' : 'kind'], at: 'key', message })
  }
  const kinds = kind === undefined ? EQUIPMENT_KINDS : [kind]
  for (const [part, keys] of [
    ['columns', columns],
    ['values', values],
  ] as const)
    for (const key of Object.keys(keys)) {
      const message = keyTrouble(key, kinds)
      if (message !== undefined) complaints.push({ segments: [part, key], at: 'key', message })
    }
  for (const [key, { unit }] of Object.entries(columns)) {
    const wanted = unitOfPath(key.split('.'))
    if (unit === undefined || fromSheetUnit(1, unit, wanted) !== undefined) continue
    const allowed = sheetUnitsOf(wanted).join(', ')
    const message =
      wanted === '' ? `${key} has no unit` : `'${unit}' cannot be turned into ${wanted}; units: ${allowed}`
    complaints.push({ segments: ['columns', key, 'unit'], at: 'value', message })
  }
  return complaints
}

/** What is wrong with a key, undefined when one of the kinds has it. */
function keyTrouble(key: string, kinds: readonly EquipmentKind[]): string | undefined {
  const troubles = kinds.map((kind) => pathTrouble(entryPath({ kind, id: 'id' }, key)))
  if (troubles.includes(undefined)) return undefined
  const near = troubles.find((trouble) => trouble?.includes('did you mean'))
  return near ?? (kinds.length === 1 ? troubles[0] : 'no kind of equipment has this key')
}
