import { realpathSync } from 'node:fs'
import { isAbsolute, relative, resolve, sep } from 'node:path'
import type { PDFDocument } from '@cantoo/pdf-lib'
import { LARGEST_DOCUMENT_BYTES } from '../../project/index.js'
import { FileError, UsageError } from '../errors.js'
import { readNamedBytes } from '../named-file.js'
import { errnoWords } from './errno.js'

/** A PDF of the person that was read and can be copied. */
export interface ReadDocument {
  readonly path: string
  readonly pages: number
  readonly pdf: PDFDocument
}

/**
 * Reads the specification sheets of a project.
 *
 * @param paths As written in the project, relative to its folder.
 * @throws FileError naming the file that is missing, no PDF, locked or broken.
 * @throws UsageError when one lies outside the project's folder and that is not allowed.
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
  const { PDFDocument } = await import('@cantoo/pdf-lib')
  const pdf = await PDFDocument.load(bytes, {
    updateMetadata: false,
    throwOnInvalidObject: true,
    ignoreEncryption: true,
  }).catch((error: unknown) => {
    throw new FileError(`document '${path}' is broken and cannot be copied; print it to a new PDF and use that`, {
      cause: error,
    })
  })
  if (pdf.isEncrypted) {
    throw new FileError(`document '${path}' is locked with a password; save a copy without one and use that`)
  }
  const pages = countPages(pdf)
  if (pages === 0 || !endsAsPdf(bytes)) {
    throw new FileError(`document '${path}' is cut off or has no pages; fetch it again`)
  }
  return { path, pages, pdf }
}

function readBytes(folder: string, path: string, allowOutside: boolean): Uint8Array {
  try {
    const real = realpathSync(resolve(folder, path))
    const way = relative(realpathSync(folder), real)
    if (!allowOutside && (way === '..' || way.startsWith(`..${sep}`) || isAbsolute(way))) {
      throw new UsageError(
        `document '${path}' lies outside the project's folder; copy it there, or add --allow-outside`,
      )
    }
    return new Uint8Array(readNamedBytes(real, LARGEST_DOCUMENT_BYTES, `document '${path}'`))
  } catch (error) {
    const words = errnoWords(error)
    if (words === undefined) throw error
    throw new FileError(`cannot read document '${path}': ${words}`, { cause: error })
  }
}

/** The mark of a PDF stands within the first 1024 bytes; that of its end within the last 1024. */
function startsAsPdf(bytes: Uint8Array): boolean {
  return Buffer.from(bytes.subarray(0, 1024)).includes('%PDF-')
}

function endsAsPdf(bytes: Uint8Array): boolean {
  return Buffer.from(bytes.subarray(-1024)).includes('%%EOF')
}

function countPages(pdf: PDFDocument): number {
  try {
    return pdf.getPageCount()
  } catch {
    return 0
  }
}
