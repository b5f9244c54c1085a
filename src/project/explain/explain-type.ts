import { unitOfPath } from '../key-unit.js'
import type { Segments } from '../path.js'
import { dereference, typeOfValue, typesOf, type Schema } from '../schema.js'
import { showKind } from '../words.js'
import type { Complaint, ExplainContext } from './complaint.js'
import { describeAllowed } from './describe.js'

/** Whether the value is of a type that the schema takes. A schema without a type takes everything. */
export function typeFits(schema: Schema, value: unknown, root: Schema): boolean {
  const types = typesOf(schema, root)
  if (types.size === 0) return true
  if (typeof value === 'number') {
    return Number.isFinite(value) && (types.has('number') || (types.has('integer') && Number.isInteger(value)))
  }
  return types.has(typeOfValue(value))
}

/** A value of the wrong type: what it is, what is wanted, and how to write it. */
export function explainType(schema: Schema, value: unknown, segments: Segments, context: ExplainContext): Complaint[] {
  if (typeFits(schema, value, context.root)) return []
  const expected = describeAllowed(schema, segments, context.root)
  const fix = fixFor(schema, value, segments, context)
  return [{ segments, at: 'value', message: `${found(value)}; expected ${expected}${fix === '' ? '' : `; ${fix}`}` }]
}

function found(value: unknown): string {
  if (typeof value === 'number' && !Number.isFinite(value)) {
    return Number.isNaN(value) ? 'not a number (.nan)' : 'an infinite number'
  }
  return value === null ? 'nothing stands here' : `found ${showKind(value)}`
}

function fixFor(schema: Schema, value: unknown, segments: Segments, context: ExplainContext): string {
  const types = typesOf(schema, context.root)
  const wantsNumber = types.has('number') || types.has('integer')
  const source = context.sourceAt(segments)
  if (value === null) return 'write a value, or delete the line'
  if (typeof value === 'string') {
    if (wantsNumber) return numberFix(value, unitOfPath(segments))
    if (types.has('boolean')) return booleanFix(value)
  }
  if (Array.isArray(value) && dereference(schema, context.root).enum !== undefined) {
    return segments[0] === 'codes' ? 'one edition of each code' : 'give one'
  }
  if (types.has('string') && (typeof value === 'number' || typeof value === 'boolean')) {
    return `put it in quotes: '${source?.text ?? String(value)}'`
  }
  if (typeof value === 'number' && types.has('integer') && Number.isFinite(value)) return 'write it without a fraction'
  return ''
}

function numberFix(text: string, unit: string): string {
  const trimmed = text.trim()
  if (trimmed !== '' && Number.isFinite(Number(trimmed))) return 'remove the quotes'
  const [, digits, rest] = /^([-+]?[\d.,_ ]*\d)\s*(\D*)$/.exec(trimmed) ?? []
  const plain = digits?.replaceAll(/[,_ ](?=\d{3}(?!\d))/g, '')
  if (plain === undefined || !Number.isFinite(Number(plain))) return ''
  if (rest === '') return `write ${plain}`
  return `write ${plain} alone${unit === '' ? '' : `: the key says that it is in ${unit}`}`
}

function booleanFix(text: string): string {
  const word = text.toLowerCase()
  if (['yes', 'y', 'on', 'true', 't'].includes(word)) return 'write true'
  if (['no', 'n', 'off', 'false', 'f'].includes(word)) return 'write false'
  return ''
}
