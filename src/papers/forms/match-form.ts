import { didYouMean, type Complaint } from '../../project/index.js'
import { protectedFields, protectedText, type FormField, type OpenForm } from './document/index.js'
import { findState, statesText } from './field-state.js'
import type { FormMapping, MappedField } from './mapping/index.js'

type Key = keyof MappedField

/** What the form has against a mapping: names that it does not have, fields that are never filled, wrong kinds. */
export function matchForm(mapping: FormMapping, form: OpenForm): Complaint[] {
  const byName = new Map(form.fields.map((field) => [field.name, field]))
  const names = [...byName.keys()]
  const kept = protectedFields(form.fields)
  const changed = mapping.form_sha256 !== undefined && mapping.form_sha256 !== form.sha256
  const unknown = (name: string): string =>
    unknownName(name, names) + (changed ? '; the form has changed since the mapping was written (form_sha256)' : '')
  const complaints = (mapping.fields ?? []).flatMap((entry, index): Complaint[] => {
    const say = (key: Key, message: string): Complaint => ({ segments: ['fields', index, key], at: 'value', message })
    const field = byName.get(entry.field)
    if (field === undefined) return [say('field', unknown(entry.field))]
    const why = kept.get(field.name)
    if (why !== undefined) return [say('field', `'${field.name}' is never filled: ${why}; take it out of the mapping`)]
    return kindTroubles(entry, field).map(([key, message]) => say(key, message))
  })
  for (const list of ['must_stay_empty', 'by_hand'] as const) {
    for (const [index, name] of (mapping[list] ?? []).entries()) {
      if (!byName.has(name)) complaints.push({ segments: [list, index], at: 'value', message: unknown(name) })
    }
  }
  return complaints
}

function unknownName(name: string, names: readonly string[]): string {
  const below = names.filter((one) => one.startsWith(`${name}.`))
  if (below.length > 0) return `'${name}' is a group of fields; name one of them: ${below.slice(0, 8).join(', ')}`
  const near = didYouMean(name, names)
  return `the form has no field '${name}'${near === '' ? "; 'gablewatt fill-form --list' prints its fields" : near}`
}

/** What does not fit the kind of a field, each with the key that is to blame. */
function kindTroubles(entry: MappedField, field: FormField): [Key, string][] {
  const { kind, name } = field
  if (kind === 'push button') return [['field', `'${name}' is a push button, which holds no value`]]
  if (kind === 'signature' || kind === 'of no known type') return [['field', `'${name}' is ${kind}; it is not filled`]]
  if (field.readOnly) return [['field', `'${name}' is read-only in this form; take it out of the mapping`]]
  if (field.password) return [['field', `'${name}' is a password, which is kept in no file`]]
  if (field.fileSelect) return [['field', `'${name}' names a file to send along, which a filled form cannot do`]]
  return kind === 'check box' || kind === 'radio' ? buttonTroubles(entry, field) : textTroubles(entry, field)
}

function buttonTroubles(entry: MappedField, field: FormField): [Key, string][] {
  const { kind, name, states } = field
  const troubles: [Key, string][] = []
  const known = statesText(field)
  if (states.length === 0) return [['field', `'${name}' has no look for being on, so that it cannot be ticked`]]
  if (entry.text !== undefined) troubles.push(['text', `'${name}' is a ${kind}; state on with one of: ${known}`])
  if (entry.size_pt !== undefined) troubles.push(['size_pt', `'${name}' is a ${kind}, which has no letters`])
  if (kind === 'radio' && entry.equals !== undefined) {
    troubles.push(['equals', `'${name}' is a group of radio buttons; state translate with one of: ${known}`])
  }
  if (kind === 'radio' && entry.on !== undefined && entry.from !== undefined) {
    troubles.push(['on', `'${name}' takes its state from the value; state on without from, or leave it out`])
  }
  if (entry.on !== undefined) {
    const state = findState(field, entry.on)
    if (state === undefined) {
      const near = didYouMean(
        entry.on,
        states.flatMap((one) => [one.name, one.text ?? one.name]),
      )
      troubles.push(['on', `'${name}' has no state '${entry.on}'; its states: ${known}${near}`])
    } else {
      const why = protectedText(`${state.name} ${state.text ?? ''}`, true)
      if (why !== undefined) troubles.push(['on', `this state of '${name}' is never set: ${why}`])
    }
  } else if (kind === 'check box' && states.length > 1 && entry.from !== undefined && entry.translate === undefined) {
    troubles.push(['from', `'${name}' has several states (${known}); state on with the one for true, or translate`])
  }
  return troubles
}

function textTroubles(entry: MappedField, field: FormField): [Key, string][] {
  const { kind, name } = field
  const troubles: [Key, string][] = []
  if (entry.on !== undefined) troubles.push(['on', `'${name}' is a ${kind}, which has no states; state from or text`])
  if (entry.equals !== undefined) troubles.push(['equals', `'${name}' is a ${kind}; equals is for check boxes`])
  if (Array.isArray(entry.text) && !field.multiSelect) {
    troubles.push(['text', `'${name}' takes one value; found a list of ${entry.text.length}`])
  }
  return troubles
}
