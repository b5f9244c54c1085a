import { Option, type Command } from 'commander'
import { checkHouse, runHouse, type CheckStage } from '../../house/index.js'
import { UsageError } from '../errors.js'
import { takesProject, writesReport, type CommonOptions, type FileOptions, type ProjectOptions } from '../options.js'
import { checkSections } from './check-sections.js'
import { renameFile } from '../rename-file.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'

export const examples: readonly [Example, Example, ...Example[]] = [
  { line: 'check-project project.yaml', does: 'everything that is wrong, missing or assumed' },
  {
    line: 'check-project project.yaml --set site.elevation_ft=6200 --json',
    does: 'the same with one value changed, for a script',
  },
  {
    line: 'check-project old.yaml --rename --out project.yaml',
    does: 'a file of an earlier version with the names of this one',
  },
  { line: 'check-project project.yaml --watch', does: 'again whenever you save it in your editor' },
]

/** Options that say how a check is made or shown, and mean nothing where only names are replaced. */
const RENAME_STANDS_ALONE = ['json', 'csv', 'markdown', 'showWork', 'set', 'allowOutside']

export function configure(command: Command): void {
  const rename = new Option('--rename', 'write the file with the names of this version (--force alone: in place)')
  const watch = new Option(
    '--watch',
    'check again each time that the file, or one that it names, is saved; Ctrl-C ends',
  )
  writesReport(takesProject(command))
    .addOption(rename.conflicts(RENAME_STANDS_ALONE))
    .addOption(watch.conflicts(['json', 'csv', 'markdown', 'out', 'rename']))
    .addHelpText('after', '\nExit code 1 when an error is found, 2 when the file is not a valid project.')
}

interface Options extends FileOptions, CommonOptions, ProjectOptions {
  readonly rename?: boolean
  readonly watch?: boolean
}

export async function run(
  context: CommandContext,
  options: Partial<Options>,
  stages?: readonly CheckStage[],
): Promise<CommandOutcome> {
  const path = context.args[0] ?? '-'
  if (options.rename === true) return renameFile(path, options)
  if (options.watch !== true) return await check(context, stages)
  if (path === '-') throw new UsageError('--watch wants a file to watch, not stdin')
  const { watchProject } = await import('./check-watch.js')
  return await watchProject(context, { color: true, set: [], ...options }, (each) => check(each, stages))
}

async function check(context: CommandContext, stages: readonly CheckStage[] | undefined): Promise<CommandOutcome> {
  const loaded = await context.project()
  const result = await checkHouse(loaded.project, runHouse(loaded), {
    stages,
    begin: (stage) => context.progress(`checking ${stage}`),
    madeUp: loaded.madeUp,
    file: loaded.path === '-' ? 'project.yaml' : loaded.path,
  })
  const { findings, values } = result
  return {
    report: {
      title: loaded.project.title,
      stage: 'check',
      sections: checkSections(values, findings),
      ...(values.next === null ? {} : { next: values.next }),
      csv: {
        columns: [
          { heading: 'Severity' },
          { heading: 'Id' },
          { heading: 'Where' },
          { heading: 'Message' },
          { heading: 'Fix' },
        ],
        rows: findings.map(({ severity, id, where, message, fix }) => [severity, id, where, message, fix ?? null]),
      },
      result,
    },
  }
}
