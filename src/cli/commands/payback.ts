import type { Command } from 'commander'
import { totalOf, type EarlierResults } from '../../house/index.js'
import type { BomValues } from '../../materials/index.js'
import type { PaybackValues } from '../../money/index.js'
import type { Result } from '../../worksheet/index.js'
import { UsageError } from '../errors.js'
import { type Report, STAGE_CAUTIONS } from '../../report/index.js'
import { houseOf } from '../house-of.js'
import { numberIn, takesProject, usesEarlier, writesReport } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'
import { billSections, billTable } from './bill-sections.js'
import { cashFlowTable, paybackSections } from './payback-sections.js'
import { runScenario, scenarioTable, type Scenario } from './payback-versus.js'

export const examples: readonly [Example, Example, Example, Example] = [
  { line: 'payback project.yaml', does: 'cost, savings and payback year by year, and how sure they are' },
  { line: 'payback project.yaml --bill 7', does: 'the bill of July line by line, without and with the system' },
  {
    line: 'payback project.yaml --versus electric-car.yaml --versus finance.discount_rate_pct=5',
    does: 'beside another project file, and beside this one with a value changed',
  },
  { line: 'payback project.yaml --use bom.json', does: 'with the cost of an earlier price-bom --json' },
]

interface Options {
  readonly set: readonly string[]
  readonly allowOutside?: boolean
  readonly bill?: number
  readonly cost?: number
  readonly optimum?: boolean
  readonly versus: readonly string[]
}

export function configure(command: Command): void {
  usesEarlier(
    writesReport(
      takesProject(command)
        .option(
          '--bill <month>',
          'print one bill line by line, without and with the system (1 = January)',
          numberIn({ min: 1, max: 12, whole: true }),
        )
        .option(
          '--cost <usd>',
          'price of the system before incentives, in place of finance.installed_cost_usd',
          numberIn({ min: 0, max: 10_000_000 }),
        )
        .option('--optimum', 'what the battery could save at best')
        .option(
          '--versus <scenario>',
          'compare with another project file, or with this one and path=value, several parted by ; (repeatable)',
          (value: string, before: readonly string[]) => [...before, value],
          [],
        ),
    ),
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  if (options.bill === undefined) return paybackOutcome(context, options)
  if (options.versus.length > 0) throw new UsageError('--bill and --versus cannot be combined')
  return billOutcome(context, options.bill)
}

async function billOutcome(context: CommandContext, month: number): Promise<CommandOutcome> {
  const { project } = await context.project()
  const result = await (await houseOf(context, [])).bill()
  const bill = {
    month,
    without: result.values.without.bills.find((one) => one.month === month),
    with: result.values.with.bills.find((one) => one.month === month),
    saved_usd: result.values.monthly_savings_usd[month - 1] ?? 0,
  }
  if (bill.without === undefined || bill.with === undefined) throw new Error(`there is no bill of month ${month}`)
  const values = { ...bill, without: bill.without, with: bill.with }
  const tariffs = { without: result.values.without.tariff, with: result.values.with.tariff }
  const own = result.worksheet.filter(({ id }) => !id.startsWith('bill.') || id.split('.')[2] === twoDigits(month))
  return {
    report: {
      title: `Bill without and with the system: ${project.title}`,
      stage: 'bill',
      sections: billSections(values, tariffs),
      csv: billTable(values),
      result: { ...result, worksheet: own, values: { ...values, tariff: tariffs } },
      cautions: ['estimate', 'money'],
    },
  }
}

const twoDigits = (month: number): string => String(month).padStart(2, '0')

async function paybackOutcome(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const { project } = await context.project()
  const wishes = { installedCostUsd: options.cost, optimum: options.optimum }
  if (options.optimum === true && (project.storage?.count ?? 0) === 0)
    throw new UsageError('--optimum is about a battery, and this project has none; state storage')
  const { bom } = await earlierBill(context, options.cost ?? project.finance?.installed_cost_usd)
  const house = await houseOf(context, ['bom'], wishes)
  const result = await house.payback()
  const { set, allowOutside } = options
  const base = { path: context.args[0] ?? '-', set, allowOutside, house: { earlier: { bom }, wishes } }
  const scenarios: Scenario[] = []
  for (const text of options.versus) scenarios.push(await runScenario(text, base))
  const report: Report = {
    title: `Payback: ${project.title}`,
    stage: 'payback',
    sections: paybackSections(result.values, scenarios),
    csv: scenarios.length === 0 ? cashFlowTable(result.values, 'all') : scenarioTable(result.values, scenarios),
    result: withScenarios(result, scenarios),
    cautions: STAGE_CAUTIONS.payback,
    next: `gablewatt choose-size ${context.args[0] ?? 'project.yaml'}`,
  }
  return { report }
}

/** The bill of `--use`; without a stated price it has to have a total. */
async function earlierBill(
  context: CommandContext,
  statedUsd: number | undefined,
): Promise<Pick<EarlierResults, 'bom'>> {
  const bom = (await context.earlier('bom')) as Result<BomValues> | undefined
  if (bom !== undefined && statedUsd === undefined && totalOf(bom) === null) {
    throw new UsageError(
      '--use: the bill of materials lacks prices, so it has no total; complete the price list and make it again',
    )
  }
  return { bom }
}

function withScenarios(
  result: Result<PaybackValues>,
  scenarios: readonly Scenario[],
): Result<PaybackValues & { readonly versus?: readonly Scenario['values'][] }> {
  if (scenarios.length === 0) return result
  const told = scenarios.flatMap(({ values, findings }) =>
    findings
      .filter(({ severity }) => severity !== 'note')
      .map((finding) => ({ ...finding, where: '', message: `in ${values.scenario}: ${finding.message}` })),
  )
  return {
    ...result,
    findings: [...result.findings, ...told],
    values: { ...result.values, versus: scenarios.map(({ values }) => values) },
  }
}
