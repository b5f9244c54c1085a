import type { ForeignTask } from '../project/foreign/index.js'
import type { Finding } from '../worksheet/index.js'
import type { FilledForm, OpenForm, Sources } from './forms/index.js'
import type { FilledField, FormFile, ListedForm, MappingFile } from './form-shapes.js'

/** Reads the fields of a form. */
export const listFormTask: ForeignTask<{ readonly file: FormFile; readonly flatToo: boolean }, ListedForm> = {
  name: 'list-form',
  work: async ({ file, flatToo }) => {
    const { listFields, openForm, starterMapping } = await import('./forms/index.js')
    const form = await openForm(file.path, file.bytes, flatToo)
    return {
      sha256: form.sha256,
      pages: form.pages,
      fields: listFields(form),
      notes: form.notes,
      starter: starterMapping(form),
    }
  },
}

/** What is needed to fill a form; values of the project are asked for by name. */
export interface FillInput {
  readonly file: FormFile
  readonly mapping: MappingFile
  /** Whether the filled form is wanted too, and whether its fields become part of the pages. */
  readonly save: 'no' | 'with fields' | 'flat'
}

/** A form that was filled, as plain data. */
export interface FillOutput {
  readonly sha256: string
  readonly fields: readonly FilledField[]
  readonly findings: readonly Finding[]
  readonly notes: readonly string[]
  /** The filled form, and what it loses; undefined unless it is wanted. */
  readonly saved: { readonly pdf: Uint8Array; readonly notes: readonly string[] } | undefined
}

/** The question for the stages that were asked for and fail; all others are names of values. */
export const FAILING = 'failing stages'

/** Fills a form. */
export const fillFormTask: ForeignTask<FillInput, FillOutput> = {
  name: 'fill-form',
  work: async ({ file, mapping: { path, text }, save }, ask) => {
    const { fillForm, openForm, readMapping } = await import('./forms/index.js')
    const mapping = readMapping(path, text)
    const form = await openForm(file.path, file.bytes, mapping.data.place !== undefined)
    const filled = await fillForm(form, mapping, {
      read: async (from) => (await ask(from)) as Awaited<ReturnType<Sources['read']>>,
      failing: async () => (await ask(FAILING)) as Awaited<ReturnType<Sources['failing']>>,
    })
    const fields = filled.fills.map(filledField)
    const facts = { sha256: form.sha256, fields, findings: filled.findings, notes: form.notes }
    if (save === 'no') return { ...facts, saved: undefined }
    const flat = save === 'flat'
    const isPlaced = filled.fills.some(({ place }) => place !== undefined)
    const pdf = await filled.save(flat)
    const notes = [...(flat ? flatNotes(form) : []), ...(form.tagged && (flat || isPlaced) ? [NOT_TAGGED] : [])]
    return { ...facts, saved: { pdf, notes } }
  },
}

function filledField({ field, shown, from }: FilledForm['fills'][number]): FilledField {
  const pages =
    field.placedOn === undefined ? [...new Set(field.widgets.flatMap(({ page }) => page ?? []))] : [field.placedOn]
  return { field: field.name, kind: field.kind, value: shown, from, pages }
}

const NOT_TAGGED =
  'the form is tagged for screen readers, and what was drawn into its pages is not tagged; read it aloud from the form with its fields'

/** What a form loses when its fields become part of the pages. */
function flatNotes({ fields }: OpenForm): string[] {
  const signatures = fields.filter(({ kind }) => kind === 'signature').map(({ name }) => name)
  const notes: string[] = []
  if (signatures.length > 0) {
    const names = signatures.join(', ')
    notes.push(`the flat form can be signed on paper only; without --flatten these stay to be signed: ${names}`)
  }
  return notes
}
