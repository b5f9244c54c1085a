import { own } from '../../values/index.js'
import { nearest } from '../did-you-mean.js'
import type { Segments } from '../path.js'
import { isPlainMap, ownValue, type PlainMap } from '../plain-data.js'
import { dereference, type Schema } from '../schema.js'
import { listWords, showValue } from '../words.js'
import type { Complaint, Explain, ExplainContext } from './complaint.js'

/** In a map with more wrong keys than this, nobody meant one of ours. */
const MOST_SUGGESTIONS = 50

/** Keys that are unknown, missing or badly named, and what is wrong with the values. */
export function explainMap(
  schema: Schema,
  value: PlainMap,
  segments: Segments,
  context: ExplainContext,
  explain: Explain,
): Complaint[] {
  const complaints: Complaint[] = []
  const { properties = {}, required = [], additionalProperties, propertyNames } = schema
  const meant = new Set<string>()
  const known = Object.keys(properties)
  const absent = known.filter((name) => !Object.hasOwn(value, name))
  for (const [key, inner] of Object.entries(value)) {
    const path = [...segments, key]
    const property = own(properties, key)
    const special = own(SPECIAL_KEYS, key)
    if (property !== undefined) complaints.push(...explain(property, inner, path, context))
    else if (special !== undefined) complaints.push({ segments: path, at: 'key', message: special })
    else if (additionalProperties === false) {
      const near = complaints.length < MOST_SUGGESTIONS ? (nearest(key, absent) ?? nearest(key, known)) : undefined
      if (near !== undefined) meant.add(near)
      complaints.push({ segments: path, at: 'key', message: unknownKey(near, known) })
    } else {
      if (propertyNames !== undefined) {
        const bad = explain(propertyNames, key, path, context).map(({ message }) => message)
        complaints.push(...bad.map((message): Complaint => ({ segments: path, at: 'key', message })))
      }
      if (isPlainMap(additionalProperties)) {
        complaints.push(...explain(additionalProperties, inner, path, context))
      }
    }
  }
  // A key that is only misspelt is not also missing.
  for (const key of required) {
    if (!Object.hasOwn(value, key) && !meant.has(key)) complaints.push(missing(schema, key, segments, context))
  }
  for (const [key, needed] of Object.entries(schema.dependentRequired ?? {})) {
    if (!Object.hasOwn(value, key)) continue
    const absent = needed.filter((name) => !Object.hasOwn(value, name) && !meant.has(name))
    complaints.push(...absent.map((name) => missing(schema, name, segments, context, ` (needed with ${key})`)))
  }
  return [...complaints, ...explainSize(schema, value, segments)]
}

const SPECIAL_KEYS: PlainMap & Readonly<Record<string, string>> = {
  '<<': 'merge keys (<<) are not part of YAML 1.2 and are not followed; write the values out',
  ['__proto__']: 'this key is not allowed',
}

function unknownKey(near: string | undefined, known: readonly string[]): string {
  if (near !== undefined) return `unknown key; did you mean ${near}?`
  return known.length === 0 ? 'unknown key; no keys are known here' : `unknown key; known here: ${listWords(known)}`
}

function missing(schema: Schema, key: string, segments: Segments, context: ExplainContext, why = ''): Complaint {
  const raw = ownValue(schema.properties, key)
  const property = isPlainMap(raw) ? dereference(raw, context.root) : {}
  const description = property.description?.replace(/\.$/, '')
  const example = property.examples?.[0]
  const parts = [`missing${why}`]
  if (description !== undefined) parts.push(description)
  if (example !== undefined) parts.push(`for example '${key}: ${showExample(example)}'`)
  return { segments: [...segments, key], at: 'parent', message: parts.join('; ') }
}

function showExample(example: unknown): string {
  return typeof example === 'string' ? example : JSON.stringify(example)
}

function explainSize(schema: Schema, value: PlainMap, segments: Segments): Complaint[] {
  const size = Object.keys(value).length
  const { minProperties = 0, maxProperties = Infinity } = schema
  if (size < minProperties) {
    const message = `${showValue(value)} with ${size} entries; at least ${minProperties} needed`
    return [{ segments, at: 'value', message }]
  }
  return size > maxProperties
    ? [{ segments, at: 'value', message: `a map with ${size} entries; at most ${maxProperties} allowed` }]
    : []
}
