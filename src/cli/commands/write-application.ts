import type { Command } from 'commander'
import { buildApplication } from '../../papers/index.js'
import type { Report } from '../../report/index.js'
import { houseOf } from '../house-of.js'
import { takesProject, usesEarlier, writesReport, type ReportOptions } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'
import { applicationSections, fieldTable } from './application-sections.js'

export const examples: readonly [Example, Example, Example] = [
  { line: 'write-application project.yaml', does: 'what the utility asks: every answer, and what is missing' },
  { line: 'write-application project.yaml --pdf application.pdf', does: 'as a sheet to sign or to copy from' },
  { line: 'write-application project.yaml --json --out application.json', does: 'for scripts and mappings of forms' },
]

interface Options extends ReportOptions {
  readonly pdf?: string
}

export function configure(command: Command): void {
  usesEarlier(writesReport(takesProject(command)))
}

export async function run(context: CommandContext, _options: Options): Promise<CommandOutcome> {
  const { project } = await context.project()
  const house = await houseOf(context, ['yield', 'wire'])
  const result = await buildApplication(project, house)
  const report: Report = {
    title: `Application for interconnection: ${project.title}`,
    stage: 'application',
    sections: applicationSections(result.values),
    csv: fieldTable(result.values),
    result,
    cautions: ['authority', 'estimate'],
  }
  return { report }
}
