import {
  closeSync,
  existsSync,
  fsyncSync,
  linkSync,
  openSync,
  readdirSync,
  realpathSync,
  renameSync,
  statSync,
  unlinkSync,
  writeSync,
} from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { errnoWords } from '../report/index.js'
import { FileError } from './file-error.js'
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
  const start = `.${basename(target).slice(0, 100)}.`
  const temporary = join(dirname(target), `${start}${process.pid}.tmp`)
  attempt(() => removeLeftOver(dirname(target), start))
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
        fsyncSync(file)
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

/** Removes what a run that was killed left of the same file. */
function removeLeftOver(folder: string, start: string): void {
  for (const name of readdirSync(folder === '' ? '.' : folder)) {
    const pid = name.startsWith(start) ? /^(\d+)\.tmp$/u.exec(name.slice(start.length))?.[1] : undefined
    if (pid !== undefined && !isAlive(Number(pid))) unlinkSync(join(folder, name))
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM'
  }
}

function writeWholeLine(file: number, line: string): void {
  const bytes = Buffer.from(line)
  for (let written = 0; written < bytes.length;) written += writeSync(file, bytes, written)
}
