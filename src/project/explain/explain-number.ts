import { unitOfPath, withUnit } from '../key-unit.js'
import type { Schema } from '../schema.js'
import type { Segments } from '../path.js'
import type { Complaint } from './complaint.js'
import { describeRange } from './describe.js'

/** A number outside its range. */
export function explainNumber(schema: Schema, value: number, segments: Segments): Complaint[] {
  const unit = unitOfPath(segments)
  const { minimum = -Infinity, maximum = Infinity, exclusiveMinimum = -Infinity, exclusiveMaximum = Infinity } = schema
  const low = value < minimum || value <= exclusiveMinimum
  const high = value > maximum || value >= exclusiveMaximum
  if (low || high) {
    const message = `${withUnit(value, unit)} is too ${low ? 'low' : 'high'}; allowed: ${describeRange(schema, unit)}`
    return [{ segments, at: 'value', message }]
  }
  const { multipleOf } = schema
  if (multipleOf !== undefined && !Number.isInteger(value / multipleOf)) {
    const message = `${withUnit(value, unit)} is not a multiple of ${withUnit(multipleOf, unit)}`
    return [{ segments, at: 'value', message }]
  }
  return []
}
