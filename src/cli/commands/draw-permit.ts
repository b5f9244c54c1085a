import { join } from 'node:path'
import { Option, type Command } from 'commander'
import { PAPER_SIZES, renderDxf, renderSvg, type PaperName, type Sheet } from '../../drawings/index.js'
import { makeFolder } from '../../files/index.js'
import { sealed } from '../../seal/index.js'
import { preparePacket, readRecord } from '../../packet/index.js'
import { inWorker } from '../../project/foreign/index.js'
import { LARGEST_YAML_BYTES, readComments, readNamedText } from '../../project/index.js'
import { StageError, type Finding } from '../../worksheet/index.js'
import { DesignError, UsageError } from '../errors.js'
import type { House } from '../../house/index.js'
import { houseOf } from '../house-of.js'
import { takesProject, usesEarlier, writesReport, type ReportOptions } from '../options.js'
import { auditSections, auditTable } from './audit-sections.js'
import type { CommandContext, CommandOutcome, Example, OutputFile } from '../subcommand.js'

export const examples: readonly [Example, Example, Example, Example, Example] = [
  { line: 'draw-permit project.yaml --out packet.pdf', does: 'the packet for the building department' },
  {
    line: 'draw-permit project.yaml --draft --out draft.pdf',
    does: 'what there is so far, stamped DRAFT, with what fails',
  },
  {
    line: 'draw-permit project.yaml --size letter --svg sheets --dxf cad --out packet.pdf',
    does: 'on letter paper, each sheet as SVG and as DXF too',
  },
  { line: 'draw-permit project.yaml --audit', does: 'what a reviewer will miss, point by point' },
  {
    line: 'draw-permit project.yaml --since issue-a.json --comments answers.yaml --out b.pdf',
    does: 'the next issue, with clouds and answers',
  },
]

interface Options extends ReportOptions {
  readonly audit?: boolean
  readonly size?: PaperName
  readonly svg?: string
  readonly dxf?: string
  readonly draft?: boolean
  readonly threeLine?: boolean
  readonly report?: string
  readonly result?: string
  readonly since?: string
  readonly comments?: string
  readonly allowOutside?: boolean
}

export function configure(command: Command): void {
  usesEarlier(
    writesReport(
      takesProject(command)
        .addOption(
          new Option(
            '--size <paper>',
            "paper of the drawings; when left out, that of the authority's file, else 11x17",
          ).choices(Object.keys(PAPER_SIZES)),
        )
        .option('--svg <folder>', 'also write each sheet as SVG into this folder')
        .option('--dxf <folder>', 'also write each sheet as DXF for a CAD program into this folder')
        .option('--three-line', 'with a three-line diagram, sheet E-605, as drawings.three_line asks for')
        .option(
          '--report <file>',
          "also write the preparer's report (PDF): sources, assumptions, what to confirm; not to be filed",
        )
        .option('--result <file>', 'also write what the sheets say (JSON), for --since of the next issue')
        .option('--since <file>', 'put clouds round what changed since an issue that --result kept')
        .option('--comments <file>', "bind in a sheet with a plan reviewer's comments and the answers to them (YAML)")
        .option('--audit', 'hold the packet against what its reviewer asks for, point by point, instead of drawing it')
        .option('--draft', 'draw it although checks fail, stamped DRAFT, with what fails on G-001'),
    ),
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const house = await houseOf(context, ['mounts', 'wire'])
  if (options.audit === true) return await auditOutcome(context, house, options)
  for (const key of ['json', 'csv', 'markdown', 'showWork'] as const)
    if (options[key] === true)
      throw new UsageError(`--${key === 'showWork' ? 'show-work' : key} prints the audit; add --audit`)
  const since = options.since === undefined ? undefined : readRecord(options.since)
  const packet = await preparePacket(await context.project(), house, {
    size: options.size,
    allowOutside: options.allowOutside,
    threeLine: options.threeLine,
    tool: context.tool,
    foreign: inWorker(),
    since,
    comments: options.comments === undefined ? undefined : commentsOf(options.comments),
  })
  const { errors, notes } = packet
  if (errors.length > 0 && options.draft !== true) throw notDrawn(errors)
  context.progress('drawing the sheets')
  const { pdf, sheets, record, changed } = await packet.draw(options.draft === true)
  const files = [
    ...sheetFiles(options.svg, 'svg', sheets, (sheet) => renderSvg(sheet)),
    ...sheetFiles(options.dxf, 'dxf', sheets, renderDxf),
  ]
  if (options.report !== undefined) files.push({ path: options.report, content: await packet.report() })
  if (options.result !== undefined)
    files.push({ path: options.result, content: `${JSON.stringify(sealed(record), undefined, 1)}\n` })
  return { document: pdf, files, notes: [...notes, ...changed], failed: errors.length > 0 }
}

const commentsOf = (path: string) => readComments(path, readNamedText(path, LARGEST_YAML_BYTES))

/** The audit as a report; what is drawn beside the packet has no place there. */
async function auditOutcome(context: CommandContext, house: House, options: Options): Promise<CommandOutcome> {
  for (const key of ['svg', 'report', 'result', 'since', 'comments'] as const)
    if (options[key] !== undefined) throw new UsageError(`--${key} goes with the drawn packet, not with --audit`)
  if (options.draft === true) throw new UsageError('--draft goes with the drawn packet, not with --audit')
  const loaded = await context.project()
  const packet = await preparePacket(loaded, house, {
    size: options.size,
    allowOutside: options.allowOutside,
    foreign: inWorker(),
  })
  const result = await house.audit(packet.wishes)
  return {
    report: {
      title: `Audit of the permit packet: ${loaded.project.title}`,
      stage: 'audit',
      sections: auditSections(result.values),
      csv: auditTable(result.values),
      result,
    },
  }
}

/** What the project lacks is an unfinished project, exit code 2; when all is there and a check fails, that is 1. */
function notDrawn(errors: readonly Finding[]): StageError | DesignError {
  const list = errors
    .map((finding) => `\n  - ${finding.where === '' ? '' : `${finding.where}: `}${finding.message}`)
    .join('')
  const count = errors.length === 1 ? 'one check fails' : `${errors.length} checks fail`
  const message = `the packet is not drawn, because ${count}:${list}`
  const fix = 'Mend them, or draw what there is with --draft.'
  const isUnfinished = errors.some(({ id }) => id.startsWith('permit.'))
  return isUnfinished ? new StageError('', message, fix) : new DesignError(`${message}\n  fix: ${fix}`)
}

function sheetFiles(
  folder: string | undefined,
  ending: string,
  sheets: readonly Sheet[],
  render: (sheet: Sheet) => string,
): OutputFile[] {
  if (folder === undefined) return []
  makeFolder(folder)
  return sheets.map((sheet) => ({ path: join(folder, `${sheet.id}.${ending}`), content: render(sheet) }))
}
