import type { Segments } from '../path.js'
import type { Schema } from '../schema.js'

/** What is wrong with a value, before it has a place in a file. */
export interface Complaint {
  readonly segments: Segments
  /** Whether the key, the value, or (for something missing) the map that should hold it is to be shown. */
  readonly at: 'key' | 'value' | 'parent'
  readonly message: string
}

/** What the explanations need beside schema and value. */
export interface ExplainContext {
  readonly root: Schema
  /** A scalar as it was typed, where it is known. */
  readonly sourceAt: (segments: Segments) => { readonly text: string; readonly quoted: boolean } | undefined
}

export type Explain = (schema: Schema, value: unknown, segments: Segments, context: ExplainContext) => Complaint[]
