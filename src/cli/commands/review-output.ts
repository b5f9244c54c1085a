import { Option, type Command } from 'commander'
import type { ReviewValues } from '../../fieldwork/index.js'
import { LARGEST_METER_BYTES, LARGEST_WEATHER_BYTES, readNamedText, type Production } from '../../project/index.js'
import { UsageError } from '../errors.js'
import { houseOf } from '../house-of.js'
import { shareOf, takesProject, writesReport } from '../options.js'
import type { Report } from '../../report/index.js'
import { readStdin } from '../stdin.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'
import { sortFindings, type Finding, type Result } from '../../worksheet/index.js'
import { monthTable, reviewSections } from './review-sections.js'

export const examples: readonly [Example, Example, Example] = [
  { line: 'review-output project.yaml production.csv', does: 'whether these days gave what they should have given' },
  {
    line: 'review-output project.yaml meter.csv --meter cumulative --unit wh --clock local',
    does: 'a counter in Wh on a clock with daylight saving time',
  },
  {
    line: 'review-output project.yaml production.csv --weather year-2026.epw',
    does: 'against the measured weather of these very hours',
  },
]

interface Options {
  readonly weather?: string
  readonly failBelow?: number
  readonly calibrate?: true
  readonly report?: string
  readonly timeColumns?: string[]
  readonly valueColumn?: string
  readonly unit?: NonNullable<Production['unit']>
  readonly meter?: NonNullable<Production['meter']>
  readonly clock?: NonNullable<Production['clock']>
  readonly stampsMark?: NonNullable<Production['stamps_mark']>
  readonly dateOrder?: NonNullable<Production['date_order']>
}

export function configure(command: Command): void {
  writesReport(
    takesProject(command)
      .argument('<production.csv>', 'measured kWh of days, months or minutes; - is stdin')
      .option('--weather <file>', 'weather of these days: EPW, database, station, sensor')
      .option('--time-columns <names>', 'column of the time stamp, or two: Date,Time', (text) => text.split(','))
      .option('--value-column <name>', 'column of the production of the whole system')
      .addOption(new Option('--unit <unit>', 'unit of the values').choices(['kwh', 'wh', 'kw', 'w']))
      .addOption(new Option('--meter <kind>', 'kind of meter').choices(['interval', 'cumulative']))
      .addOption(new Option('--clock <kind>', 'clock of stamps').choices(['local', 'standard', 'utc']))
      .addOption(new Option('--stamps-mark <end>', 'end that is marked').choices(['beginning', 'ending']))
      .option('--calibrate', 'also say what these days tell of the estimate')
      .option('--report <file.pdf>', "also write the owner's page")
      .option('--fail-below <percent>', 'exit code 1 below this share of the expected, as 85%', shareOf)
      .addOption(new Option('--date-order <order>', 'in 03/04/2026').choices(['month_first', 'day_first'])),
  ).addHelpText(
    'after',
    '\nWhat is not declared here or under `production` is found and reported as assumed; exit code 1: a sure sign (99 %).',
  )
}

/** The result with an error when the present output is below the share that was asked for. */
function failingBelow(result: Result<ReviewValues>, percent: number | undefined): Result<ReviewValues> {
  const { performance_pct: performance, performance_low_pct: low, performance_high_pct: high } = result.values
  if (percent === undefined || performance >= percent) return result
  const finding: Finding = {
    severity: 'error',
    id: 'output.below-share',
    message: `the present output is ${performance.toFixed(1)} % of what is expected (80 % range by weather ${low.toFixed(0)} to ${high.toFixed(0)} %), below the ${percent} % asked for`,
    where: '',
    fix: 'see the signs above; without any, compare again with more days or with the weather of these days (--weather)',
  }
  return { ...result, findings: sortFindings([...result.findings, finding]) }
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const [projectPath, tablePath = '-'] = context.args
  if (projectPath === '-' && tablePath === '-')
    throw new UsageError('only one of project and table can come from stdin')
  const { project } = await context.project()
  const name = tablePath === '-' ? '<stdin>' : tablePath
  const text =
    tablePath === '-' ? await readStdin(LARGEST_METER_BYTES) : readNamedText(tablePath, LARGEST_METER_BYTES, 'latin1')
  const { weather: path } = options
  const weather =
    path === undefined ? undefined : { name: path, text: readNamedText(path, LARGEST_WEATHER_BYTES, 'latin1') }
  const house = await houseOf(context, [])
  const result = await house.output({
    table: { name, text },
    mapping: mappingOf(options),
    weather,
    calibrate: options.calibrate,
  })
  const report: Report = {
    title: `Measured production: ${project.title}`,
    stage: 'output',
    sections: reviewSections(result.values),
    csv: monthTable(result.values),
    result: failingBelow(result, options.failBelow),
    cautions: ['estimate'],
  }
  if (options.report === undefined) return { report }
  const { reviewPdf } = await import('../../papers/index.js')
  return { report, files: [{ path: options.report, content: await reviewPdf(project.title, result.values) }] }
}

function mappingOf(options: Options): Production {
  return {
    ...(options.timeColumns === undefined ? {} : { time_columns: options.timeColumns }),
    ...(options.valueColumn === undefined ? {} : { value_column: options.valueColumn }),
    ...(options.unit === undefined ? {} : { unit: options.unit }),
    ...(options.meter === undefined ? {} : { meter: options.meter }),
    ...(options.clock === undefined ? {} : { clock: options.clock }),
    ...(options.stampsMark === undefined ? {} : { stamps_mark: options.stampsMark }),
    ...(options.dateOrder === undefined ? {} : { date_order: options.dateOrder }),
  }
}
