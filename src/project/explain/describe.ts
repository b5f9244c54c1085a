import { unitOfPath, withUnit } from '../key-unit.js'
import type { Segments } from '../path.js'
import { dereference, type Schema } from '../schema.js'
import { listWords } from '../words.js'

/** `0 to 90 deg`, `above 0, at most 1000 W`; '' when every number is allowed. */
export function describeRange(schema: Schema, unit: string): string {
  const { minimum, exclusiveMinimum, maximum, exclusiveMaximum } = schema
  if (minimum !== undefined && maximum !== undefined) return withUnit(`${minimum} to ${maximum}`, unit)
  const low = exclusiveMinimum === undefined ? minimum : exclusiveMinimum
  const high = exclusiveMaximum === undefined ? maximum : exclusiveMaximum
  const parts: string[] = []
  if (low !== undefined) parts.push(`${exclusiveMinimum === undefined ? 'at least' : 'above'} ${low}`)
  if (high !== undefined) parts.push(`${exclusiveMaximum === undefined ? 'at most' : 'below'} ${high}`)
  return parts.length === 0 ? '' : withUnit(parts.join(', '), unit)
}

/** What a schema allows, as it follows 'expected': `a number in deg (0 to 90 deg)`, `one of: portrait, landscape`. */
export function describeAllowed(schema: Schema, segments: Segments, root: Schema): string {
  const whole = dereference(schema, root)
  const branches = whole.anyOf ?? whole.oneOf
  if (branches !== undefined) return branches.map((branch) => describeAllowed(branch, segments, root)).join(', or ')
  if ('const' in whole) return String(whole.const)
  if (whole.enum !== undefined) {
    return whole.enum.length === 1 ? String(whole.enum[0]) : `one of: ${listWords(whole.enum.map(String), 40)}`
  }
  const types = typeof whole.type === 'string' ? [whole.type] : (whole.type ?? [])
  if (types.length === 0 && (whole.required !== undefined || whole.properties !== undefined)) return describeMap(whole)
  return types.map((type) => describeType(type, whole, segments, root)).join(', or ') || 'another value'
}

function describeType(type: string, schema: Schema, segments: Segments, root: Schema): string {
  switch (type) {
    case 'number':
    case 'integer': {
      const unit = unitOfPath(segments)
      const range = describeRange(schema, unit)
      const noun = type === 'integer' ? 'a whole number' : 'a number'
      if (range !== '') return `${noun} (${range})`
      return unit === '' ? noun : `${noun} in ${unit}`
    }
    case 'string':
      return 'text'
    case 'boolean':
      return 'true or false'
    case 'array':
      return describeList(schema, segments, root)
    case 'object':
      return describeMap(schema)
    default:
      return type
  }
}

function describeList(schema: Schema, segments: Segments, root: Schema): string {
  const { minItems, maxItems, items } = schema
  const number = minItems !== undefined && minItems === maxItems ? ` of ${minItems}` : ''
  const entry = items === undefined ? undefined : dereference(items, root)
  if (entry?.type !== 'number' && entry?.type !== 'integer') return `a list${number}`
  const range = describeRange(entry, unitOfPath(segments))
  return `a list${number === '' ? ' of' : number} numbers${range === '' ? '' : ` (${range})`}`
}

function describeMap(schema: Schema): string {
  const keys = schema.required ?? Object.keys(schema.properties ?? {}).slice(0, 3)
  return keys.length === 0 ? 'a map' : `a map with ${keys.join(', ')}`
}
