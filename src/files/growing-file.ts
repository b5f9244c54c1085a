import {
  closeSync,
  existsSync,
  linkSync,
  openSync,
  realpathSync,
  renameSync,
  statSync,
  unlinkSync,
  writeSync,
} from 'node:fs'
import { errnoWords } from '../report/index.js'
import { FileError } from './file-error.js'
import { removeLeftOvers, temporaryOf } from './left-over.js'
import { syncFile } from './sync-file.js'
import { checkTarget } from './write-file.js'

/** Where lines go as they come, such as a file that gets its name when the last line is in it. */
export interface LineTarget {
  readonly write: (line: string) => void
  readonly finish: () => void
  readonly abandon: () => void
}

/**
 * A file that is there whole or not at all, written line by line so that it may be larger than the memory.
 *
 * @throws FileError when it exists and `force` is not set, or with the system's reason.
 */
export function growingFile(path: string, force: boolean): LineTarget {
  checkTarget(path, force)
  const attempt = <Value>(action: () => Value): Value => {
    try {
      return action()
    } catch (error) {
      throw new FileError(`cannot write ${path}: ${errnoWords(error) ?? String(error)}`, { cause: error })
    }
  }
  const existing = statSync(path, { throwIfNoEntry: false })
  if (existing !== undefined && !existing.isFile())
    return device(
      attempt(() => openSync(path, 'w')),
      attempt,
    )
  // A link keeps pointing at the file that is replaced behind it.
  const target = existing === undefined ? path : realpathSync(path)
  const temporary = temporaryOf(target)
  attempt(() => removeLeftOvers(target))
  const file = attempt(() => openSync(temporary, 'w'))
  const abandon = (): void => {
    try {
      closeSync(file)
      unlinkSync(temporary)
    } catch {
      // It has its name already.
    }
  }
  return {
    write: (line) => attempt(() => writeWholeLine(file, line)),
    finish: () => {
      attempt(() => {
        syncFile(file)
        if (force) renameSync(temporary, target)
        else takeName(temporary, target)
      })
      abandon()
    },
    abandon,
  }
}

/** A device or a pipe cannot be replaced, so that it is written straight. */
function device(file: number, attempt: <Value>(action: () => Value) => Value): LineTarget {
  const close = (): void => closeSync(file)
  return { write: (line) => attempt(() => writeWholeLine(file, line)), finish: close, abandon: close }
}

/** Unlike a rename, a link fails when somebody took the name in the meantime. Some file systems know no links. */
function takeName(temporary: string, path: string): void {
  try {
    linkSync(temporary, path)
  } catch (error) {
    if ((error instanceof Error && 'code' in error && error.code === 'EEXIST') || existsSync(path)) throw error
    renameSync(temporary, path)
  }
}

function writeWholeLine(file: number, line: string): void {
  const bytes = Buffer.from(line)
  for (let written = 0; written < bytes.length;) written += writeSync(file, bytes, written)
}
