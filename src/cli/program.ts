import { Command } from 'commander'
import { cleanText } from '../report/index.js'
import { writeErr, writeOut } from './streams.js'
import type { Example, SubcommandEntry } from './subcommand.js'

const SHORT_HELP = `
To start: gablewatt new-project --site "Reno, NV" --out project.yaml

Exit codes: 0 done; 1 done, but a check fails; 2 wrong usage or project;
3 a file cannot be read or written; 70 a defect of ours.
'gablewatt help SUBCOMMAND' tells more; 'gablewatt explain WORD' tells of a
finding, a word of the trade or a topic such as project-file.`

/** The program with the names and summaries of its subcommands; no subcommand is loaded for it. */
export function makeProgram(tool: string, entries: readonly SubcommandEntry[]): Command {
  const program = new Command('gablewatt')
    .description('Plan, permit, buy, install and pay back a small rooftop photovoltaic system from one project file.')
    .usage('SUBCOMMAND [project.yaml] [options]')
    .version(tool, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'show help')
    .helpCommand('help [subcommand]', 'show help')
    .option('--no-color', 'no colour, even on a terminal (NO_COLOR does the same)')
    .option('-q, --quiet', 'say only what is wrong')
    .addHelpText('after', SHORT_HELP)
  settle(program)
  for (const entry of entries)
    settle(program.command(entry.name).summary(entry.summary).description(sentence(entry.summary)))
  return program
}

/** Puts a subcommand's examples under its help. */
export function addExamples(command: Command, examples: readonly Example[]): void {
  const lines = examples.map((example) => `  # ${example.does}\n  gablewatt ${example.line}`)
  command.addHelpText('after', `\nExamples:\n${lines.join('\n')}`)
}

function settle(command: Command): void {
  command
    .exitOverride()
    .allowExcessArguments(false)
    .showSuggestionAfterError(true)
    .configureHelp({ showGlobalOptions: true, subcommandTerm: (one) => one.name() })
    .configureOutput({
      writeOut,
      writeErr,
      // Commander quotes what was typed, so that it is cleaned like any other text of a stranger.
      outputError: (text, write) => write(`${cleanText(text).trimEnd()}\n(${helpHint(command)} tells more)\n`),
    })
}

function helpHint(command: Command): string {
  return command.parent === null ? `'${command.name()} help'` : `'${command.parent.name()} help ${command.name()}'`
}

function sentence(summary: string): string {
  return `${summary.charAt(0).toUpperCase()}${summary.slice(1)}.`
}
