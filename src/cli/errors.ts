/** The command line asks for something that cannot be. Exit code 2. */
export class UsageError extends Error {
  override readonly name = 'UsageError'
  readonly more: readonly string[]

  /** @param more Further things that are wrong at the same time. */
  constructor(message: string, more: readonly string[] = []) {
    super(message)
    this.more = more
  }
}

/** The design fails checks, so that what was asked for is not made. Exit code 1. */
export class DesignError extends Error {
  override readonly name = 'DesignError'
}
