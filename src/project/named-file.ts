import { FileError } from '../files/index.js'
import { decodeText, FileTrouble, readBytes } from './read-file.js'

/**
 * Bytes of a file that the command line or the project names.
 *
 * @param most Largest size, bytes.
 * @param name As messages call it; the path when missing.
 * @throws FileError when it is missing, not a regular file, not permitted or too large.
 */
export function readNamedBytes(path: string, most: number, name: string = path): Uint8Array {
  return toldBy(name, () => readBytes(path, most))
}

/**
 * Text of such a file.
 *
 * @param fallback Encoding to try when the bytes are not UTF-8.
 * @throws FileError as above, and with exit code 2 when it is no text.
 */
export function readNamedText(path: string, most: number, fallback?: 'latin1'): string {
  return toldBy(path, () => decodeText(readBytes(path, most), fallback))
}

/** Says whatever is wrong with a file with its name. */
function toldBy<Value>(name: string, read: () => Value): Value {
  try {
    return read()
  } catch (error) {
    if (!(error instanceof FileTrouble)) throw error
    const what = /^(?:is|holds) /u.test(error.message) ? `it ${error.message}` : error.message
    if (error.unreadable) throw new FileError(`cannot read ${name}: ${what}`, { cause: error })
    throw new FileError(`${name} ${error.message}`, { cause: error, exitCode: 2 })
  }
}
