import { FileTrouble } from '../project/index.js'
import { errnoWords } from '../report/index.js'

/** The fleet as such cannot be run: its table, baseline or journal is not usable. */
export class FleetError extends Error {
  override readonly name = 'FleetError'
  /** 2: what was asked for cannot be; 3: a file cannot be read or written. */
  readonly exitCode: 2 | 3
  readonly more: readonly string[]

  /** @param more Further things that are wrong at the same time. */
  constructor(message: string, exitCode: 2 | 3, cause?: unknown, more: readonly string[] = []) {
    super(message, cause === undefined ? {} : { cause })
    this.exitCode = exitCode
    this.more = more
  }
}

/** Turns an error of the system into one that names the file; any other error stays what it is. */
export function fileTrouble(action: 'read' | 'write', path: string, error: unknown): unknown {
  if (error instanceof FileTrouble) {
    const what = /^(?:is|holds) /u.test(error.message) ? `it ${error.message}` : error.message
    return new FleetError(`cannot ${action} ${path}: ${what}`, error.unreadable ? 3 : 2, error)
  }
  const words = errnoWords(error)
  return words === undefined ? error : new FleetError(`cannot ${action} ${path}: ${words}`, 3, error)
}
