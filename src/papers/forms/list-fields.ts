import { protectedFields, type FieldKind, type FormField, type OpenForm } from './document/index.js'

/** A field of a form as it is listed; keys as in JSON. */
export interface ListedField {
  readonly name: string
  readonly kind: FieldKind
  readonly required: boolean
  readonly read_only: boolean
  /** Characters. */
  readonly max_length: number | null
  /** More of its kind: several lines, cells, editable, several choices, worked out by a script. */
  readonly traits: readonly string[]
  /** States of a check box or of radio buttons, beside Off. */
  readonly states: readonly { readonly name: string; readonly text: string | null }[]
  readonly choices: readonly { readonly value: string; readonly text: string }[]
  /** Pages that it stands on, from 1. */
  readonly pages: readonly number[]
  readonly tooltip: string | null
  readonly value: readonly string[]
  /** Why it is never filled, null when it may be. */
  readonly never_filled: string | null
}

/** The fields of a form in the order of its tree. */
export function listFields(form: OpenForm): ListedField[] {
  const kept = protectedFields(form.fields)
  return form.fields.map((field) => ({
    name: field.name,
    kind: field.kind,
    required: field.required,
    read_only: field.readOnly,
    max_length: field.maxLength ?? null,
    traits: traitsOf(field),
    states: field.states.map(({ name, text }) => ({ name, text: text ?? null })),
    choices: field.choices.map(({ value, text }) => ({ value, text })),
    pages: [...new Set(field.widgets.flatMap(({ page }) => page ?? []))],
    tooltip: field.tooltip ?? null,
    value: field.password ? [] : field.value,
    never_filled: kept.get(field.name) ?? null,
  }))
}

function traitsOf(field: FormField): string[] {
  const traits: readonly (readonly [boolean, string])[] = [
    [field.multiline, 'several lines'],
    [field.comb, 'cells'],
    [field.password, 'password'],
    [field.fileSelect, 'names a file'],
    [field.editable, 'takes other text'],
    [field.multiSelect, 'several choices'],
    [field.calculated, 'worked out by a script'],
  ]
  return traits.flatMap(([has, text]) => (has ? [text] : []))
}
