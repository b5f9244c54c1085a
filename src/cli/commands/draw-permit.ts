import { join } from 'node:path'
import { Option, type Command } from 'commander'
import { PAPER_SIZES, renderDxf, renderSvg, type PaperName, type Sheet } from '../../drawings/index.js'
import { makeFolder } from '../../files/index.js'
import { preparePacket } from '../../packet/index.js'
import { StageError, type Finding } from '../../worksheet/index.js'
import { DesignError } from '../errors.js'
import { houseOf } from '../house-of.js'
import { takesProject, usesEarlier, writesFile } from '../options.js'
import type { CommandContext, CommandOutcome, Example, OutputFile } from '../subcommand.js'

export const examples: readonly [Example, Example, Example] = [
  { line: 'draw-permit project.yaml --out packet.pdf', does: 'the packet for the building department' },
  {
    line: 'draw-permit project.yaml --draft --out draft.pdf',
    does: 'what there is so far, stamped DRAFT, with what fails',
  },
  {
    line: 'draw-permit project.yaml --size letter --svg sheets --dxf cad --out packet.pdf',
    does: 'on letter paper, each sheet as SVG and as DXF too',
  },
]

interface Options {
  readonly size: PaperName
  readonly svg?: string
  readonly dxf?: string
  readonly draft?: boolean
  readonly threeLine?: boolean
  readonly allowOutside?: boolean
}

export function configure(command: Command): void {
  usesEarlier(
    writesFile(
      takesProject(command)
        .addOption(
          new Option('--size <paper>', 'paper of the drawings').choices(Object.keys(PAPER_SIZES)).default('11x17'),
        )
        .option('--svg <folder>', 'also write each sheet as SVG into this folder')
        .option('--dxf <folder>', 'also write each sheet as DXF for a CAD program into this folder')
        .option('--three-line', 'with a three-line diagram, sheet E-605, as drawings.three_line asks for')
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
  const files = [
    ...sheetFiles(options.svg, 'svg', sheets, (sheet) => renderSvg(sheet)),
    ...sheetFiles(options.dxf, 'dxf', sheets, renderDxf),
  ]
  return { document: pdf, files, notes, failed: errors.length > 0 }
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
