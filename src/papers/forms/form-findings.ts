import type { Finding } from '../../worksheet/index.js'
import { protectedFields, type FormField, type OpenForm } from './document/index.js'
import type { Fill } from './filling.js'
import type { FormMapping } from './mapping/index.js'

/** What is to be known of a form beside the fields that are filled. */
export function formFindings(form: OpenForm, mapping: FormMapping, fills: readonly Fill[]): Finding[] {
  const filled = new Set((mapping.fields ?? []).map(({ field }) => field))
  const byHand = new Set(mapping.by_hand)
  const mustStayEmpty = new Set(mapping.must_stay_empty)
  const kept = protectedFields(form.fields)
  const rest = form.fields.filter(({ name, kind }) => !filled.has(name) && kind !== 'push button')
  const open = rest.filter(({ name }) => !kept.has(name) && !mustStayEmpty.has(name))
  return [
    ...otherForm(form, mapping, open),
    ...form.fields.filter(({ name, value }) => mustStayEmpty.has(name) && value.length > 0).map(notEmpty),
    ...requiredBlank(
      form.fields.filter(({ name }) => !kept.has(name) && !mustStayEmpty.has(name) && !byHand.has(name)),
      mapping,
      fills,
    ),
    ...leftByHand(form.fields.filter(({ name }) => byHand.has(name))),
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

/** Required fields that nothing stands in; what could not be written into a field is a finding already. */
function requiredBlank(fields: readonly FormField[], mapping: FormMapping, fills: readonly Fill[]): Finding[] {
  const entries = new Map((mapping.fields ?? []).map((entry) => [entry.field, entry]))
  const filled = new Map(fills.map((fill) => [fill.field, fill]))
  return fields.flatMap((field): Finding[] => {
    if (!field.required || field.readOnly || field.kind === 'push button') return []
    const entry = entries.get(field.name)
    const fill = filled.get(field)
    if (fill !== undefined) return hasContent(fill) ? [] : [requiredEmpty(field, true)]
    if (field.value.length > 0 || (entry !== undefined && entry.optional !== true)) return []
    return [requiredEmpty(field, entry !== undefined)]
  })
}

/** A box that stays off has been answered. */
function hasContent({ filling }: Fill): boolean {
  if (filling.kind === 'text') return filling.text.trim() !== ''
  return filling.kind === 'state' || filling.choices.length > 0
}

/** An office sends back what it requires and does not find. */
function requiredEmpty({ name }: FormField, isMapped: boolean): Finding {
  const why = isMapped ? 'its entry puts nothing into it' : 'the mapping has no entry for it'
  return {
    severity: 'error',
    id: 'form.required-empty',
    message: `'${name}' is required by the form, and ${why}`,
    where: '',
    fix: 'Add an entry or mend it, or name the field under by_hand when a person fills it in, under must_stay_empty when the office does',
  }
}

function leftByHand(fields: readonly FormField[]): Finding[] {
  if (fields.length === 0) return []
  const message = `left to be filled in by hand: ${listed(fields.map(({ name }) => name))}`
  return [{ severity: 'note', id: 'form.left-by-hand', message, where: '' }]
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
