import { realpathSync } from 'node:fs'
import { isAbsolute, relative, resolve, sep } from 'node:path'
import { FileError } from '../files/index.js'
import { LARGEST_DOCUMENT_BYTES, readNamedBytes, TooLarge } from '../project/index.js'
import { IN_THIS_THREAD, type ForeignRunner } from '../project/foreign/index.js'
import { errnoWords } from '../report/index.js'
import { PRINT_AGAIN, PRINT_SMALLER, type DocumentBytes, type DocumentFacts } from './document-shapes.js'
import { readDocumentTask } from './document-tasks.js'

/** A PDF of the person whose pages can be drawn, with what of it the packet does not show, for the person. */
export type ReadDocument = DocumentBytes & DocumentFacts

/**
 * Reads the specification sheets of a project.
 *
 * @param paths As written in the project, relative to its folder.
 * @param runner Where the documents are opened.
 * @throws FileError naming the file that is missing, no PDF, locked or broken; with exit code 2 when it lies outside
 *   the project's folder and that is not allowed, or when it takes more than a file of its size may.
 */
export async function readDocuments(
  folder: string,
  paths: readonly string[],
  allowOutside: boolean,
  runner: ForeignRunner = IN_THIS_THREAD,
): Promise<ReadDocument[]> {
  const read: ReadDocument[] = []
  for (const path of paths) {
    const bytes = readBytes(folder, path, allowOutside)
    const subject = { what: `document '${path}'`, bytes: bytes.length, fix: PRINT_AGAIN }
    read.push({ path, bytes, ...(await runner.run(readDocumentTask, { path, bytes }, subject)) })
  }
  return read
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
    if (error instanceof FileError && error.cause instanceof TooLarge)
      throw new FileError(`${error.message}; ${PRINT_SMALLER}`, { cause: error.cause })
    const words = errnoWords(error)
    if (words === undefined) throw error
    throw new FileError(`cannot read document '${path}': ${words}`, { cause: error })
  }
}
