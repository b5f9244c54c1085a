import type { Finding } from '../../worksheet/index.js'
import type { FieldChoice, FieldState, FormField } from './document/index.js'
import { plainText, type MappedField, type MappedPlace } from './mapping/index.js'

/** What goes into a field. */
export type Filling =
  | { readonly kind: 'text'; readonly text: string }
  /** Undefined when it is put off. */
  | { readonly kind: 'state'; readonly state: FieldState | undefined }
  | { readonly kind: 'choices'; readonly choices: readonly FieldChoice[] }

/** A field with what goes into it and where that comes from. */
export interface Fill {
  readonly field: FormField
  readonly entry: MappedField
  /** Where it is drawn when the form has no field for it. */
  readonly place: MappedPlace | undefined
  readonly filling: Filling
  /** As people read it. */
  readonly shown: string
  /** `project.title`, or `the mapping` for a text of the person. */
  readonly from: string
}

/** Something that is wrong with one field. */
export type Trouble = Pick<Finding, 'severity' | 'id' | 'message' | 'fix'>

/** The word that the mapping has for a value; undefined when it translates nothing. */
export function translated(
  value: unknown,
  { translate }: MappedField,
): { readonly text: string } | { readonly wrong: string } | undefined {
  if (translate === undefined) return undefined
  const key = plainText(value)
  const text = Object.hasOwn(translate, key) ? translate[key] : undefined
  return text === undefined ? { wrong: `translate has no entry for '${key}'` } : { text }
}
