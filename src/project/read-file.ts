import { closeSync, constants, fstatSync, openSync, readSync } from 'node:fs'
import { lineAt } from '../values/index.js'

/**
 * The bound of a file of a stranger (`--untrusted`): a quarter of what is read otherwise.
 *
 * @param most Bound otherwise, bytes.
 */
export function budgetOf(most: number): number {
  return process.env['GABLEWATT_UNTRUSTED'] === '1' ? most / 4 : most
}

/** Why a file could not be taken; `unreadable` ones are not read at all (exit code 3), otherwise the content is wrong. */
export class FileTrouble extends Error {
  override readonly name = 'FileTrouble'
  readonly unreadable: boolean

  constructor(message: string, unreadable: boolean) {
    super(message)
    this.unreadable = unreadable
  }
}

/** It is larger than what is read. */
export class TooLarge extends FileTrouble {}

/**
 * Reads a regular file whole.
 *
 * @throws FileTrouble when it is missing, not a regular file, not permitted, or larger than `most` bytes.
 */
export function readBytes(path: string, most: number): Uint8Array {
  const descriptor = openRegular(path, most)
  try {
    return readToEnd(descriptor, most, fstatSync(descriptor).size)
  } catch (error) {
    throw error instanceof FileTrouble ? error : systemTrouble(error)
  } finally {
    closeSync(descriptor)
  }
}

/**
 * Opens a file for reading that has an end: not a pipe, a terminal or a device, which may give nothing or never stop.
 *
 * @returns Its descriptor, which the caller closes.
 * @throws FileTrouble when it is missing, not a regular file, not permitted, or larger than `most` bytes.
 */
export function openRegular(path: string, most: number): number {
  let descriptor: number | undefined
  try {
    // Without waiting for somebody to write into a pipe.
    descriptor = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0))
    const status = fstatSync(descriptor)
    if (status.isDirectory()) throw new FileTrouble('is a folder, not a file', true)
    if (!status.isFile()) {
      throw new FileTrouble("is not a regular file; to read from a pipe give '-' as the file name", true)
    }
    if (status.size > budgetOf(most)) throw tooLarge(status.size, budgetOf(most))
    return descriptor
  } catch (error) {
    if (descriptor !== undefined) closeSync(descriptor)
    throw error instanceof FileTrouble ? error : systemTrouble(error)
  }
}

/**
 * What a descriptor gives to its end.
 *
 * @param size As the system tells it, so that it is read into one place; some files have none and yet content.
 */
function readToEnd(descriptor: number, most: number, size = 0): Buffer {
  const chunks: Buffer[] = []
  let total = 0
  // One more, so that the end is seen without further room.
  for (let room = size + 1; ; room = 0) {
    const chunk = Buffer.allocUnsafeSlow(Math.max(room, 65_536))
    let filled = 0
    while (filled < chunk.length) {
      const length = readSome(descriptor, chunk.subarray(filled))
      if (length === 0) {
        const last = chunk.subarray(0, filled)
        return chunks.length === 0 ? last : Buffer.concat([...chunks, last])
      }
      filled += length
      total += length
      if (total > budgetOf(most)) throw tooLarge(total, budgetOf(most))
    }
    chunks.push(chunk)
  }
}

/**
 * Reads standard input to its end.
 *
 * @throws FileTrouble when it cannot be read or holds more than `most` bytes.
 */
export function readStandardInput(most: number): Uint8Array {
  let descriptor = 0
  try {
    // Opening it anew gives a blocking descriptor; where that is not possible the inherited one is used.
    descriptor = openStandardInput()
    return readToEnd(descriptor, most)
  } catch (error) {
    if (error instanceof FileTrouble) throw error
    throw systemTrouble(error)
  } finally {
    if (descriptor !== 0) closeSync(descriptor)
  }
}

/** A pipe on Windows tells its end by an error. */
function readSome(descriptor: number, chunk: Buffer): number {
  try {
    return readSync(descriptor, chunk)
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EOF') return 0
    throw error
  }
}

function openStandardInput(): number {
  try {
    return openSync('/dev/stdin', 'r')
  } catch {
    return 0
  }
}

/**
 * Turns bytes into text. A byte-order mark is dropped.
 *
 * @param fallback Encoding to try when the bytes are not UTF-8; weather files often carry Latin-1 place names.
 * @throws FileTrouble when the bytes are no text.
 */
export function decodeText(bytes: Uint8Array, fallback?: 'latin1'): string {
  let text: string
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    if (fallback === undefined) throw new FileTrouble(`is not UTF-8 text${badByte(bytes)}; save it as UTF-8`, false)
    text = new TextDecoder('windows-1252').decode(bytes)
  }
  if (text.includes('\0')) throw new FileTrouble('holds NUL characters; it is not a text file', false)
  return text
}

/** Names the line of the first byte that breaks UTF-8. */
function badByte(bytes: Uint8Array): string {
  const [first, second] = bytes
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) return ' (it looks like UTF-16)'
  const lenient = new TextDecoder('utf-8').decode(bytes)
  return ` (line ${lineAt(lenient, lenient.indexOf('\uFFFD'))})`
}

/** @param unreadable Whether it is a file; a text that was handed over is only of no use. */
export function tooLarge(size: number, most: number, unreadable = true): TooLarge {
  // Upwards, so that what is just too large does not stand there as large as what is read.
  return new TooLarge(
    `is ${megabytes(Math.ceil(size / 1e5) * 1e5)} large; at most ${megabytes(most)} is read`,
    unreadable,
  )
}

function megabytes(bytes: number): string {
  return `${(bytes / 1e6).toFixed(1)} MB`
}

const SYSTEM_MESSAGES: Readonly<Record<string, string>> = {
  ENOENT: 'no such file',
  ENOTDIR: 'no such file: a part of its path is not a folder',
  EACCES: 'no permission to read it',
  EPERM: 'no permission to read it',
  ERR_ACCESS_DENIED: 'lies outside the folder of the project, where --untrusted lets nothing be read',
  ELOOP: 'its symbolic links go round in a circle',
  ENAMETOOLONG: 'its name is too long',
  EAGAIN: 'standard input gave nothing',
}

function systemTrouble(error: unknown): FileTrouble {
  const code =
    error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : 'unknown error'
  return new FileTrouble(SYSTEM_MESSAGES[code] ?? `cannot be read (${code})`, true)
}
