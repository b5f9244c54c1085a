export { formatValue, kindOf, plainText } from './format-value.js'
export type { FormMapping, MappedField, MappedPlace, ValueFormat } from './form-mapping-types.generated.js'
export { MARKED, placeEntry } from './place-entry.js'
export { readMapping, type ReadMapping } from './read-mapping.js'
