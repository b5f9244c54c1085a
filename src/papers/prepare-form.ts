import type { House, HouseInput } from '../house/index.js'
import { sortFindings, type Finding } from '../worksheet/index.js'
import type { FilledForm, ListedField, OpenForm } from './forms/index.js'

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

/** A form before it is written. */
export interface PreparedForm {
  /** SHA-256 of the form, hexadecimal. */
  readonly sha256: string
  readonly fields: readonly FilledField[]
  /** A form with an error among them must not be used. */
  readonly findings: readonly Finding[]
  /** What of the form is left out. */
  readonly notes: readonly string[]
  /**
   * The filled form as a PDF; the same form with the same values gives the same bytes.
   *
   * @param flat Whether the fields become part of the pages and can no longer be filled.
   */
  readonly draw: (flat: boolean) => Promise<{ readonly pdf: Uint8Array; readonly notes: readonly string[] }>
}

/**
 * Reads the fields of a form.
 *
 * @param flatToo Whether pages without fields are taken, for a mapping with places.
 * @throws FileError with the reason when the form cannot be filled: no PDF, broken, locked, certified, signed, XFA alone.
 */
export async function listFormFields(file: FormFile, flatToo = false): Promise<ListedForm> {
  const { listFields, openForm, starterMapping } = await import('./forms/index.js')
  const form = await openForm(file.path, file.bytes, flatToo)
  return {
    sha256: form.sha256,
    pages: form.pages,
    fields: listFields(form),
    notes: form.notes,
    starter: starterMapping(form),
  }
}

/**
 * Fills a form from a project and its stages. Signatures, their dates and declarations are never filled.
 *
 * @param house The stages of the project, of `runHouse`; only those run that the mapping asks for. Values that
 *   are made up and stand behind a field are told.
 * @throws ProjectError for a bad mapping, FileError for a form that cannot be filled.
 */
export async function prepareForm(
  input: Pick<HouseInput, 'project' | 'madeUp'>,
  house: House,
  file: FormFile,
  mappingFile: MappingFile,
): Promise<PreparedForm> {
  const [{ fillForm, makeSources, openForm, readMapping }, { formMadeUp }] = await Promise.all([
    import('./forms/index.js'),
    import('./form-made-up.js'),
  ])
  const mapping = readMapping(mappingFile.path, mappingFile.text)
  const form = await openForm(file.path, file.bytes, mapping.data.place !== undefined)
  const filled = await fillForm(form, mapping, makeSources(input.project, house))
  return {
    sha256: form.sha256,
    fields: filled.fills.map(filledField),
    findings: sortFindings([
      ...filled.findings,
      ...formMadeUp(
        input,
        filled.fills.map(({ from }) => from),
      ),
    ]),
    notes: form.notes,
    draw: async (flat) => {
      const isPlaced = filled.fills.some(({ place }) => place !== undefined)
      return {
        pdf: await filled.save(flat),
        notes: [...(flat ? flatNotes(form) : []), ...(form.tagged && (flat || isPlaced) ? [NOT_TAGGED] : [])],
      }
    },
  }
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
