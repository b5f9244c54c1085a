export { formatValue, kindOf, plainText } from './format-value.js'
export type { FormMapping, MappedField, ValueFormat } from './form-mapping-types.generated.js'
export { readMapping, type ReadMapping } from './read-mapping.js'
