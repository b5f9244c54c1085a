import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { stringify } from 'yaml'
import { fillForm, openForm, readMapping, type FilledForm, type Sources } from '../../../src/papers/forms/index.js'
import { valueAt } from '../../../src/papers/forms/data/value-at.js'

/** Values by name, without a project. */
export function sourcesOf(data: unknown): Sources {
  return { read: (from) => Promise.resolve(valueAt(data, from)), failing: () => Promise.resolve(new Map()) }
}

/** Fills a form from a mapping that is written as data. */
export async function fill(
  bytes: Uint8Array,
  fields: readonly object[],
  { data = {}, ...more }: { readonly data?: unknown; readonly [key: string]: unknown } = {},
): Promise<FilledForm> {
  const given = fields.length === 0 ? {} : { fields }
  const mapping = readMapping('mapping.yaml', stringify({ format: 'gablewatt-form-mapping/1', ...more, ...given }))
  const form = await openForm('form.pdf', bytes, mapping.data.place !== undefined)
  return fillForm(form, mapping, sourcesOf(data))
}

/** Fills it and gives it back as bytes. */
export async function filledPdf(
  bytes: Uint8Array,
  fields: readonly object[],
  flat = false,
  data: unknown = {},
): Promise<Uint8Array> {
  return (await fill(bytes, fields, { data })).save(flat)
}

/** A widget as a viewer that shares nothing with the program reads it. */
export interface SeenWidget {
  readonly fieldName: string
  readonly fieldType: string
  readonly fieldValue: unknown
  readonly exportValue?: string
  readonly buttonValue?: string
  readonly textContent?: readonly string[]
}

/** The widgets of the first page as pdf.js reads them. */
export async function widgetsOf(pdf: Uint8Array): Promise<SeenWidget[]> {
  const document = await getDocument({ data: pdf.slice(), useSystemFonts: false, verbosity: 0 }).promise
  const page = await document.getPage(1)
  const found: unknown[] = await page.getAnnotations()
  return found as SeenWidget[]
}

/** Values by field name as pdf.js reads them. */
export async function valuesOf(pdf: Uint8Array): Promise<Record<string, unknown>> {
  return Object.fromEntries((await widgetsOf(pdf)).map(({ fieldName, fieldValue }) => [fieldName, fieldValue]))
}
