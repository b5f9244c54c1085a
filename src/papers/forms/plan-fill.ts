import { cleanText } from '../../report/index.js'
import { shorten } from '../../project/index.js'
import type { Finding } from '../../worksheet/index.js'
import { splitSource, type Sources } from './data/index.js'
import type { FormField, OpenForm } from './document/index.js'
import { translated, type Fill, type Filling, type Trouble } from './filling.js'
import { placeField } from './placed/index.js'
import { formatValue, placeEntry, type FormMapping, type MappedField } from './mapping/index.js'
import { pickChoices } from './pick-choices.js'
import { pickState } from './pick-state.js'

/** What every mapped field and every place gets; what cannot be had or does not fit is a finding. */
export async function planFill(
  form: OpenForm,
  mapping: FormMapping,
  sources: Sources,
): Promise<{ readonly fills: readonly Fill[]; readonly findings: readonly Finding[] }> {
  const fills: Fill[] = []
  const findings: Finding[] = []
  const byName = new Map(form.fields.map((field) => [field.name, field]))
  const fields = (mapping.fields ?? []).map((entry) => ({ entry, field: byName.get(entry.field), place: undefined }))
  const places = (mapping.place ?? []).map((place) => ({ entry: placeEntry(place), field: placeField(place), place }))
  for (const { entry, field, place } of [...fields, ...places]) {
    if (field === undefined) throw new Error('the mapping was not matched with the form')
    const from = entry.from ?? 'the mapping'
    const found = await fillingOf(field, entry, sources)
    if ('id' in found) findings.push({ ...found, where: placeOf(entry.from) })
    else fills.push({ field, entry, place, from, filling: found, shown: shownOf(found) })
  }
  return { fills, findings }
}

async function fillingOf(field: FormField, entry: MappedField, sources: Sources): Promise<Filling | Trouble> {
  const isButton = field.kind === 'check box' || field.kind === 'radio'
  if (entry.from === undefined)
    return isButton ? pickState(field, entry, undefined) : textFilling(field, entry.text ?? '')
  const found = await sources.read(entry.from)
  if ('missing' in found) {
    const message = `'${field.name}' gets nothing from ${entry.from}: ${found.missing}`
    if (entry.optional === true) return { severity: 'note', id: 'form.left-empty', message }
    return {
      severity: 'error',
      id: 'form.no-value',
      message,
      fix: 'Mend the path or the project, or mark the field optional: true',
    }
  }
  if (isButton) return pickState(field, entry, found.value)
  const texts = writeValue(found.value, entry, field)
  return 'id' in texts ? texts : textFilling(field, texts.text)
}

/** A value in the words of the form; several for a list that takes several. */
function writeValue(
  value: unknown,
  entry: MappedField,
  field: FormField,
): { readonly text: string | readonly string[] } | Trouble {
  const path = splitSource(entry.from ?? '')[1]
  const texts: string[] = []
  for (const one of Array.isArray(value) ? (value as readonly unknown[]) : [value]) {
    const written = translated(one, entry) ?? formatValue(one, entry.format, path)
    if ('wrong' in written) {
      const message = `'${field.name}' cannot take the value of ${entry.from ?? ''}: ${written.wrong}`
      return {
        severity: 'error',
        id: 'form.wrong-kind',
        message,
        fix: 'Take the path of another value, or mend format or translate',
      }
    }
    texts.push(written.text)
  }
  return { text: field.multiSelect ? texts : texts.join(', ') }
}

function textFilling(field: FormField, text: string | readonly string[]): Filling | Trouble {
  const texts = (typeof text === 'string' ? [text] : text).map(cleaned)
  if (field.kind !== 'text') return pickChoices(field, texts)
  const joined = texts.join(', ')
  const whole = field.multiline ? joined : joined.replaceAll('\n', ' ')
  const length = Array.from(whole).length
  if (field.maxLength !== undefined && length > field.maxLength) {
    const message = `'${field.name}' takes ${field.maxLength} characters, and '${shorten(whole)}' has ${length}`
    return { severity: 'error', id: 'form.too-long', message, fix: 'State a shorter text' }
  }
  return { kind: 'text', text: whole }
}

/** One kind of line end, accents joined with their letters, no signs that steer a printer, no hyphens that only say where to break. */
function cleaned(text: string): string {
  return cleanText(text.normalize('NFC'))
    .replaceAll('\u00AD', '')
    .trimEnd()
    .replaceAll(/[^\S\n]/gu, ' ')
}

function shownOf(filling: Filling): string {
  if (filling.kind === 'text') return filling.text
  if (filling.kind === 'choices') return filling.choices.map(({ text }) => text).join(', ')
  return filling.state === undefined ? 'off' : `on: ${filling.state.text ?? filling.state.name}`
}

/** Path of project.yaml that a value comes from. */
function placeOf(from: string | undefined): string {
  return from?.startsWith('project.') === true ? from.slice('project.'.length) : ''
}
