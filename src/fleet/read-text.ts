import { closeSync, readSync } from 'node:fs'
import { LARGEST_TABLE_BYTES, openRegular } from '../project/index.js'
import { FleetError, fileTrouble } from './fleet-error.js'

/**
 * Text of a file in pieces, so that a long table is never in memory as a whole.
 *
 * @throws FleetError when it is no regular file, too large, cannot be read or is not UTF-8.
 */
export function* readText(path: string): Generator<string> {
  let file: number | undefined
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })
  const buffer = Buffer.alloc(65_536)
  try {
    file = openRegular(path, LARGEST_TABLE_BYTES)
    for (;;) {
      const length = readSync(file, buffer, 0, buffer.length, null)
      if (length === 0) break
      yield decode(decoder, buffer.subarray(0, length), path)
    }
    yield decode(decoder, undefined, path)
  } catch (error) {
    throw fileTrouble('read', path, error)
  } finally {
    if (file !== undefined) closeSync(file)
  }
}

function decode(decoder: InstanceType<typeof TextDecoder>, bytes: Uint8Array | undefined, path: string): string {
  try {
    return bytes === undefined ? decoder.decode() : decoder.decode(bytes, { stream: true })
  } catch (error) {
    throw new FleetError(`${path} is not UTF-8 text; save the table as CSV UTF-8`, 2, error)
  }
}
