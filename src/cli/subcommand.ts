import type { Command } from 'commander'
import type { LoadedProject } from '../project/index.js'
import type { Result } from '../worksheet/index.js'
import type { ExitCode } from './exit-codes.js'
import type { Report } from '../report/index.js'

/** What the frame hands to a subcommand. */
export interface CommandContext {
  /** The positional arguments. */
  readonly args: readonly string[]
  /** `gablewatt 0.1.0` */
  readonly tool: string
  /**
   * The project of the first argument with `--set` applied, read once.
   *
   * @throws ProjectError, which the frame prints.
   */
  readonly project: () => Promise<LoadedProject>
  /** The same with its arrays as the person states them: nothing is counted that the program places. */
  readonly asStated?: () => Promise<LoadedProject>
  /**
   * The result of an earlier stage for this very project from `--use`, undefined when none of that stage was given.
   *
   * @throws UsageError when it is of another project, tool version or format.
   */
  readonly earlier: (stage: string) => Promise<Result<unknown> | undefined>
  /** Every subcommand of the program. */
  readonly subcommands: readonly SubcommandEntry[]
  /** Tells how far a long run is: on stderr, on a terminal only, never with --quiet. */
  readonly progress: (text: string) => void
}

export interface OutputFile {
  readonly path: string
  readonly content: string | Uint8Array
  /** Whether the file itself is what the subcommand changes, so that it is replaced without --force. */
  readonly inPlace?: boolean
}

/** A report, or a finished document such as a PDF or a YAML file; `files` are written beside either. */
export type CommandOutcome = {
  readonly files?: readonly OutputFile[]
  /** The exit code where it is not that of the findings, such as the worst of many houses. */
  readonly exit?: ExitCode
} & (
  | { readonly report: Report }
  | {
      readonly document: string | Uint8Array
      readonly next?: string
      readonly failed?: boolean
      /** Things to know that the document has no room for; told on stderr. */
      readonly notes?: readonly string[]
    }
)

/** An example for the help text; `line` is what stands after `gablewatt `. */
export interface Example {
  readonly line: string
  readonly does: string
}

/** What a file of commands/ exports. It and all that it imports is loaded only when its subcommand is asked for. */
export interface Subcommand {
  readonly examples: readonly [Example, Example, ...Example[]]
  /** Adds arguments and options; see options.ts for the shared ones. */
  readonly configure: (command: Command) => void
  readonly run: (context: CommandContext, options: never) => CommandOutcome | Promise<CommandOutcome>
}

/** A line of the table in subcommands.ts. */
export interface SubcommandEntry {
  readonly name: string
  readonly summary: string
  readonly load: () => Promise<Subcommand>
}
