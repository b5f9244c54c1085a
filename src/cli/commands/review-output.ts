import { Option, type Command } from 'commander'
import { readFileSync } from 'node:fs'
import {
  productionLimits,
  readProduction,
  reviewProduction,
  weatherOfDays,
  type ReviewValues,
} from '../../fieldwork/index.js'
import { ProjectError, type Production } from '../../project/index.js'
import { runYield } from '../../yield/index.js'
import { FileError, UsageError } from '../errors.js'
import { takesProject, writesReport } from '../options.js'
import { errnoWords } from '../output/errno.js'
import type { Report, Section } from '../output/report.js'
import { readStdin } from '../stdin.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'

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
      .argument(
        '<production.csv>',
        'measured production, or - for stdin: days, months, or intervals of 1 to 60 minutes',
      )
      .option('--weather <file.epw>', 'hourly weather of the measured year, in place of the long-term kinds of day')
      .option('--time-columns <names>', 'column of the time stamp, or two parted by a comma: Date,Time', (text) =>
        text.split(','),
      )
      .option('--value-column <name>', 'column of the production of the whole system')
      .addOption(new Option('--unit <unit>', 'unit of the values').choices(['kwh', 'wh', 'kw', 'w']))
      .addOption(
        new Option('--meter <kind>', 'energy of each row, or a counter that rises').choices(['interval', 'cumulative']),
      )
      .addOption(new Option('--clock <kind>', 'clock of the stamps').choices(['local', 'standard', 'utc']))
      .addOption(
        new Option('--stamps-mark <end>', 'what a stamp marks of its interval').choices(['beginning', 'ending']),
      )
      .addOption(new Option('--date-order <order>', 'order in 03/04/2026').choices(['month_first', 'day_first'])),
  ).addHelpText(
    'after',
    '\nWhat is not declared (here, or under `production` in the project file) is found from the table and reported as assumed.',
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const [projectPath, tablePath = '-'] = context.args
  if (projectPath === '-' && tablePath === '-')
    throw new UsageError('only one of project and table can come from stdin')
  const { project, files } = await context.project()
  const name = tablePath === '-' ? '<stdin>' : tablePath
  const text = tablePath === '-' ? await readStdin() : readText(tablePath)
  const estimate = runYield(project, files)
  const read = readProduction(
    name,
    text,
    { ...project.production, ...mappingOf(options) },
    productionLimits(project, estimate),
  )
  if (read.problems !== undefined) throw new ProjectError(read.problems, 2, new Map([[name, text]]))
  const { series } = read
  const { weather: weatherPath } = options
  const weather =
    weatherPath === undefined ? undefined : weatherOfDays(project, weatherPath, readText(weatherPath), series)
  const result = reviewProduction({ project, run: estimate, series, ...(weather === undefined ? {} : { weather }) })
  const report: Report = {
    title: `Measured production: ${project.title}`,
    stage: 'output',
    sections: reviewSections(result.values),
    csv: monthTable(result.values),
    result,
    cautions: ['estimate'],
  }
  return { report }
}

