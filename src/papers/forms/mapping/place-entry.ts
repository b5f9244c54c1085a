import type { MappedField, MappedPlace } from './form-mapping-types.generated.js'

/** The state of a mark; it says nothing that could declare. */
export const MARKED = 'X'

/** What goes into a place, as the entry of a field says it. */
export function placeEntry({ name, mark, from, text, equals, translate, format, optional }: MappedPlace): MappedField {
  const given = { from, text, equals, translate, format, optional, on: mark === true ? MARKED : undefined }
  const stated = Object.entries(given).filter(([, value]) => value !== undefined)
  return { field: name, ...(Object.fromEntries(stated) as Omit<MappedField, 'field'>) }
}
