import { PDFDict, PDFName, type PDFDocument } from '@cantoo/pdf-lib'
import { FileError } from '../../../files/index.js'
import {
  endsAsPdf,
  loadPdf,
  readPages,
  startsAsPdf,
  UnpacksTooFar,
  withUnpackBudget,
} from '../../../packet/pages/index.js'
import { sha256Of } from '../../../seal/index.js'
import { dictOf, valueOf } from './pdf-object.js'
import type { FormField } from './form-field.js'
import { readFields } from './read-fields.js'

/** A fillable form that was read. */
export interface OpenForm {
  /** As the person named it. */
  readonly path: string
  /** SHA-256 of its bytes, hexadecimal. */
  readonly sha256: string
  readonly pdf: PDFDocument
  readonly acroForm: PDFDict
  readonly fields: readonly FormField[]
  readonly pages: number
  /** Whether it is tagged for screen readers. */
  readonly tagged: boolean
  /** What is left out of the filled form, for the person. */
  readonly notes: readonly string[]
}

/**
 * Reads a fillable form.
 *
 * @param flatToo Whether pages without fields are taken, to be written onto.
 * @throws FileError with the reason when it is no PDF, broken, locked, certified, signed, without fields, or of the kind
 *   that only its maker's program can show.
 */
export async function openForm(path: string, bytes: Uint8Array, flatToo = false): Promise<OpenForm> {
  const refuse = (why: string, cause?: unknown): FileError =>
    new FileError(`form '${path}' ${why}`, { exitCode: 2, cause })
  if (!startsAsPdf(bytes)) throw refuse('is not a PDF')
  try {
    const pdf = await withUnpackBudget(() => loadPdf(bytes))
    return readForm(path, bytes, pdf, flatToo, refuse)
  } catch (error) {
    if (error instanceof UnpacksTooFar) throw refuse(`was given up: ${error.message}; fetch it again`, error)
    if (error instanceof FileError) throw error
    throw refuse('is broken and cannot be read; fetch it again', error)
  }
}

function readForm(
  path: string,
  bytes: Uint8Array,
  pdf: PDFDocument,
  flatToo: boolean,
  refuse: (why: string, cause?: unknown) => FileError,
): OpenForm {
  if (pdf.isEncrypted) {
    throw refuse('is locked (encrypted), so that it must not be changed; ask its publisher for one without a lock')
  }
  if (!endsAsPdf(bytes)) throw refuse('is cut off; fetch it again')
  const { catalog } = pdf
  const notes: string[] = []
  const rights = dictOf(catalog, 'Perms')
  if (rights !== undefined && valueOf(rights, 'DocMDP') !== undefined) {
    throw refuse('is certified by its publisher, and filling it may break the certificate; ask for one without')
  }
  if (rights !== undefined) {
    catalog.delete(PDFName.of('Perms'))
    notes.push(`the usage rights of ${path} end with any change of it and are left out`)
  }
  const flat = `has no fields to fill: it is a flat page. Say in the mapping where each text stands: place, with page, x_in, y_in and width_in ('gablewatt fill-form --starter' begins such a mapping)`
  const stated = dictOf(catalog, 'AcroForm')
  if (stated === undefined && !flatToo) throw refuse(flat)
  const acroForm = stated ?? pdf.context.obj({})
  const pages = readPages(pdf, (page, why) =>
    refuse(`is broken${page === undefined ? '' : ` on page ${page}`} (${why}); fetch it again`),
  )
  const fields = readFields(pdf, acroForm)
  const hasXfa = valueOf(acroForm, 'XFA') !== undefined
  const needsRendering = valueOf(catalog, 'NeedsRendering')?.toString() === 'true'
  if (hasXfa && (fields.length === 0 || needsRendering)) {
    throw refuse('is an XFA form, which only the program of its maker can show; ask for a plain PDF form (AcroForm)')
  }
  if (fields.length === 0 && !flatToo) throw refuse(flat)
  if (isSigned(fields)) throw refuse('is signed already, and a change would break the signature; fill an unsigned one')
  if (hasXfa) {
    acroForm.delete(PDFName.of('XFA'))
    notes.push(`the XFA part of ${path} is left out; its plain fields are filled`)
  }
  const sha256 = sha256Of(bytes)
  const tagged = valueOf(dictOf(catalog, 'MarkInfo') ?? catalog, 'Marked')?.toString() === 'true'
  return { path, sha256, tagged, pdf, acroForm, fields, pages: pages.length, notes }
}

function isSigned(fields: readonly FormField[]): boolean {
  return fields.some(
    ({ kind, dicts }) => kind === 'signature' && dicts.some((dict) => valueOf(dict, 'V') instanceof PDFDict),
  )
}
