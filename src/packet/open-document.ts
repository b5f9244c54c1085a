import type { PDFDocument } from '@cantoo/pdf-lib'
import { FileError } from '../files/index.js'
import { PRINT_AGAIN } from './document-shapes.js'
import {
  annotationLook,
  hidesLayers,
  loadPdf,
  readPages,
  UnpacksTooFar,
  withUnpackBudget,
  type SourcePage,
} from './pages/index.js'
import { endsAsPdf, startsAsPdf } from './pdf-marks.js'

/** A PDF of the person whose pages can be drawn. */
export interface OpenDocument {
  readonly path: string
  readonly pdf: PDFDocument
  readonly sources: readonly SourcePage[]
}

/**
 * Opens a document of the person.
 *
 * @param path As messages call it.
 * @throws FileError when it is no PDF, locked, broken, or unpacks to more than a document may.
 */
export async function openDocument(path: string, bytes: Uint8Array): Promise<OpenDocument> {
  try {
    return await withUnpackBudget(() => open(path, bytes))
  } catch (error) {
    if (!(error instanceof UnpacksTooFar)) throw error
    const says = `document '${path}' was given up: ${error.message}; ${PRINT_AGAIN}`
    throw new FileError(says, { exitCode: 2, cause: error })
  }
}

async function open(path: string, bytes: Uint8Array): Promise<OpenDocument> {
  if (!startsAsPdf(bytes)) throw new FileError(`document '${path}' is not a PDF`)
  const pdf = await loadPdf(bytes).catch((error: unknown) => {
    throw brokenDocument(path, undefined, undefined, error)
  })
  if (pdf.isEncrypted) {
    throw new FileError(`document '${path}' is locked with a password; save a copy without one and use that`)
  }
  if (!endsAsPdf(bytes)) throw cutOff(path)
  const sources = readPages(pdf, (page, why) => brokenDocument(path, page, why))
  if (sources.length === 0) throw cutOff(path)
  return { path, pdf, sources }
}

/** What the packet does not show of a document, for the person. */
export function notShown({ path, pdf, sources }: OpenDocument): string[] {
  const notDrawn = sources
    .flatMap((source) => source.annotations)
    .filter((one) => annotationLook(one, pdf.context) === 'not drawn').length
  const notes: string[] = []
  const again = 'print it to a new PDF'
  if (notDrawn > 0) {
    notes.push(
      `document '${path}': the packet leaves out what has no drawn look of its own (notes, marks, fields: ${notDrawn}); ${again} to keep it`,
    )
  }
  if (hidesLayers(pdf)) notes.push(`document '${path}' hides layers that the packet shows; ${again} to leave them out`)
  return notes
}

/** A document, or a page of it, counted from 1, that cannot be drawn. */
export function brokenDocument(path: string, page: number | undefined, why?: string, cause?: unknown): FileError {
  const where = page === undefined ? '' : `, page ${page},`
  const reason = why === undefined ? '' : ` (${why})`
  return new FileError(`document '${path}'${where} is broken and cannot be copied${reason}; ${PRINT_AGAIN}`, { cause })
}

function cutOff(path: string): FileError {
  return new FileError(`document '${path}' is cut off or has no pages; fetch it again`)
}
