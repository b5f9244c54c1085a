import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { Option, type Command } from 'commander'
import { drawPacket, PAPER_SIZES, renderSvg, type PaperName } from '../../drawings/index.js'
import type { House } from '../../house/index.js'
import { documentsOf, type LoadedProject } from '../../project/index.js'
import { StageError, type Finding } from '../../worksheet/index.js'
import { DesignError, FileError } from '../errors.js'
import { houseOf } from '../house-of.js'
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
  const house = await houseOf(context, ['mounts', 'wire'])
  const packet = await preparePacket(await context.project(), house, options)
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
  { project, folder }: LoadedProject,
  house: House,
  options: Pick<Options, 'size' | 'allowOutside'>,
): Promise<PreparedPacket> {
  const stated = documentsOf(project)
  const read = await readDocuments(
    folder,
    stated.map(({ file }) => file),
    options.allowOutside === true,
  )
  const documents = read.map((document, index) => ({ ...stated[index], ...document }))
  const input = await house.packet({ size: options.size, documents })
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
