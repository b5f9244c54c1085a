/** What the shell learns. 130 (interrupted) is the shell's own number for a program that Ctrl-C ended. */
export const EXIT = {
  done: 0,
  /** Done, but the design fails a check. */
  checkFailed: 1,
  /** Wrong usage, or a project that cannot be worked with. */
  usage: 2,
  /** A file cannot be read or written. */
  file: 3,
  /** A defect of ours. */
  defect: 70,
} as const

export type ExitCode = (typeof EXIT)[keyof typeof EXIT]
