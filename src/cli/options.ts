import { InvalidArgumentError, Option, type Command } from 'commander'

/** `project.yaml` with `--set` and `--allow-outside`. */
export interface ProjectOptions {
  readonly set: readonly string[]
  readonly allowOutside?: boolean
}

export interface FileOptions {
  readonly out?: string
  readonly force?: boolean
}

export interface ReportOptions extends FileOptions {
  readonly json?: boolean
  readonly csv?: boolean
  readonly markdown?: boolean
  readonly showWork?: boolean
}

export interface EarlierOptions {
  readonly use: readonly string[]
  readonly useAnyway?: boolean
}

/** The options that every subcommand has; they stand on the program itself. */
export interface CommonOptions {
  readonly color: boolean
  readonly quiet?: boolean
}

const collect = (value: string, before: readonly string[]): string[] => [...before, value]

/** For a subcommand that works on a project file. */
export function takesProject(command: Command): Command {
  return readsProject(command.argument('<project.yaml>', 'the project file, or - for stdin'))
}

/** The options of a project file, for a subcommand that can do without one. */
export function readsProject(command: Command): Command {
  return command
    .option(
      '--set <path=value>',
      'change one value for this run, e.g. roof_planes.south.azimuth_deg=195 (repeatable)',
      collect,
      [],
    )
    .option('--allow-outside', 'let the project name files outside its own folder')
}

/** For a subcommand that can write its document to a file. */
export function writesFile(command: Command): Command {
  return command
    .option('-o, --out <file>', 'write to a file instead of stdout (- for stdout)')
    .option('--force', 'replace the file if it exists')
}

/** For a subcommand that hands back a report. */
export function writesReport(command: Command): Command {
  return writesFile(
    command
      .addOption(
        new Option('--json', 'print the whole result with its proof as JSON').conflicts([
          'csv',
          'markdown',
          'showWork',
        ]),
      )
      .addOption(new Option('--csv', 'print the main table as CSV').conflicts(['json', 'markdown', 'showWork']))
      .addOption(new Option('--markdown', 'print as Markdown').conflicts(['json', 'csv']))
      .option('--show-work', 'print every formula with its numbers and source (JSON always holds them)'),
  )
}

/** For a subcommand that can start from earlier results. */
export function usesEarlier(command: Command): Command {
  return command
    .option('--use <result.json>', 'take an earlier result instead of computing it again (repeatable)', collect, [])
    .option(
      '--use-anyway',
      'take a result of another build of the program, with a warning that stays in what comes of it',
    )
}

/**
 * A parser for an option's number.
 *
 * @param range Inclusive bounds, in the option's unit; `whole` for counts.
 */
export function numberIn(range: { min: number; max: number; whole?: boolean }): (text: string) => number {
  return (text) => {
    const value = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/u.test(text.trim()) ? Number(text) : Number.NaN
    if (!(value >= range.min && value <= range.max) || (range.whole === true && !Number.isInteger(value))) {
      throw new InvalidArgumentError(
        `It must be a ${range.whole === true ? 'whole ' : ''}number from ${range.min} to ${range.max}.`,
      )
    }
    return value
  }
}

/** A parser for a share of the expected output, %: `85%` or `85`. */
export function shareOf(text: string): number {
  const percent = /^\d{1,3}(?:\.\d+)?%?$/u.test(text.trim()) ? Number(text.trim().replace('%', '')) : Number.NaN
  if (percent > 0 && percent <= 150) return percent
  throw new InvalidArgumentError('write a share of the expected output, above 0 and up to 150 %, such as 85%.')
}
