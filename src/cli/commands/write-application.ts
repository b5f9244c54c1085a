import { Option, type Command } from 'commander'
import { PAGE_SIZES, prepareApplication, type PageSize } from '../../papers/index.js'
import type { Report } from '../../report/index.js'
import { houseOf } from '../house-of.js'
import { takesProject, usesEarlier, writesReport, type ReportOptions } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'
import { isPdf, told } from './paper-outcome.js'
import { applicationSections, fieldTable } from './application-sections.js'

export const examples: readonly [Example, Example, Example] = [
  { line: 'write-application project.yaml', does: 'what the utility asks: every answer, and what is missing' },
  { line: 'write-application project.yaml --out application.pdf', does: 'as a sheet to sign or to copy from' },
  { line: 'write-application project.yaml --json --out application.json', does: 'for scripts' },
]

interface Options extends ReportOptions {
  readonly paper: PageSize
}

export function configure(command: Command): void {
  usesEarlier(
    writesReport(takesProject(command)).addOption(
      new Option('--paper <size>', 'paper of the PDF').choices(Object.keys(PAGE_SIZES)).default('letter'),
    ),
  ).addHelpText(
    'after',
    '\nWith --out the sheet is written as PDF, unless --json, --csv, --markdown or --show-work is given.',
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const loaded = await context.project()
  const house = await houseOf(context, ['yield', 'wire'])
  const application = await prepareApplication(loaded, house, { tool: context.tool })
  const { result } = application
  if (isPdf(options))
    return { document: await application.pdf(options.paper), ...told(result.findings, 'application.field-missing') }
  if (options.markdown === true)
    return { document: application.markdown(), ...told(result.findings, 'application.field-missing') }
  const report: Report = {
    title: `Application for interconnection: ${loaded.project.title}`,
    stage: 'application',
    sections: applicationSections(result.values),
    csv: fieldTable(result.values),
    result,
    cautions: ['authority', 'estimate'],
  }
  return { report }
}
