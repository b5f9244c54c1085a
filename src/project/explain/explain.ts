import type { Segments } from '../path.js'
import { isPlainMap } from '../plain-data.js'
import { dereference, type Schema } from '../schema.js'
import type { Complaint, ExplainContext } from './complaint.js'
import { explainBranches } from './explain-branches.js'
import { explainList } from './explain-list.js'
import { explainMap } from './explain-map.js'
import { explainNumber } from './explain-number.js'
import { explainChoice, explainText } from './explain-text.js'
import { explainType } from './explain-type.js'

/**
 * Everything that is wrong with a value, in plain words. Runs only after the precompiled validator has said no:
 * it walks the schema itself, so that a message can be made from the whole of what is allowed at a place.
 */
export function explain(schema: Schema, value: unknown, segments: Segments, context: ExplainContext): Complaint[] {
  const whole = dereference(schema, context.root)
  const { anyOf, oneOf, ...own } = whole
  if (anyOf !== undefined || oneOf !== undefined) {
    const branches = explainBranches(whole, value, segments, context, explain)
    return [...explainOwn(own, value, segments, context), ...branches]
  }
  return explainOwn(whole, value, segments, context)
}

function explainOwn(schema: Schema, value: unknown, segments: Segments, context: ExplainContext): Complaint[] {
  const wrongType = explainType(schema, value, segments, context)
  if (wrongType.length > 0) return wrongType
  const complaints = [...explainChoice(schema, value, segments), ...explainConditions(schema, value, segments, context)]
  if (typeof value === 'number') complaints.push(...explainNumber(schema, value, segments))
  if (typeof value === 'string') complaints.push(...explainText(schema, value, segments))
  if (Array.isArray(value)) complaints.push(...explainList(schema, value, segments, context, explain))
  if (isPlainMap(value)) complaints.push(...explainMap(schema, value, segments, context, explain))
  return complaints
}

/** `allOf`, `if`/`then`/`else` and `not`. */
function explainConditions(schema: Schema, value: unknown, segments: Segments, context: ExplainContext): Complaint[] {
  const complaints = (schema.allOf ?? []).flatMap((part) => explain(part, value, segments, context))
  if (schema.if !== undefined) {
    const holds = explain(schema.if, value, segments, context).length === 0
    const then = holds ? schema.then : schema.else
    if (then !== undefined) complaints.push(...explain(withProperties(then, schema), value, segments, context))
  }
  if (schema.not !== undefined && explain(schema.not, value, segments, context).length === 0) {
    const why = schema.not.description ?? schema.description ?? 'see the description of this key'
    complaints.push({ segments, at: 'value', message: `this combination is not allowed; ${why}` })
  }
  return complaints
}

/** A condition often says only what is required; descriptions and examples then stand in the schema around it. */
function withProperties(then: Schema, around: Schema): Schema {
  return then.required !== undefined && then.properties === undefined && around.properties !== undefined
    ? { ...then, properties: Object.fromEntries(Object.entries(around.properties).map(([key, p]) => [key, textOf(p)])) }
    : then
}

function textOf({ description, examples }: Schema): Schema {
  return { ...(description === undefined ? {} : { description }), ...(examples === undefined ? {} : { examples }) }
}
