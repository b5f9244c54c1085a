import { protectedText, type FieldState, type FormField } from './document/index.js'
import { findState, statesText } from './field-state.js'
import { translated, type Filling, type Trouble } from './filling.js'
import { kindOf, plainText, type MappedField } from './mapping/index.js'

/**
 * The state that a check box or a group of radio buttons is put to.
 *
 * @param value What the mapping takes it from; undefined when the mapping names the state itself.
 */
export function pickState(field: FormField, entry: MappedField, value: unknown): Filling | Trouble {
  if (entry.from === undefined) return allowed(field, findState(field, entry.on ?? ''))
  if (entry.equals !== undefined) return ticked(field, entry, value === entry.equals)
  const written = translated(value, entry)
  if (written !== undefined && 'wrong' in written) return wrong(field, entry, written.wrong)
  if (written === undefined && field.kind === 'check box') {
    if (typeof value === 'boolean') return ticked(field, entry, value)
    return wrong(field, entry, `it is ${kindOf(value)}, not true or false; state equals or translate`)
  }
  const name = written === undefined ? plainText(value) : written.text
  if (name === 'Off') return { kind: 'state', state: undefined }
  const state = findState(field, name)
  if (state === undefined) return wrong(field, entry, `it has no state '${name}'; its states: ${statesText(field)}`)
  return allowed(field, state)
}

function ticked(field: FormField, entry: MappedField, isOn: boolean): Filling | Trouble {
  if (!isOn) return { kind: 'state', state: undefined }
  return allowed(field, entry.on === undefined ? field.states[0] : findState(field, entry.on))
}

function allowed(field: FormField, state: FieldState | undefined): Filling | Trouble {
  const why = state === undefined ? undefined : protectedText(`${state.name} ${state.text ?? ''}`, true)
  if (why === undefined) return { kind: 'state', state }
  const message = `'${field.name}' is not put to '${state?.text ?? state?.name ?? ''}': ${why}`
  return { severity: 'error', id: 'form.left-to-person', message, fix: 'Leave it to the person who signs' }
}

function wrong(field: FormField, entry: MappedField, why: string): Trouble {
  const message = `'${field.name}' cannot take the value of ${entry.from ?? ''}: ${why}`
  return { severity: 'error', id: 'form.wrong-kind', message, fix: 'Mend equals or translate, or take another value' }
}
