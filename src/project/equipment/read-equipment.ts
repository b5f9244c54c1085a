import { isPlainMap, ownValue, type PlainMap } from '../plain-data.js'
import { sortProblems, type Problem } from '../problem.js'
import { ProjectError } from '../project-error.js'
import { findKey, findValue } from '../yaml-file.js'
import { checkEntry } from './check-entry.js'
import type { EquipmentEntry } from './entry.js'
import { EQUIPMENT_GROUPS, EQUIPMENT_KINDS } from './groups.js'
import { readEquipmentText } from './write-entries.js'

/**
 * The pieces of an equipment file, or of the equipment that stands in a project file, in the order of the file.
 *
 * @throws ProjectError when it is not YAML, or a piece does not fit the schema.
 */
export function readEquipment(file: string, text: string): EquipmentEntry[] {
  const { yaml, base, equipment } = readEquipmentText(file, text)
  const entries = EQUIPMENT_KINDS.flatMap((kind) => {
    const group = ownValue(equipment, EQUIPMENT_GROUPS[kind])
    return Object.entries(isPlainMap(group) ? group : {}).map(([id, values]): EquipmentEntry => {
      const path = [...base, EQUIPMENT_GROUPS[kind], id]
      const placeOf = (key: string) => {
        const inner = key === '' ? path : [...path, ...key.split('.')]
        return { file, ...(findValue(yaml, inner) ?? findKey(yaml, path)) }
      }
      return { kind, id, values: values as PlainMap, sheetWords: new Map(), placeOf }
    })
  })
  const problems: Problem[] = entries.flatMap(checkEntry)
  if (problems.length > 0) throw new ProjectError(sortProblems(problems, [file]), 2, new Map([[file, text]]))
  return entries
}
