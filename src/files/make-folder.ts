import { mkdirSync } from 'node:fs'
import { errnoWords } from '../report/index.js'
import { FileError } from './file-error.js'

/**
 * Makes a folder, and those above it, where they are not there.
 *
 * @throws FileError with the system's reason.
 */
export function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true })
  } catch (error) {
    throw new FileError(`cannot make the folder ${folder}: ${errnoWords(error) ?? String(error)}`, { cause: error })
  }
}
