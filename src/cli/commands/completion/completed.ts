/** An option as completion needs it. */
export interface CompletedOption {
  /** `-o`, `--out` */
  readonly names: readonly string[]
  readonly says: string
  /** What follows it: nothing, a path, free text, what the program offers when it is asked, or one of a list. */
  readonly value: 'none' | 'file' | 'text' | 'asked' | readonly string[]
}

/** A subcommand as completion needs it. */
export interface CompletedSubcommand {
  readonly name: string
  readonly says: string
  readonly options: readonly CompletedOption[]
  /** What its arguments are: paths, what the program offers when it is asked, one of a list, or words that nobody can guess. */
  readonly operands: 'file' | 'none' | 'asked' | readonly string[]
}

/** In single quotes for a shell of the Bourne family. */
export function quoted(text: string): string {
  return `'${text.replaceAll("'", String.raw`'\''`)}'`
}

export function lists(value: string | readonly string[]): value is readonly string[] {
  return typeof value !== 'string'
}