/** Text of a table or weather file of a stranger: UTF-8, or Latin-1 where it is not. */
function readText(path: string): string {
  let bytes: Uint8Array
  try {
    bytes = readFileSync(path)
  } catch (error) {
    throw new FileError(`cannot read ${path}: ${errnoWords(error) ?? String(error)}`, { cause: error })
  }
  if (bytes.includes(0)) throw new UsageError(`${path} is not a text file; export it as CSV in UTF-8`)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
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

function reviewSections(values: ReviewValues): Section[] {
  const { period, expected, projection } = values
  const range = (low: number, high: number): string => `${low.toFixed(0)} to ${high.toFixed(0)}`
  const isLongTerm = values.basis === 'long_term_days'
  return [
    {
      kind: 'facts',
      facts: [
        {
          label: 'Days compared',
          value: `${period.days_counted} (${period.from} to ${period.to}, ${period.days_missing} missing)`,
        },
        { label: 'Measured', value: { value: values.measured_kwh, tone: 'strong' }, unit: 'kWh', decimals: 1 },
        {
          label: isLongTerm ? 'Expected of such days' : 'Modelled for this weather',
          value: expected.mean_kwh,
          unit: 'kWh',
          decimals: 1,
        },
        { label: 'Measured over expected', value: 100 * values.measured_over_expected, unit: '%', decimals: 1 },
        ...(isLongTerm
          ? [
              {
                label: '80 % range by weather luck alone',
                value: range(expected.weather_p10_kwh, expected.weather_p90_kwh),
                unit: 'kWh',
              },
            ]
          : []),
        {
          label: isLongTerm ? '80 % range with how sure the method is' : '80 % range of the method',
          value: range(expected.p10_kwh, expected.p90_kwh),
          unit: 'kWh',
        },
        { label: 'Percentile of what was measured', value: values.percentile, decimals: 0 },
        ...(values.percentile_of_weather === null
          ? []
          : [{ label: 'Percentile by weather alone', value: values.percentile_of_weather, decimals: 0 }]),
      ],
    },
    ...courseSection(values),
    { kind: 'table', heading: 'Month by month (counted days only)', ...monthTable(values) },
    {
      kind: 'table',
      heading: 'Projected: measured days as measured, the others as expected over many years',
      columns: [
        { heading: 'From' },
        { heading: 'To' },
        { heading: 'Measured', unit: 'kWh' },
        { heading: 'Days left' },
        { heading: 'Expected of them', unit: 'kWh' },
        { heading: 'Projected', unit: 'kWh' },
        { heading: '80 % range', unit: 'kWh', align: 'right' },
      ],
      rows: [projection.month, projection.year].map((each) => [
        each.from,
        each.to,
        each.measured_kwh,
        each.days_remaining,
        each.expected_rest_kwh,
        each.projected_kwh,
        range(each.p10_kwh, each.p90_kwh),
      ]),
    },
    ...moduleSection(values),
  ]
}

function courseSection({ cumulative }: ReviewValues): Section[] {
  const [first] = cumulative
  if (first === undefined || cumulative.length < 3) return []
  const start = Date.parse(first.date)
  const dayOf = (date: string): number => Math.round((Date.parse(date) - start) / 86_400_000) + 1
  const series = (name: string, pick: (point: (typeof cumulative)[number]) => number) => ({
    name,
    points: cumulative.map((point) => [dayOf(point.date), pick(point)] as const),
  })
  return [
    {
      kind: 'plot',
      heading: 'Measured so far against the 80 % range',
      x: { label: `Day from ${first.date}` },
      y: { label: 'Energy', unit: 'kWh' },
      series: [
        series('measured', (point) => point.measured_kwh),
        series('expected', (point) => point.expected_kwh),
        series('high end', (point) => point.p90_kwh),
        series('low end', (point) => point.p10_kwh),
      ],
    },
  ]
}

function monthTable(values: ReviewValues) {
  return {
    columns: [
      { heading: 'Month' },
      { heading: 'Days' },
      { heading: 'Measured', unit: 'kWh', decimals: 1 },
      { heading: 'Expected', unit: 'kWh', decimals: 1 },
      { heading: 'Low end', unit: 'kWh', decimals: 1 },
      { heading: 'High end', unit: 'kWh', decimals: 1 },
      { heading: 'Percentile' },
    ],
    rows: values.months.map((month) => [
      month.month,
      month.days_counted,
      month.measured_kwh,
      month.mean_kwh,
      month.p10_kwh,
      month.p90_kwh,
      month.percentile,
    ]),
  }
}

function moduleSection({ modules }: ReviewValues): Section[] {
  if (modules.length === 0) return []
  return [
    {
      kind: 'table',
      heading: 'Modules against their neighbours',
      columns: [
        { heading: 'Module' },
        { heading: 'Measured', unit: 'kWh', decimals: 1 },
        { heading: 'Of what its place should give', unit: '%' },
        { heading: 'Nothing since' },
      ],
      rows: modules.map((module) => [module.id, module.measured_kwh, module.relative_pct, module.dead_since]),
    },
  ]
}
