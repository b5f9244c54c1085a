import { Option, type Command } from 'commander'
import { importRate, SOLAR_RULES, type ImportedRateValues, type RateAnswers } from '../../money/index.js'
import { LARGEST_METER_BYTES, readNamedText } from '../../project/index.js'
import type { Section } from '../../report/index.js'
import { isDay } from '../../values/index.js'
import type { Finding, Result } from '../../worksheet/index.js'
import { DesignError, UsageError } from '../errors.js'
import { numberIn, writesReport, type ReportOptions } from '../options.js'
import { readStdin } from '../stdin.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'

export const examples: readonly [Example, Example, Example] = [
  { line: 'import-rate rates.json', does: 'the tariff of the only record of a saved file, or the list of its records' },
  {
    line: 'import-rate rates.json --label 5a1b --settle annual --true-up-month 4 --out tariff.yaml',
    does: 'one of many, with what the record does not say',
  },
  { line: 'import-rate rates.json --label 5a1b --anyway', does: 'without what cannot be carried over' },
]

interface Options extends ReportOptions {
  readonly label?: string
  readonly anyway?: boolean
  readonly tiersCount?: RateAnswers['tiersCount']
  readonly solar?: RateAnswers['solar']
  readonly sell?: number
  readonly settle?: RateAnswers['settle']
  readonly trueUpMonth?: number
  readonly surplus?: number
  readonly on?: string
  readonly serviceVersion?: string
  readonly downloaded?: string
}

const usd = numberIn({ min: 0, max: 10 })

export function configure(command: Command): void {
  writesReport(
    command
      .argument('<rates.json>', 'a saved answer of the database, a list or a record; - for stdin')
      .option('--label <id>', 'label or name of the record')
      .option('--anyway', 'leave out what no key can hold')
      .addOption(
        new Option('--tiers-count <what>', 'what tiers by period count').choices(['whole_bill', 'each_period']),
      )
      .addOption(new Option('--solar <rule>', 'rule for solar customers').choices(Object.keys(SOLAR_RULES)))
      .option('--sell <usd>', 'price of an exported kWh, USD', usd)
      .addOption(new Option('--settle <when>', 'when banks are settled').choices(['monthly', 'annual']))
      .option('--true-up-month <n>', 'month of the true-up bill', numberIn({ min: 1, max: 12, whole: true }))
      .option('--surplus <usd>', 'paid for a left-over kWh, USD', usd)
      .option('--on <day>', 'day for which it has to hold; today when missing')
      .option('--service-version <n>', 'version of the service, for the line of the source')
      .option('--downloaded <day>', 'day of the download, for the line of the source'),
  )
}

export async function run({ args }: CommandContext, options: Options): Promise<CommandOutcome> {
  const [path = '-'] = args
  const file = path === '-' ? '<stdin>' : path
  const text = path === '-' ? await readStdin(LARGEST_METER_BYTES) : readNamedText(path, LARGEST_METER_BYTES)
  const { label } = options
  const result = importRate({ file, text, ...(label === undefined ? {} : { label }), answers: answersOf(options) })
  const { yaml } = result.values
  const wantsReport = options.json === true || options.csv === true || options.markdown === true
  if (yaml !== null && !wantsReport && options.showWork !== true)
    return { document: yaml, notes: result.findings.map(say) }
  if (yaml === null && !wantsReport && options.out !== undefined && options.out !== '-')
    throw new DesignError(
      ['nothing was written:', ...result.findings.filter(({ severity }) => severity === 'error').map(say)].join('\n  '),
    )
  return { report: { title: titleOf(result), stage: 'rate', sections: sectionsOf(result.values), result } }
}

function answersOf(options: Options): RateAnswers {
  for (const [name, day] of [
    ['--on', options.on],
    ['--downloaded', options.downloaded],
  ] as const)
    if (day !== undefined && !isDay(day)) throw new UsageError(`${name} ${day}: write a day as year-month-day`)
  const { anyway, tiersCount, solar, sell, settle, trueUpMonth, surplus, serviceVersion, downloaded } = options
  return {
    // The one clock of this program: a rate that has ended says so without being asked.
    on: options.on ?? new Date().toISOString().slice(0, 10),
    ...(anyway === undefined ? {} : { anyway }),
    ...(tiersCount === undefined ? {} : { tiersCount }),
    ...(solar === undefined ? {} : { solar }),
    ...(sell === undefined ? {} : { sellUsdPerKwh: sell }),
    ...(settle === undefined ? {} : { settle }),
    ...(trueUpMonth === undefined ? {} : { trueUpMonth }),
    ...(surplus === undefined ? {} : { surplusUsdPerKwh: surplus }),
    ...(serviceVersion === undefined ? {} : { version: serviceVersion }),
    ...(downloaded === undefined ? {} : { downloaded }),
  }
}

const say = ({ severity, message, fix = '' }: Finding): string => `${severity}: ${message}. ${fix}`

function titleOf({ values }: Result<ImportedRateValues>): string {
  const { file, records, label, yaml } = values
  if (label === null) return `Rates of ${file}: ${records.length}`
  return yaml === null ? `Rate ${label} of ${file}: not written` : `Rate ${label} of ${file}`
}

function sectionsOf({ records, label, yaml }: ImportedRateValues): Section[] {
  const shown = label === null ? records : records.filter((one) => one.label === label)
  const list: Section = {
    kind: 'table',
    columns: ['Label', 'Utility', 'Name', 'Sector', 'From', 'To', 'Approved'].map((heading) => ({ heading })),
    rows: shown.map((one) => [
      one.label,
      one.utility,
      one.name,
      one.sector,
      one.from,
      one.to,
      one.approved ? 'yes' : 'no',
    ]),
  }
  return yaml === null ? [list] : [list, { kind: 'drawing', heading: 'Tariff', text: yaml.trimEnd() }]
}
