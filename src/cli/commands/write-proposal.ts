import { Option, type Command } from 'commander'
import {
  PAGE_SIZES,
  PAPER_LANGUAGES,
  prepareProposal,
  readLogo,
  type PageSize,
  type PaperLanguage,
  type ProposalOptions,
  type ProposalValues,
} from '../../papers/index.js'
import { LARGEST_LOGO_BYTES, readNamedBytes } from '../../project/index.js'
import type { Finding, Result } from '../../worksheet/index.js'
import { DesignError, UsageError } from '../errors.js'
import { houseOf } from '../house-of.js'
import { takesProject, usesEarlier, writesReport, type ReportOptions } from '../options.js'
import type { CommandContext, CommandOutcome, Example, OutputFile } from '../subcommand.js'
import { draftNotes } from './paper-outcome.js'
import { runScenario, type Scenario } from './payback-versus.js'
import { proposalSections, disclosureTable } from './proposal-sections.js'

export const examples: readonly [Example, Example, Example, Example] = [
  { line: 'write-proposal project.yaml --out proposal.pdf', does: 'the written offer for the customer' },
  {
    line: 'write-proposal project.yaml --lang es --html offer.html --out offer.pdf',
    does: 'in Spanish, and as a web page that needs no network',
  },
  {
    line: 'write-proposal project.yaml --versus smaller.yaml --detail groups --logo logo.svg --out offer.pdf',
    does: 'with another design beside it, costs by group and your own sign',
  },
  { line: 'write-proposal project.yaml --check', does: 'what the offer says, and which disclosures are missing' },
]

interface Options extends ReportOptions {
  readonly set: readonly string[]
  readonly allowOutside?: boolean
  readonly check?: boolean
  readonly html?: string
  readonly lang?: PaperLanguage
  readonly paper: PageSize
  readonly detail?: ProposalOptions['detail']
  readonly versus: readonly string[]
  readonly logo?: string
}

export function configure(command: Command): void {
  usesEarlier(
    writesReport(
      takesProject(command)
        .option('--html <file>', 'also write it as one web page that needs no network and no script')
        .addOption(
          new Option('--lang <language>', 'language of the offer; proposal.language when missing, else en').choices(
            PAPER_LANGUAGES,
          ),
        )
        .addOption(new Option('--paper <size>', 'paper of the PDF').choices(Object.keys(PAGE_SIZES)).default('letter'))
        .addOption(
          new Option('--detail <depth>', 'how deep the costs are told; wins over proposal.cost_detail').choices([
            'total',
            'groups',
            'lines',
          ]),
        )
        .option(
          '--versus <scenario>',
          'put another project file, or this one and path=value, beside it (repeatable, five at the most)',
          (value: string, before: readonly string[]) => [...before, value],
          [],
        )
        .option('--logo <file>', 'your own sign for the first page, PNG or SVG')
        .option('--check', 'print what the offer says and lacks, instead of drawing it'),
    ),
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  if (options.versus.length > 5) throw new UsageError('--versus: five options beside this one at the most')
  const loaded = await context.project()
  const isReport = options.check === true || options.json === true
  for (const key of ['csv', 'markdown', 'showWork'] as const)
    if (options[key] === true && !isReport)
      throw new UsageError(`--${key === 'showWork' ? 'show-work' : key} goes with --check`)
  if (isReport && options.html !== undefined)
    throw new UsageError('--html goes with the drawn offer, not with a report')
  const house = await houseOf(context, ['wire', 'mounts', 'bom'], { payTheBom: true })
  const scenarios: Scenario[] = []
  for (const text of options.versus) scenarios.push(await scenarioOf(text, options, context))
  const proposal = await prepareProposal(loaded, house, {
    tool: context.tool,
    language: options.lang,
    size: options.paper,
    detail: options.detail,
    options: scenarios.map(({ values, middleKwh }) => ({
      name: values.scenario,
      cost_usd: values.net_cost_usd,
      first_year_kwh: middleKwh,
      saved_first_year_usd: values.first_year_savings_usd,
      payback_years: values.simple_payback_years,
      npv_usd: values.npv_usd,
    })),
    logo: options.logo === undefined ? undefined : await logoOf(options.logo),
  })
  const { result } = proposal
  if (isReport) return reportOf(loaded.project.title, result)
  const errors = result.findings.filter(({ id, severity }) => severity === 'error' && id.startsWith('proposal.'))
  if (errors.length > 0) throw notWritten(errors)
  const files: OutputFile[] = options.html === undefined ? [] : [{ path: options.html, content: await proposal.html() }]
  return { document: await proposal.pdf(), files, notes: notesOf(result) }
}

const logoOf = async (path: string) => await readLogo(path, readNamedBytes(path, LARGEST_LOGO_BYTES, `logo '${path}'`))

async function scenarioOf(text: string, options: Options, { args, earlier }: CommandContext): Promise<Scenario> {
  const [path = ''] = args
  const bom = await earlier('bom')
  return await runScenario(text, {
    path,
    set: options.set,
    allowOutside: options.allowOutside,
    // The values of a file were checked against the schema of its stage when it was read.
    house: { earlier: { bom: bom as never }, wishes: { payTheBom: true } },
  })
}

function reportOf(title: string, result: Result<ProposalValues>): CommandOutcome {
  return {
    report: {
      title: `Proposal: ${title}`,
      stage: 'proposal',
      sections: proposalSections(result.values),
      csv: disclosureTable(result.values),
      cautions: ['estimate', 'money'],
      result,
    },
  }
}

/** What the offer lacks is told in one line for each kind of ask, and listed by --check. */
function notesOf({ values, findings }: Result<ProposalValues>): string[] {
  const own = findings.filter(({ id }) => id.startsWith('proposal.') && id !== 'proposal.disclosure-missing')
  const missing = values.disclosures.filter(({ state, ask }) => state === 'missing' && ask === 'must')
  const list = missing.map(({ id }) => id).join(', ')
  return [
    ...draftNotes(findings),
    ...own.map(({ message, fix }) => (fix === undefined ? message : `${message}. ${fix}`)),
    ...(missing.length === 0
      ? []
      : [
          `${missing.length === 1 ? 'a disclosure that the rules ask for is' : `${missing.length} disclosures that the rules ask for are`} missing: ${list}; --check tells where they go`,
        ]),
  ]
}

function notWritten(errors: readonly Finding[]): DesignError {
  const list = errors.map(
    ({ where, message, fix }) => `\n  - ${where}: ${message}${fix === undefined ? '' : `\n    fix: ${fix}`}`,
  )
  const count = errors.length === 1 ? 'one check fails' : `${errors.length} checks fail`
  return new DesignError(`the proposal is not written, because ${count}:${list.join('')}`)
}
