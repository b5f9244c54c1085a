import {
  chmodSync,
  closeSync,
  fsyncSync,
  linkSync,
  openSync,
  realpathSync,
  renameSync,
  statSync,
  unlinkSync,
  writeSync,
  type Stats,
} from 'node:fs'
import { dirname, join } from 'node:path'
import { errnoWords } from '../report/index.js'
import { FileError } from './file-error.js'
import { removeLeftOvers, removeQuietly, temporaryOf } from './left-over.js'
import { syncFile } from './sync-file.js'

/**
 * Looks before a long calculation whether `path` may be written: it is new, or `force` is set, or it is a device.
 *
 * @throws FileError when it exists already, is a folder, or its folder does not exist.
 */
export function checkTarget(path: string, force: boolean): void {
  attempt(path, () => {
    const stats = statOf(path)
    if (stats?.isDirectory() === true) throw new FileError(`cannot write ${path}: it is a folder, not a file`)
    if (stats?.isFile() === true && !force) throw exists(path)
    if (stats === undefined) statSync(join(dirname(path), '.'))
  })
}

/**
 * Writes a file whole or not at all: into a new file in the same folder, synced, then given its name in one move.
 * Synchronous on purpose: no other code of ours runs between the steps. A device or pipe is written straight.
 *
 * @throws FileError when it exists and `force` is not set, or with the system's reason in plain words.
 */
export function writeWhole(path: string, content: string | Uint8Array, force: boolean): void {
  checkTarget(path, force)
  attempt(path, () => {
    const existing = statOf(path)
    if (existing !== undefined && !existing.isFile()) {
      writeInto(path, content, 'w')
      return
    }
    // A link keeps pointing at the file that is replaced behind it.
    const target = existing === undefined ? path : realpathSync(path)
    const temporary = temporaryOf(target)
    removeLeftOvers(target)
    try {
      writeInto(temporary, content, 'wx')
      if (existing !== undefined) chmodSync(temporary, existing.mode & 0o7777)
      if (force) renameSync(temporary, target)
      else moveToNewName(temporary, target)
    } catch (error) {
      removeQuietly(temporary)
      throw error
    }
    syncFolder(dirname(target))
  })
}

function exists(path: string): FileError {
  return new FileError(`cannot write ${path}: the file exists already (EEXIST); add --force to replace it`)
}

function attempt(path: string, action: () => void): void {
  try {
    action()
  } catch (error) {
    const words = errnoWords(error)
    if (words === undefined) throw error
    throw new FileError(`cannot write ${path}: ${words}`, { cause: error })
  }
}

function statOf(path: string): Stats | undefined {
  return statSync(path, { throwIfNoEntry: false })
}

function writeInto(path: string, content: string | Uint8Array, flag: 'w' | 'wx'): void {
  const bytes = typeof content === 'string' ? Buffer.from(content) : content
  const file = openSync(path, flag)
  try {
    for (let written = 0; written < bytes.length;) written += writeSync(file, bytes, written)
    if (flag === 'wx') syncFile(file)
  } finally {
    closeSync(file)
  }
}

/** Unlike a rename, a link fails when somebody took the name in the meantime. Some file systems know no links. */
function moveToNewName(temporary: string, target: string): void {
  try {
    linkSync(temporary, target)
    unlinkSync(temporary)
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') throw exists(target)
    if (statOf(target) !== undefined) throw exists(target)
    renameSync(temporary, target)
  }
}

function syncFolder(folder: string): void {
  try {
    const handle = openSync(folder, 'r')
    try {
      fsyncSync(handle)
    } finally {
      closeSync(handle)
    }
  } catch {
    // Not every system can sync a folder; the file itself is safe.
  }
}
