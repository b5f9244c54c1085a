import { Option, type Command } from 'commander'
import {
  dearestFirst,
  FleetError,
  junitXml,
  watchedHouses,
  watchHouse,
  worstOf,
  type WatchedOutcome,
} from '../../fleet/index.js'
import { FileError } from '../../files/index.js'
import { Worksheet } from '../../worksheet/index.js'
import { UsageError } from '../errors.js'
import { shareOf, writesReport } from '../options.js'
import type { CommandContext, CommandOutcome, Example, OutputFile } from '../subcommand.js'
import { watchTable } from './watch-sections.js'

export const examples: readonly [Example, Example, Example] = [
  { line: 'watch-fleet houses/ --production readings/', does: 'a line a house, what costs most first' },
  {
    line: 'watch-fleet houses.csv --production readings/ --html fleet.html --junit fleet.xml',
    does: 'with a page to look at, and a report for CI',
  },
  {
    line: 'watch-fleet houses/ --production readings/ --jsonl --fail-below 85%',
    does: 'a line of JSON a house; below 85 % fails too',
  },
]

interface Options {
  readonly production: string
  readonly failBelow?: number
  readonly jsonl?: boolean
  readonly junit?: string
  readonly html?: string
}

export function configure(command: Command): void {
  writesReport(
    command
      .argument('<houses...>', 'project files, patterns in quotes, folders; or one table with columns id and project')
      .requiredOption('--production <folder>', 'folder with the readings of each house, NAME.csv')
      .option('--fail-below <percent>', 'a house below this share of the expected output fails, such as 85%', shareOf)
      .addOption(
        new Option('--jsonl', 'print a line of JSON for every house').conflicts([
          'json',
          'csv',
          'markdown',
          'showWork',
        ]),
      )
      .option('--junit <file>', 'also write a report for CI in JUnit XML')
      .option('--html <file>', 'also write one page that needs no network and no script'),
  ).addHelpText(
    'after',
    '\nThe exit code is the worst that any one house would have given: 1 a sure sign or too low, 2 a wrong file, 3 one that cannot be read.',
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const outcomes = await watchAll(context, options)
  const exit = worstOf(outcomes)
  const files = await filesOf(outcomes, options)
  if (options.jsonl === true) {
    return { document: outcomes.map(({ line }) => `${JSON.stringify(line)}\n`).join(''), files, exit }
  }
  const sheet = new Worksheet()
  const table = watchTable(outcomes)
  const messages = outcomes.flatMap(({ line }) => line.messages.map((message) => `${line.house}: ${message}`))
  return {
    report: {
      title: `Production of ${outcomes.length} house${outcomes.length === 1 ? '' : 's'}, what costs most first`,
      stage: 'watch',
      sections: [
        { kind: 'table', ...table },
        ...(messages.length === 0 ? [] : [{ kind: 'list' as const, heading: 'What is wrong', items: messages }]),
      ],
      csv: table,
      result: sheet.result({ houses: outcomes.map(({ line }) => line) }),
    },
    files,
    exit,
  }
}

async function watchAll(context: CommandContext, { production, failBelow }: Options): Promise<WatchedOutcome[]> {
  try {
    const houses = watchedHouses(context.args, production)
    const outcomes: WatchedOutcome[] = []
    for (const house of houses) {
      context.progress(`${outcomes.length + 1} of ${houses.length}: ${house.name}`)
      outcomes.push(await watchHouse(house, failBelow))
    }
    return dearestFirst(outcomes)
  } catch (error) {
    if (!(error instanceof FleetError)) throw error
    throw error.exitCode === 3
      ? new FileError(error.message, { cause: error })
      : new UsageError(error.message, error.more)
  }
}

async function filesOf(outcomes: readonly WatchedOutcome[], { junit, html }: Options): Promise<OutputFile[]> {
  const files: OutputFile[] = []
  if (junit !== undefined) {
    const projects = outcomes.map(({ line }) => ({
      name: line.house,
      stages: line.performance_pct === null ? [] : ['output'],
      problems: line.performance_pct === null ? line.messages : [],
      errors: line.performance_pct === null ? [] : line.messages.map((message) => ({ stage: 'output', message })),
    }))
    files.push({ path: junit, content: junitXml(projects, [], 'gablewatt watch-fleet') })
  }
  if (html !== undefined) {
    const { watchPage } = await import('./watch-page.js')
    files.push({ path: html, content: watchPage(outcomes) })
  }
  return files
}
