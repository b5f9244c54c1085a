/** A file cannot be read, written or used; the message says which and why in plain words. */
export class FileError extends Error {
  override readonly name = 'FileError'
  /** 3: it cannot be read or written; 2: it is not what was asked for. */
  readonly exitCode: 2 | 3

  constructor(message: string, { cause, exitCode = 3 }: { readonly cause?: unknown; readonly exitCode?: 2 | 3 } = {}) {
    super(message, cause === undefined ? {} : { cause })
    this.exitCode = exitCode
  }
}
