import { Option, type Command } from 'commander'
import { checkHouse, runHouse, type CheckStage } from '../../house/index.js'
import { takesProject, writesReport, type FileOptions } from '../options.js'
import { countFindings } from '../output/findings.js'
import { renameFile } from '../rename-file.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'

export const examples: readonly [Example, Example, Example] = [
  { line: 'check-project project.yaml', does: 'everything that is wrong, missing or assumed' },
  {
    line: 'check-project project.yaml --set site.elevation_ft=6200 --json',
    does: 'the same with one value changed, for a script',
  },
  {
    line: 'check-project old.yaml --rename --out project.yaml',
    does: 'a file of an earlier version with the names of this one',
  },
]

/** Options that say how a check is made or shown, and mean nothing where only names are replaced. */
const RENAME_STANDS_ALONE = ['json', 'csv', 'markdown', 'showWork', 'set', 'allowOutside']

export function configure(command: Command): void {
  const rename = new Option('--rename', 'write the file with the names of this version (--force alone: in place)')
  writesReport(takesProject(command))
    .addOption(rename.conflicts(RENAME_STANDS_ALONE))
    .addHelpText('after', '\nExit code 1 when an error is found, 2 when the file is not a valid project.')
}

export async function run(
  context: CommandContext,
  options: FileOptions & { readonly rename?: boolean },
  stages?: readonly CheckStage[],
): Promise<CommandOutcome> {
  if (options.rename === true) return renameFile(context.args[0] ?? '-', options)
  const loaded = await context.project()
  const result = await checkHouse(loaded.project, runHouse(loaded), {
    stages,
    begin: (stage) => context.progress(`checking ${stage}`),
  })
  const { findings } = result
  const { ok, counts } = result.values
  const parts = Object.entries(counts).map(([name, number]) => sayCount(number, name.replaceAll('_', ' ')))
  return {
    report: {
      title: loaded.project.title,
      stage: 'check',
      sections: [
        {
          kind: 'paragraph',
          text: `${ok ? 'ok' : 'not ok'}: ${parts.join(', ')}; ${countFindings(findings)}`,
        },
      ],
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

/** `1 roof plane`, `2 roof planes`; `name` is in the plural. */
function sayCount(number: number, name: string): string {
  return `${number} ${number === 1 ? name.replace(/s$/u, '') : name}`
}
