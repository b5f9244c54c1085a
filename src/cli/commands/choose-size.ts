import type { Command } from 'commander'
import { houseOf } from '../house-of.js'
import { numberIn, takesProject, writesReport } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'
import { sizeSections, sizeTable } from './size-sections.js'

export const examples: readonly [Example, Example, Example] = [
  { line: 'choose-size project.yaml', does: 'what each number of modules costs, saves and is worth' },
  { line: 'choose-size project.yaml --share 80', does: 'also the smallest size that makes 80 % of the use' },
  {
    line: 'choose-size project.yaml --cost-per-module 720 --cost-fixed 4800 --csv',
    does: 'with other prices, as a table for a spreadsheet',
  },
]

interface Options {
  readonly share?: number
  readonly costPerModule?: number
  readonly costFixed?: number
  readonly storage?: number
}

export function configure(command: Command): void {
  const usd = numberIn({ min: 0, max: 1_000_000 })
  writesReport(
    takesProject(command)
      .option(
        '--share <percent>',
        "share of the year's use that you wish to make yourself",
        numberIn({ min: 1, max: 1000 }),
      )
      .option('--cost-per-module <usd>', 'price of a further module in place, for finance.cost_usd_per_module', usd)
      .option('--cost-fixed <usd>', 'price that every size has, for finance.cost_fixed_usd', usd)
      .option(
        '--storage <units>',
        'compare each size with 0 to so many storage units too',
        numberIn({ min: 1, max: 6, whole: true }),
      ),
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const { project } = await context.project()
  const sizes = {
    ...(options.share === undefined ? {} : { wishedSharePct: options.share }),
    ...(options.costPerModule === undefined ? {} : { usdPerModule: options.costPerModule }),
    ...(options.storage === undefined ? {} : { storageUnits: options.storage }),
    ...(options.costFixed === undefined ? {} : { fixedUsd: options.costFixed }),
  }
  const result = await (await houseOf(context, [], { size: sizes })).size()
  return {
    report: {
      title: `How many modules: ${project.title}`,
      stage: 'size',
      sections: sizeSections(result.values),
      csv: sizeTable(result.values),
      result,
      cautions: ['estimate', 'money'],
      next: `gablewatt payback ${context.args[0] ?? 'project.yaml'}`,
    },
  }
}
