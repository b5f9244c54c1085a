import type { Finding } from '../../worksheet/index.js'
import { protectedFields, type FormField, type OpenForm } from './document/index.js'
import type { FormMapping } from './mapping/index.js'

/** What is to be known of a form beside the fields that are filled. */
export function formFindings(form: OpenForm, mapping: FormMapping): Finding[] {
  const filled = new Set(mapping.fields.map(({ field }) => field))
  const mustStayEmpty = new Set(mapping.must_stay_empty)
  const kept = protectedFields(form.fields)
  const rest = form.fields.filter(({ name, kind }) => !filled.has(name) && kind !== 'push button')
  const open = rest.filter(({ name }) => !kept.has(name) && !mustStayEmpty.has(name))
  return [
    ...otherForm(form, mapping, open),
    ...form.fields.filter(({ name, value }) => mustStayEmpty.has(name) && value.length > 0).map(notEmpty),
    ...open.filter(({ required, readOnly, value }) => required && !readOnly && value.length === 0).map(requiredEmpty),
    ...open.filter(({ calculated }) => calculated).map(notCalculated),
    ...leftToSign(form.fields.filter(({ name }) => kept.has(name))),
  ]
}

/** A form that is another than the one the mapping was written for may have other fields under the same names. */
function otherForm(form: OpenForm, mapping: FormMapping, open: readonly FormField[]): Finding[] {
  const written = mapping.form_sha256
  if (written === undefined || written === form.sha256) return []
  const names = open.map(({ name }) => name)
  const more = names.length === 0 ? '' : `; fields without an entry: ${listed(names)}`
  return [
    {
      severity: 'warning',
      id: 'form.other-form',
      message: `the form is not the one that the mapping was written for (SHA-256 ${form.sha256})${more}`,
      where: '',
      fix: 'Compare the fields with --list and look at the filled form, then put the new SHA-256 into the mapping',
    },
  ]
}

function notEmpty({ name, value }: FormField): Finding {
  const message = `'${name}' must stay empty, and the form has '${value.join(', ')}' in it`
  return { severity: 'error', id: 'form.not-empty', message, where: '', fix: 'Take an empty copy of the form' }
}

function requiredEmpty({ name }: FormField): Finding {
  const message = `'${name}' is required by the form, and the mapping has no entry for it`
  const fix = 'Add an entry, or fill it by hand'
  return { severity: 'warning', id: 'form.required-empty', message, where: '', fix }
}

function notCalculated({ name }: FormField): Finding {
  return {
    severity: 'warning',
    id: 'form.calculated',
    message: `'${name}' is worked out by a script of the form, which does not run here`,
    where: '',
    fix: 'Add an entry with the value, or open the filled form in a viewer that runs it',
  }
}

function leftToSign(fields: readonly FormField[]): Finding[] {
  if (fields.length === 0) return []
  const message = `left to the person who signs: ${listed(fields.map(({ name }) => name))}`
  return [{ severity: 'note', id: 'form.left-to-sign', message, where: '' }]
}

function listed(names: readonly string[]): string {
  return names.length <= 20 ? names.join(', ') : `${names.slice(0, 20).join(', ')}, ... (${names.length} in all)`
}
