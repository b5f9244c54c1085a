import type { Segments } from '../path.js'
import type { Schema } from '../schema.js'
import type { Complaint, Explain, ExplainContext } from './complaint.js'

/** A list of the wrong length, and what is wrong with its entries. */
export function explainList(
  schema: Schema,
  value: readonly unknown[],
  segments: Segments,
  context: ExplainContext,
  explain: Explain,
): Complaint[] {
  const { minItems = 0, maxItems = Infinity, items, uniqueItems = false } = schema
  const complaints: Complaint[] = []
  const complain = (message: string) => complaints.push({ segments, at: 'value', message })
  const entries = value.length === 1 ? '1 entry' : `${value.length} entries`
  if (value.length < minItems || value.length > maxItems) {
    if (minItems === maxItems) {
      const months = minItems === 12 ? ', January first' : ''
      complain(`${entries}; exactly ${minItems} are needed${months}`)
    } else if (value.length < minItems) complain(`${entries}; at least ${minItems} needed`)
    else complain(`${entries}; at most ${maxItems} allowed`)
  }
  if (uniqueItems && new Set(value.map((item) => JSON.stringify(item))).size < value.length) {
    complain('the same entry stands twice')
  }
  if (items !== undefined) {
    value.forEach((item, i) => complaints.push(...explain(items, item, [...segments, i], context)))
  }
  return complaints
}
