import { InvalidArgumentError, Option, type Command } from 'commander'
import {
  cellFromAir,
  PAGE_SIZES,
  prepareHandover,
  type HandoverWishes,
  type PageSize,
  type TableText,
} from '../../papers/index.js'
import { LARGEST_LIST_BYTES, readNamedText } from '../../project/index.js'
import { isDay } from '../../values/index.js'
import type { CautionSubject, Report } from '../../report/index.js'
import { UsageError } from '../errors.js'
import { houseOf } from '../house-of.js'
import { numberIn, takesProject, usesEarlier, writesReport, type ReportOptions } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'
import { handoverSections, recordTable } from './handover-sections.js'
import { isPdf, told } from './paper-outcome.js'

export const examples: readonly [Example, Example, Example, Example] = [
  { line: 'write-handover project.yaml --cell-temp 48', does: 'the tests in order, with the values to expect today' },
  { line: 'write-handover project.yaml --out handover.pdf', does: 'the record with blanks, and what the owner keeps' },
  {
    line: 'write-handover project.yaml --serials serials.csv --readings strings.csv --out handover.pdf',
    does: 'with what was read; exit code 1 when a reading fails',
  },
  { line: 'write-handover project.yaml --markdown --out handover.md', does: 'as Markdown' },
]

interface Options extends ReportOptions {
  readonly paper: PageSize
  readonly date?: string
  readonly serials?: string
  readonly readings?: string
  readonly cellTemp?: number
  readonly airTemp?: number
  readonly irradiance?: number
}

const CAUTIONS: readonly CautionSubject[] = ['height', 'live-conductors', 'authority', 'electrician', 'estimate']

export function configure(command: Command): void {
  usesEarlier(
    writesReport(takesProject(command))
      .addOption(new Option('--paper <size>', 'paper of the PDF').choices(Object.keys(PAGE_SIZES)).default('letter'))
      .option('--date <YYYY-MM-DD>', 'day of the tests; wins over commissioning.date', day)
      .option('--serials <file.csv>', 'serial numbers: columns kind (module, inverter, other), unit, serial')
      .option('--readings <file.csv>', 'readings of strings: column string, and keys under commissioning.strings')
      .option('--cell-temp <C>', 'temperature of the cells today, deg C', numberIn({ min: -50, max: 90 }))
      .addOption(
        new Option('--air-temp <C>', 'temperature of the air today, deg C; with --irradiance the cells follow from it')
          .argParser(numberIn({ min: -50, max: 60 }))
          .conflicts('cellTemp'),
      )
      .option('--irradiance <W/m2>', 'light on the modules today, W/m2', numberIn({ min: 0, max: 1600 })),
  ).addHelpText(
    'after',
    '\nWith --out the file is written as PDF, unless --json, --csv, --markdown or --show-work is given.',
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const loaded = await context.project()
  if (options.airTemp !== undefined && options.irradiance === undefined)
    throw new UsageError('--air-temp goes with --irradiance; or give --cell-temp')
  const { airTemp: airC, irradiance } = options
  const cellC =
    airC === undefined || irradiance === undefined ? options.cellTemp : cellFromAir(loaded.project, airC, irradiance)
  const wishes: HandoverWishes = {
    date: options.date,
    cellC,
    irradianceWM2: irradiance,
    tool: context.tool,
    serials: tableOf(options.serials),
    readings: tableOf(options.readings),
  }
  const house = await houseOf(context, ['yield', 'wire', 'mounts'], { cellC })
  const handover = await prepareHandover(loaded, house, wishes)
  const { result } = handover
  if (isPdf(options)) return { document: await handover.pdf(options.paper), ...told(result.findings) }
  if (options.markdown === true) return { document: handover.markdown(), ...told(result.findings) }
  const report: Report = {
    title: `Hand-over: ${loaded.project.title}`,
    stage: 'handover',
    sections: handoverSections(result.values),
    csv: recordTable(result.values),
    result,
    cautions: CAUTIONS,
  }
  return { report }
}

function tableOf(path: string | undefined): TableText | undefined {
  return path === undefined ? undefined : { name: path, text: readNamedText(path, LARGEST_LIST_BYTES) }
}

function day(text: string): string {
  if (!isDay(text)) throw new InvalidArgumentError('It must be a day of the calendar as year-month-day, 2026-05-06.')
  return text
}
