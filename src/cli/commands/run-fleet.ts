import { Option, type Command } from 'commander'
import { FileError } from '../../files/index.js'
import { FILE_KINDS, FLEET_STAGES, FleetError, runFleet } from '../../fleet/index.js'
import { UsageError } from '../errors.js'
import { EXIT } from '../exit-codes.js'
import { numberIn } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'
import { mergeFleet, type Joined } from './fleet-merge.js'
import { requestOf, type FleetOptions } from './fleet-options.js'
import { Watch } from './fleet-watch.js'

export const examples: readonly [Example, Example, Example, Example, Example] = [
  {
    line: 'run-fleet template.yaml --table customers.csv',
    does: 'a house for every row; headings are paths of the project file',
  },
  { line: 'run-fleet houses/ --jsonl --out results.jsonl', does: 'every project of a folder, a line of JSON each' },
  {
    line: 'run-fleet houses/ --baseline fleet-baseline.json --tolerance 0.5% --junit fleet.xml',
    does: 'in CI: what moved since the saved run',
  },
  {
    line: 'run-fleet template.yaml --table customers.csv --shard 2/8 --jsonl',
    does: 'the second of eight parts, for a job array',
  },
  { line: "run-fleet --merge 'part-*.jsonl' --out all.jsonl", does: 'the parts checked and joined, in any order' },
]

/** `--out` that is this command's business and not the frame's, as it grows while the fleet runs. */
class TargetOption extends Option {
  override attributeName(): string {
    return 'target'
  }
}

const collect = (value: string, before: readonly string[]): string[] => [...before, value]

export function configure(command: Command): void {
  const others = (own: string): string[] => ['jsonl', 'json', 'csv', 'markdown'].filter((format) => format !== own)
  command
    .argument('<project...>', 'a template with --table; otherwise project files, patterns in quotes, folders')
    .option(
      '--table <customers.csv>',
      "a project for every row: headings are paths of the project file, and 'id' names it; an empty cell leaves the template's value",
    )
    .option(
      '--delimiter <mark>',
      'what parts the columns of the table: comma, semicolon, tab or bar; read from the headings when missing',
    )
    .option('--decimal-comma', 'decimals in the table follow a comma')
    .option(
      '--stages <list>',
      `stages to run, of ${FLEET_STAGES.map(({ name }) => name).join(',')}; those that a project has the parts for when missing`,
    )
    .option('--set <path=value>', 'change one value in every project (repeatable)', collect, [])
    .option('--allow-outside', 'let the projects name files outside their own folders')
    .option(
      '--jobs <number>',
      'worker threads; as many as processors when missing',
      numberIn({ min: 1, max: 256, whole: true }),
    )
    .option(
      '--shard <part/parts>',
      'work out only this part of the fleet, such as 2/8; the parts joined in order are the whole',
    )
    .option(
      '--merge',
      'the arguments are files that the parts wrote with --jsonl: check them and join them in the order of the fleet',
    )
    .option('--fail-fast', 'stop at the first project that fails')
    .addOption(new Option('--jsonl', 'print a line of JSON for every project as it is done').conflicts(others('jsonl')))
    .addOption(new Option('--json', 'print the summary as JSON').conflicts(others('json')))
    .addOption(new Option('--csv', 'print the table of the fleet as CSV').conflicts(others('csv')))
    .option('--columns <list>', 'columns of --csv: its headings, your own, or figures such as yield.annual.ac_kwh')
    .addOption(new Option('--markdown', 'print the summary as Markdown').conflicts(others('markdown')))
    .addOption(new TargetOption('-o, --out <file>', 'write to a file instead of stdout (- for stdout)'))
    .option('--junit <file>', 'also write a report for CI in JUnit XML')
    .option('--out-dir <folder>', 'also write files for every project, in a folder of its own')
    .option(
      '--write <kinds>',
      `what goes into --out-dir, of ${FILE_KINDS.join(',')}; price-list is one for all houses; results when missing`,
    )
    .option('--force', 'replace files that exist')
    .option('--resume', 'go on from an interrupted run: what it finished is not worked out again')
    .option('--use-anyway', 'with --resume, also take what another build of the program finished, with a warning')
    .option('--journal <file>', 'where finished projects are noted while the run lasts')
    .option('--baseline <file>', 'compare with a saved run; exit code 1 when a value moved by more than the tolerance')
    .option('--tolerance <percent>', 'largest move of a number that passes, such as 0.5%; 0.01% when missing')
    .addOption(new Option('--update-baseline', 'save this run as the baseline').conflicts(['shard', 'failFast']))
    .addHelpText('after', '\nThe exit code is the worst that any one project would have given alone.')
}

export async function run(context: CommandContext, options: FleetOptions): Promise<CommandOutcome> {
  const watch = new Watch(context, options)
  const unhear = hearSignals(() => watch.interrupt())
  try {
    if (options.merge === true) return outcomeOf(mergeFleet(context.args, options))
    return outcomeOf(await runFleet(requestOf(context.args, context.tool, options), watch))
  } catch (error) {
    watch.abandon()
    if (!(error instanceof FleetError)) throw error
    throw error.exitCode === 3
      ? new FileError(error.message, { cause: error })
      : new UsageError(error.message, error.more)
  } finally {
    unhear()
  }
}

/** Before a signal ends the program as it always does, something is said; returns what stops listening. */
function hearSignals(say: () => void): () => void {
  const end = (signal: NodeJS.Signals): void => {
    unhear()
    say()
    process.kill(process.pid, signal)
  }
  const signals = ['SIGINT', 'SIGTERM'] as const
  const unhear = (): void => {
    for (const signal of signals) process.off(signal, end)
  }
  for (const signal of signals) process.on(signal, end)
  return unhear
}

/** The exit code is the worst of all projects; 0 and 1 are the frame's, the others come by an error. */
function outcomeOf({ projects, worst, hasMoved }: Joined): CommandOutcome {
  const count = projects.filter(({ status }) => status !== 'ok' && status !== 'failed').length
  const says = `${count} of ${projects.length} project${projects.length === 1 ? '' : 's'} could not be worked out; the others are done`
  if (worst === EXIT.usage) throw new UsageError(says)
  if (worst === EXIT.file) throw new FileError(says)
  if (worst === EXIT.defect) throw new Error(says)
  return { document: '', failed: worst === EXIT.checkFailed || hasMoved }
}
