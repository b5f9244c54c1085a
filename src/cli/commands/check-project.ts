import { Option, type Command } from 'commander'
import { runHouse, type House } from '../../house/index.js'
import { moduleCountOf, type LoadedProject, type Project } from '../../project/index.js'
import { StageError, Worksheet, type Finding } from '../../worksheet/index.js'
import { CHECK_STAGES, type CheckStage } from '../check-stages.js'
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
  stages: readonly CheckStage[] = CHECK_STAGES,
): Promise<CommandOutcome> {
  if (options.rename === true) return renameFile(context.args[0] ?? '-', options)
  const loaded = await context.project()
  const house = runHouse(loaded)
  const sheet = new Worksheet()
  const ran: string[] = []
  for (const stage of stages) {
    if (!stage.applies(loaded.project)) continue
    context.progress(`checking ${stage.name}`)
    if (await runStage(stage, house, loaded.project, sheet)) ran.push(stage.name)
  }
  const counts = countParts(loaded)
  const proof = sheet.result({})
  const findings = withoutRepeats(proof.findings)
  const failed = findings.some((finding) => finding.severity === 'error')
  const result = { ...proof, findings, values: { ok: !failed, counts, stages_run: ran } }
  const parts = Object.entries(counts).map(([name, number]) => sayCount(number, name.replaceAll('_', ' ')))
  return {
    report: {
      title: loaded.project.title,
      stage: 'check',
      sections: [
        {
          kind: 'paragraph',
          text: `${failed ? 'not ok' : 'ok'}: ${parts.join(', ')}; ${countFindings(findings)}`,
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

/** A stage that cannot run is itself something to tell; the others still run. */
async function runStage(stage: CheckStage, house: House, project: Project, sheet: Worksheet): Promise<boolean> {
  try {
    sheet.include(await stage.run(house, project))
    return true
  } catch (error) {
    if (!(error instanceof StageError)) throw error
    const { where, message, fix } = error
    sheet.find({ severity: 'error', id: `${stage.name}.cannot-run`, message, where, fix })
    return false
  }
}

/** A stage brings the findings of the stages that it builds on, so that one may arrive more than once. */
function withoutRepeats(findings: readonly Finding[]): Finding[] {
  return [
    ...new Map(findings.map((finding) => [[finding.id, finding.where, finding.message].join('\n'), finding])).values(),
  ]
}

/** What the file holds, so that a person sees that all of it was read. */
function countParts({ project }: LoadedProject): Record<string, number> {
  return {
    roof_planes: count(project.roof_planes),
    arrays: count(project.arrays),
    modules: Object.values(project.arrays).reduce((sum, array) => sum + moduleCountOf(array), 0),
  }
}

function count(part: object | undefined): number {
  return Object.keys(part ?? {}).length
}

/** `1 roof plane`, `2 roof planes`; `name` is in the plural. */
function sayCount(number: number, name: string): string {
  return `${number} ${number === 1 ? name.replace(/s$/u, '') : name}`
}
