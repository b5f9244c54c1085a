import { didYouMean } from '../did-you-mean.js'
import type { Segments } from '../path.js'
import type { Schema } from '../schema.js'
import { listWords, showKind, showValue } from '../words.js'
import type { Complaint } from './complaint.js'

/** Patterns that come up often, in words. Others are explained by the example that the schema gives. */
const PATTERNS: Readonly<Record<string, string>> = {
  '\\S': 'is blank; write some text',
  '^[A-Za-z][A-Za-z0-9_-]*$': 'is no id: an id starts with a letter and holds only letters, digits, _ and -',
  '^\\d{6}$': "is no station number: six digits in quotes, for example '724940'",
  '^\\d{4}-\\d{2}-\\d{2}$': 'is no date: write year-month-day, for example 2026-03-02',
}

/** Text of the wrong form or length. */
export function explainText(schema: Schema, value: string, segments: Segments): Complaint[] {
  const { pattern, minLength = 0, maxLength = Infinity } = schema
  const complain = (message: string): Complaint[] => [
    { segments, at: 'value', message: `${showValue(value)} ${message}` },
  ]
  if (pattern !== undefined && !new RegExp(pattern, 'u').test(value)) {
    const example = schema.examples?.[0]
    const shown = example === undefined ? `it has to match ${pattern}` : `for example ${showValue(example)}`
    return complain(PATTERNS[pattern] ?? `does not have the right form; ${shown}`)
  }
  const length = Array.from(value).length
  if (length < minLength) return complain(`is too short; at least ${minLength} characters`)
  return length > maxLength ? complain(`is too long; at most ${maxLength} characters`) : []
}

/** A value that is not among those listed. */
export function explainChoice(schema: Schema, value: unknown, segments: Segments): Complaint[] {
  const allowed = 'const' in schema ? [schema.const] : schema.enum
  if (allowed === undefined || allowed.includes(value)) return []
  const words = allowed.map(String)
  const choice = words.length === 1 ? `expected ${words[0] ?? ''}` : `expected one of: ${listWords(words, 40)}`
  const near = typeof value === 'string' && words.length > 1 ? didYouMean(value, words) : ''
  return [{ segments, at: 'value', message: `found ${showKind(value)}; ${choice}${near}` }]
}
