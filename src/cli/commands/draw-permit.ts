import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { Option, type Command } from 'commander'
import {
  drawPacket,
  packetGaps,
  PAPER_SIZES,
  renderSvg,
  type PacketInput,
  type PaperName,
} from '../../drawings/index.js'
import { wiringOf, type WiringValues } from '../../electrical/index.js'
import { documentsOf, type LoadedProject } from '../../project/index.js'
import { arrangeModules, type Arrangement } from '../../roof/index.js'
import { spaceMounts, type MountValues } from '../../structure/index.js'
import { sortFindings, StageError, type Finding, type Result } from '../../worksheet/index.js'
import { DesignError, FileError } from '../errors.js'
import { takesProject, usesEarlier, writesFile } from '../options.js'
import { errnoWords } from '../output/errno.js'
import { readDocuments } from '../output/pdf-documents.js'
import { renderPacket } from '../output/pdf-packet.js'
import type { CommandContext, CommandOutcome, Example, OutputFile } from '../subcommand.js'

export const examples: readonly [Example, Example, Example] = [
  { line: 'draw-permit project.yaml --out packet.pdf', does: 'the packet for the building department' },
  {
    line: 'draw-permit project.yaml --draft --out draft.pdf',
    does: 'what there is so far, stamped DRAFT, with what fails',
  },
  {
    line: 'draw-permit project.yaml --size letter --svg sheets --out packet.pdf',
    does: 'on letter paper, each sheet as SVG too',
  },
]

interface Options {
  readonly size: PaperName
  readonly svg?: string
  readonly draft?: boolean
  readonly allowOutside?: boolean
}

/** Date of a draft whose project states none; a packet without a date is not drawn. */
const NO_DATE = '2000-01-01'

export function configure(command: Command): void {
  usesEarlier(
    writesFile(
      takesProject(command)
        .addOption(
          new Option('--size <paper>', 'paper of the drawings').choices(Object.keys(PAPER_SIZES)).default('11x17'),
        )
        .option('--svg <folder>', 'also write each sheet as SVG into this folder')
        .option('--draft', 'draw it although checks fail, stamped DRAFT, with what fails on G-001'),
    ),
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const packet = await preparePacket(context, options)
  const { errors, notes } = packet
  if (errors.length > 0 && options.draft !== true) throw notDrawn(errors)
  context.progress('drawing the sheets')
  const { pdf, sheets } = await packet.draw(options.draft === true)
  const files = options.svg === undefined ? [] : svgFiles(options.svg, sheets)
  return { document: pdf, files, notes, failed: errors.length > 0 }
}

/** A packet before it is drawn: what stops it, and its drawing, as a draft or not. */
export interface PreparedPacket {
  readonly errors: readonly Finding[]
  /** What of the person's documents could not be taken over as it was. */
  readonly notes: readonly string[]
  readonly draw: (
    draft: boolean,
  ) => Promise<{ readonly pdf: Uint8Array; readonly sheets: Parameters<typeof renderPacket>[0] }>
}

export async function preparePacket(
  context: CommandContext,
  options: Pick<Options, 'size' | 'allowOutside'>,
): Promise<PreparedPacket> {
  const loaded = await context.project()
  const { project, folder } = loaded
  const stated = documentsOf(project)
  const read = await readDocuments(
    folder,
    stated.map(({ file }) => file),
    options.allowOutside === true,
  )
  const documents = read.map((document, index) => ({ ...stated[index], ...document }))
  const input = await gather(context, loaded, options.size, documents)
  return {
    notes: documents.flatMap((document) => document.notes),
    errors: input.findings.filter((finding) => finding.severity === 'error'),
    draw: async (draft) => {
      const sheets = drawPacket({ ...input, draft })
      const facts = {
        title: project.title,
        author: project.parties?.preparer?.name ?? project.parties?.owner?.name ?? '',
        subject: 'Permit drawings of a photovoltaic system',
        date: project.document?.date ?? NO_DATE,
        language: 'en-US',
      }
      return { sheets, pdf: await renderPacket(sheets, documents, facts, draft) }
    },
  }
}

/** Runs the stages that the sheets are drawn from; what cannot run is a finding. */
async function gather(
  context: CommandContext,
  loaded: LoadedProject,
  size: PaperName,
  documents: PacketInput['documents'],
): Promise<Omit<PacketInput, 'draft'>> {
  const { project } = loaded
  const findings: Finding[] = []
  const attempt = <Value>(stage: string, part: unknown, work: () => Result<Value>): Result<Value> | undefined => {
    try {
      const result = work()
      findings.push(...result.findings)
      return result
    } catch (error) {
      if (!(error instanceof StageError)) throw error
      const what = part === undefined ? `the project has no part ${stage}` : error.message
      findings.push({
        severity: 'error',
        id: `permit.${stage}-cannot-run`,
        message: what,
        where: error.where,
        fix: error.fix,
      })
      return undefined
    }
  }
  const arrangement = arrangeModules(project)
  findings.push(...arrangement.findings)
  const [earlierMounts, earlierWiring] = [await context.earlier('mounts'), await context.earlier('wire')]
  const mounts = attempt(
    'structure',
    project.structure,
    () => (earlierMounts as Result<MountValues> | undefined) ?? mountsOf(loaded, arrangement.values),
  )
  const wiring = attempt(
    'electrical',
    project.electrical,
    () => (earlierWiring as Result<WiringValues> | undefined) ?? wiringOf(project),
  )
  const parts = { project, size, arrangement, mounts, wiring, documents }
  return { ...parts, findings: sortFindings([...packetGaps(parts), ...findings]) }
}

function mountsOf({ project, documents }: LoadedProject, { modules, planes }: Arrangement): Result<MountValues> {
  return spaceMounts(project, { modules, planes: Object.values(planes) }, { documents })
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

function svgFiles(folder: string, sheets: Parameters<typeof renderPacket>[0]): OutputFile[] {
  try {
    mkdirSync(folder, { recursive: true })
  } catch (error) {
    throw new FileError(`cannot make the folder ${folder}: ${errnoWords(error) ?? String(error)}`, { cause: error })
  }
  return sheets.map((sheet) => ({ path: join(folder, `${sheet.id}.svg`), content: renderSvg(sheet) }))
}
