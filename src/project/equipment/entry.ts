import { formatPath, type Segments } from '../path.js'
import type { PlainMap } from '../plain-data.js'
import type { Problem } from '../problem.js'
import { EQUIPMENT_GROUPS, type EquipmentKind } from './groups.js'

/** One piece of equipment that is to be written, as a person or a table states it. */
export interface EquipmentEntry {
  readonly kind: EquipmentKind
  readonly id: string
  /** As they will stand in the file, in the units of the keys. */
  readonly values: PlainMap
  /** What the sheet says, by key, where its unit is another one: `1722 mm`. */
  readonly sheetWords: ReadonlyMap<string, string>
  /** Where a key was stated; the place of the whole entry for '' and for a key that is not there. */
  readonly placeOf: (key: string) => Omit<Problem, 'path' | 'message'>
}

/** `equipment.modules.m410`, with a key below it. */
export function entryPath({ kind, id }: Pick<EquipmentEntry, 'kind' | 'id'>, ...keys: Segments): string {
  return formatPath(['equipment', EQUIPMENT_GROUPS[kind], id, ...keys])
}
