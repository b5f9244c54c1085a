import { Option, type Command } from 'commander'
import { checkBills, type CheckedBillsValues, type DayCount } from '../../money/index.js'
import { LARGEST_LIST_BYTES, readNamedText } from '../../project/index.js'
import type { Section, TableData } from '../../report/index.js'
import { UsageError } from '../errors.js'
import { takesProject, writesReport } from '../options.js'
import { readStdin } from '../stdin.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'

export const examples: readonly [Example, Example, Example] = [
  { line: 'check-bill project.yaml bills.csv', does: 'which bills differ, and which key of the tariff explains them' },
  { line: 'check-bill project.yaml bills.csv --days both', does: 'both printed days are days of the bill' },
  { line: 'check-bill project.yaml bills.csv --json', does: 'every line of every bill, for scripts' },
]

interface Options {
  readonly days?: DayCount
}

export function configure(command: Command): void {
  writesReport(
    takesProject(command)
      .argument('<bills.csv>', 'printed bills, or - for stdin')
      .addOption(
        new Option('--days <which>', 'days of a bill: both printed ones, or the last alone').choices(['both', 'last']),
      ),
  ).addHelpText(
    'after',
    `
Columns: from, to (year-month-day), kwh, amount (USD). Where they are known:
kwh.PERIOD, export_kwh, export_kwh.PERIOD, generation_kwh, demand_kw,
demand_kw.CHARGE, and lines of the bill in USD: energy, riders, fixed, demand,
minimum, credit, surplus, taxes. Half a cent goes up; tariff.rounding says
whether each line is rounded or only the total.`,
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const [projectPath, tablePath = '-'] = context.args
  if (projectPath === '-' && tablePath === '-')
    throw new UsageError('only one of project and bills can come from stdin')
  const { project } = await context.project()
  const file = tablePath === '-' ? '<stdin>' : tablePath
  const text = tablePath === '-' ? await readStdin(LARGEST_LIST_BYTES) : readNamedText(tablePath, LARGEST_LIST_BYTES)
  const { days } = options
  const result = checkBills({ tariff: project.tariff, file, text, ...(days === undefined ? {} : { days }) })
  const table = tableOf(result.values)
  return {
    report: {
      title: `Bills against the tariff: ${project.title}`,
      stage: 'check-bill',
      sections: sectionsOf(result.values, table),
      csv: table,
      result,
    },
  }
}

function tableOf(values: CheckedBillsValues): TableData {
  const hasLines = values.bills.some((bill) => bill.lines.length > 0)
  return {
    columns: [
      { heading: 'From' },
      { heading: 'To' },
      { heading: 'Days' },
      { heading: 'By the tariff', unit: 'USD', decimals: 2, key: 'computed_usd' },
      { heading: 'Printed', unit: 'USD', decimals: 2, key: 'stated_usd' },
      { heading: 'Difference', unit: 'USD', decimals: 2, key: 'difference_usd' },
      ...(hasLines ? [{ heading: 'Most off', key: 'wrong_line' }] : []),
    ],
    rows: values.bills.map((bill) => [
      bill.from,
      bill.to,
      bill.days,
      bill.computed_usd,
      bill.stated_usd,
      { value: bill.difference_usd, tone: bill.difference_usd === 0 ? ('good' as const) : ('bad' as const) },
      ...(hasLines ? [bill.wrong_line ?? ''] : []),
    ]),
    total: [
      'Total',
      '',
      null,
      values.computed_usd,
      values.stated_usd,
      values.difference_usd,
      ...(hasLines ? [''] : []),
    ],
  }
}

function sectionsOf(values: CheckedBillsValues, table: TableData): Section[] {
  const explanations: Section[] =
    values.explanations.length === 0
      ? []
      : [
          {
            kind: 'table',
            heading: 'Single changes that explain every bill to the cent, the likeliest first',
            columns: ['Key', 'In the tariff', 'Fits'].map((heading) => ({ heading })),
            rows: values.explanations.map(({ key, found, fits, also_fits: also }) => [
              key,
              found === null ? 'not stated' : String(found),
              also === undefined ? String(fits) : `${fits} (any of ${also.join(' to ')})`,
            ]),
          },
        ]
  return [{ kind: 'table', ...table }, ...explanations]
}
