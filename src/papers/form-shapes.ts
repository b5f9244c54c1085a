import type { ListedField } from './forms/index.js'

/** A fillable PDF form: its name for the messages, and its content. */
export interface FormFile {
  readonly path: string
  readonly bytes: Uint8Array
}

/** What goes into which field: YAML of the shape of schemas/form-mapping.schema.json. */
export interface MappingFile {
  readonly path: string
  readonly text: string
}

/** The fields of a form. */
export interface ListedForm {
  /** SHA-256 of the form, hexadecimal. */
  readonly sha256: string
  readonly pages: number
  readonly fields: readonly ListedField[]
  /** What a filled form would leave out. */
  readonly notes: readonly string[]
  /** A mapping to start from, YAML. */
  readonly starter: string
}

/** What goes into a field; keys as in JSON. */
export interface FilledField {
  readonly field: string
  readonly kind: string
  /** As people read it. */
  readonly value: string
  /** `project.title`, or `the mapping` for a text of the person. */
  readonly from: string
  /** Pages that the field stands on, from 1. */
  readonly pages: readonly number[]
}
