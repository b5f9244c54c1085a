import { Option, type Command } from 'commander'
import { stepTable, sweepAngle, type Sweep, type YieldValues } from '../../yield/index.js'
import { UsageError } from '../errors.js'
import { renderCsv, type Report, type Section, STAGE_CAUTIONS } from '../../report/index.js'
import { houseOf } from '../house-of.js'
import { takesProject, usesEarlier, writesReport } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'
import { own } from '../../values/index.js'
import { ladderSection, monthlyTable } from './yield-sections.js'

export const examples: readonly [Example, Example, Example] = [
  { line: 'estimate-yield project.yaml', does: 'month by month, with losses and how sure it is' },
  { line: 'estimate-yield project.yaml --sweep tilt --array south', does: 'what another tilt would give' },
  {
    line: 'estimate-yield project.yaml --hourly hours.csv --json',
    does: 'the course of the year, and all values for a script',
  },
]

interface Options {
  readonly hourly?: string
  readonly sweep?: 'tilt' | 'azimuth'
  readonly array?: string
}

export function configure(command: Command): void {
  usesEarlier(
    writesReport(
      takesProject(command)
        .option('--hourly <file>', 'also write the course of the year as CSV: hours of the weather file, or day types')
        .addOption(
          new Option('--sweep <angle>', 'yearly yield of one array against an angle').choices(['tilt', 'azimuth']),
        )
        .option('--array <id>', 'the array that --sweep turns; needed when there are several'),
    ),
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const { project, files } = await context.project()
  if (options.array !== undefined && options.sweep === undefined) {
    throw new UsageError('--array goes with --sweep tilt or --sweep azimuth')
  }
  const swept = options.sweep === undefined ? undefined : arrayToSweep(Object.keys(project.arrays), options.array)
  const house = await houseOf(context, options.hourly === undefined && swept === undefined ? ['yield'] : [])
  const result = await house.yield()
  const sweep =
    swept === undefined || options.sweep === undefined
      ? undefined
      : sweepAngle(project, files, await house.estimate(), swept, options.sweep)
  const report: Report = {
    title: `Energy estimate: ${project.title}`,
    stage: 'yield',
    sections: [...(sweep === undefined ? yieldSections(result.values) : sweepSections(sweep))],
    result: sweep === undefined ? result : { ...result, values: { ...result.values, sweep } },
    ...(sweep === undefined ? { csv: monthlyTable(result.values, false) } : {}),
    cautions: STAGE_CAUTIONS.yield,
    next: `gablewatt check-project ${context.args[0] ?? 'project.yaml'}`,
  }
  if (options.hourly === undefined) return { report }
  const table = stepTable(await house.estimate())
  return {
    report,
    files: [
      {
        path: options.hourly,
        content: renderCsv({ columns: table.headings.map((key) => ({ heading: key, key })), rows: table.rows }),
      },
    ],
  }
}

function arrayToSweep(ids: readonly string[], named: string | undefined): string {
  if (named !== undefined && !ids.includes(named)) {
    throw new UsageError(`--array ${named}: no such array; the project has ${ids.join(', ')}`)
  }
  const only = named ?? (ids.length === 1 ? ids[0] : undefined)
  if (only === undefined) throw new UsageError(`--sweep turns one array: add --array with one of ${ids.join(', ')}`)
  return only
}

function yieldSections(values: YieldValues): Section[] {
  const { annual, climate, uncertainty, exceedance, lifetime } = values
  return [
    {
      kind: 'facts',
      facts: [
        { label: 'Climate', value: climate.name },
        { label: 'Rated power', value: values.rated_kw, unit: 'kW', decimals: 2 },
        { label: 'Yearly yield', value: { value: annual.ac_kwh, tone: 'strong' }, unit: 'kWh' },
        { label: 'Per rated kW', value: annual.kwh_per_kw, unit: 'kWh/kW' },
        { label: 'Sun on level ground', value: annual.ghi_kwh_m2, unit: 'kWh/m2' },
        { label: 'Sun on the modules', value: annual.poa_kwh_m2, unit: 'kWh/m2' },
        { label: 'Performance ratio', value: annual.performance_ratio, decimals: 3 },
      ],
    },
    { kind: 'table', heading: 'Month by month', ...monthlyTable(values) },
    ...arraySections(values),
    ladderSection(values),
    {
      kind: 'table',
      heading: 'How sure it is',
      columns: [
        { heading: 'Exceeded in' },
        { heading: 'First year', unit: 'kWh' },
        { heading: 'Any year', unit: 'kWh' },
        { heading: 'Mean of years 1 to 10', unit: 'kWh' },
        { heading: `${lifetime.years} years together`, unit: 'kWh' },
      ],
      rows: (['p50_kwh', 'p90_kwh', 'p99_kwh'] as const).map((key) => [
        `${key.slice(1, 3)} % of cases (${key.slice(0, 3).toUpperCase()})`,
        exceedance.first_year[key],
        exceedance.any_year[key],
        exceedance.ten_year_mean[key],
        lifetime[key],
      ]),
    },
    {
      kind: 'list',
      items: [
        ...uncertainty.map(({ term, percent, why, source }) => `${term}: ${percent.toFixed(1)} % (${why}; ${source})`),
        `output falls by ${lifetime.degradation_pct_per_year} % a year with age`,
      ],
    },
  ]
}

function arraySections(values: YieldValues): Section[] {
  const ids = Object.keys(values.arrays)
  const shaded = ids.filter((id) => hasOwnShade(values, id))
  const table: Section = {
    kind: 'table',
    heading: 'By array',
    columns: [
      { heading: 'Array' },
      { heading: 'Modules' },
      { heading: 'Rated', unit: 'kW', decimals: 2 },
      { heading: 'Tilt', unit: 'deg', decimals: 1 },
      { heading: 'Azimuth', unit: 'deg' },
      { heading: 'On plane', unit: 'kWh/m2' },
      { heading: 'AC', unit: 'kWh' },
      { heading: 'AC per kW', unit: 'kWh/kW' },
    ],
    rows: Object.entries(values.arrays).map(([id, array]) => [
      id,
      array.modules,
      array.rated_kw,
      array.tilt_deg,
      array.azimuth_deg,
      array.annual.poa_kwh_m2,
      array.annual.ac_kwh,
      array.annual.kwh_per_kw,
    ]),
  }
  const modules: Section[] = shaded.map((id) => {
    const darkest = values.modules
      .filter((module) => module.array === id)
      .toSorted((a, b) => b.light_loss_pct + b.mismatch_loss_pct - a.light_loss_pct - a.mismatch_loss_pct)
      .slice(0, 5)
    return {
      kind: 'table',
      heading: `Most shaded modules of ${id}`,
      columns: [
        { heading: 'Module' },
        { heading: 'Light lost', unit: '%', decimals: 1 },
        { heading: 'By uneven shade', unit: '%', decimals: 1 },
        { heading: 'AC', unit: 'kWh' },
      ],
      rows: darkest.map((module) => [module.id, module.light_loss_pct, module.mismatch_loss_pct, module.ac_kwh]),
    }
  })
  return [table, ...modules]
}

/** Whether the modules of an array differ in shade enough to name the worst of them. */
function hasOwnShade(values: YieldValues, arrayId: string): boolean {
  const light = (own(values.arrays, arrayId)?.by_module ?? []).map((module) => module.light_pct)
  return Math.min(...light) < 99.5 && Math.max(...light) - Math.min(...light) > 0.05
}

function sweepSections(sweep: Sweep): Section[] {
  const name = sweep.axis === 'tilt' ? 'Tilt' : 'Azimuth'
  return [
    {
      kind: 'facts',
      heading: `Array ${sweep.array} against ${sweep.axis}`,
      facts: [
        { label: `${name} now`, value: sweep.now_deg, unit: 'deg', decimals: 1 },
        { label: 'Yearly yield now', value: sweep.now_kwh, unit: 'kWh' },
        { label: `Best ${sweep.axis}`, value: sweep.best_deg, unit: 'deg', decimals: 1 },
        { label: 'Yearly yield there', value: sweep.best_kwh, unit: 'kWh' },
      ],
    },
    {
      kind: 'plot',
      x: { label: name, unit: 'deg' },
      y: { label: 'AC', unit: 'kWh' },
      series: [{ name: sweep.array, points: sweep.points.map((point) => [point.angle_deg, point.ac_kwh] as const) }],
    },
    {
      kind: 'table',
      columns: [
        { heading: name, unit: 'deg' },
        { heading: 'AC', unit: 'kWh' },
        { heading: 'Of the best', unit: '%', decimals: 1 },
      ],
      rows: sweep.points.map((point) => [point.angle_deg, point.ac_kwh, (100 * point.ac_kwh) / sweep.best_kwh]),
    },
  ]
}
