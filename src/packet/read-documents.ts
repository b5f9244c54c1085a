import { realpathSync } from 'node:fs'
import { isAbsolute, relative, resolve, sep } from 'node:path'
import type { PDFDocument } from '@cantoo/pdf-lib'
import { FileError } from '../files/index.js'
import { LARGEST_DOCUMENT_BYTES, readNamedBytes } from '../project/index.js'
import { errnoWords } from '../report/index.js'
import { endsAsPdf, startsAsPdf } from './pdf-marks.js'
import type { SourcePage } from './pages/index.js'

/** A PDF of the person that was read and whose pages can be drawn. */
export interface ReadDocument {
  readonly path: string
  /** Number of pages. */
  readonly pages: number
  readonly pdf: PDFDocument
  readonly sources: readonly SourcePage[]
  /** What the packet does not show of it, for the person. */
  readonly notes: readonly string[]
}

/** With the title that the project gives it. */
export type TitledDocument = ReadDocument & { readonly title?: string | undefined }

/**
 * Reads the specification sheets of a project.
 *
 * @param paths As written in the project, relative to its folder.
 * @throws FileError naming the file that is missing, no PDF, locked or broken; with exit code 2 when it lies outside
 *   the project's folder and that is not allowed.
 */
export async function readDocuments(
  folder: string,
  paths: readonly string[],
  allowOutside: boolean,
): Promise<ReadDocument[]> {
  const read: ReadDocument[] = []
  for (const path of paths) read.push(await readDocument(folder, path, allowOutside))
  return read
}

async function readDocument(folder: string, path: string, allowOutside: boolean): Promise<ReadDocument> {
  const bytes = readBytes(folder, path, allowOutside)
  if (!startsAsPdf(bytes)) throw new FileError(`document '${path}' is not a PDF`)
  const [{ PDFDocument }, { annotationLook, hidesLayers, readPages }] = await Promise.all([
    import('@cantoo/pdf-lib'),
    import('./pages/index.js'),
  ])
  const pdf = await PDFDocument.load(bytes, {
    updateMetadata: false,
    throwOnInvalidObject: true,
    ignoreEncryption: true,
  }).catch((error: unknown) => {
    throw brokenDocument(path, undefined, undefined, error)
  })
  if (pdf.isEncrypted) {
    throw new FileError(`document '${path}' is locked with a password; save a copy without one and use that`)
  }
  if (!endsAsPdf(bytes)) throw cutOff(path)
  const sources = readPages(pdf, (page, why) => brokenDocument(path, page, why))
  if (sources.length === 0) throw cutOff(path)
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
  return { path, pages: sources.length, pdf, sources, notes }
}

/** A document, or a page of it, counted from 1, that cannot be drawn. */
export function brokenDocument(path: string, page: number | undefined, why?: string, cause?: unknown): FileError {
  const where = page === undefined ? '' : `, page ${page},`
  const reason = why === undefined ? '' : ` (${why})`
  return new FileError(
    `document '${path}'${where} is broken and cannot be copied${reason}; print it to a new PDF and use that`,
    { cause },
  )
}

function cutOff(path: string): FileError {
  return new FileError(`document '${path}' is cut off or has no pages; fetch it again`)
}

function readBytes(folder: string, path: string, allowOutside: boolean): Uint8Array {
  try {
    const real = realpathSync(resolve(folder, path))
    const way = relative(realpathSync(folder), real)
    if (!allowOutside && (way === '..' || way.startsWith(`..${sep}`) || isAbsolute(way))) {
      const says = `document '${path}' lies outside the project's folder; copy it there, or add --allow-outside`
      throw new FileError(says, { exitCode: 2 })
    }
    return readNamedBytes(real, LARGEST_DOCUMENT_BYTES, `document '${path}'`)
  } catch (error) {
    const words = errnoWords(error)
    if (words === undefined) throw error
    throw new FileError(`cannot read document '${path}': ${words}`, { cause: error })
  }
}
