import { Option, type Command } from 'commander'
import type { Project } from '../../project/index.js'
import { textPlan, type Arrangement, type FitRank } from '../../roof/index.js'
import type { MountValues } from '../../structure/index.js'
import type { Finding, Result } from '../../worksheet/index.js'
import { type Section, STAGE_CAUTIONS } from '../../report/index.js'
import { houseOf } from '../house-of.js'
import { numberIn, takesProject, usesEarlier, writesReport } from '../options.js'
import type { CommandContext, CommandOutcome, Example, OutputFile } from '../subcommand.js'
import { layoutSections } from './layout-sections.js'
import { mountSections, mountTable } from './mount-sections.js'
import { feetOf } from '../../values/index.js'

export const examples: readonly [Example, Example, Example] = [
  {
    line: 'space-mounts project.yaml --plan --svg roof.svg',
    does: 'every mount on its rafter, with plans of the roof',
  },
  { line: 'space-mounts project.yaml --spacing 48', does: 'whether a wished spacing passes' },
  { line: 'space-mounts project.yaml --optimise --csv', does: 'the fewest mounts that pass, as a list' },
]

interface Options {
  readonly spacing?: number
  readonly optimise?: boolean
  readonly rank?: FitRank
  readonly plan?: boolean
  readonly svg?: string
  readonly loadSheet?: string
}

export function configure(command: Command): void {
  usesEarlier(
    writesReport(
      takesProject(command)
        .option(
          '--spacing <inches>',
          'check this largest distance between mounts instead of the largest that passes',
          numberIn({ min: 6, max: 144 }),
        )
        .option('--optimise', 'look for the fewest mounts that pass on this rafter grid')
        .addOption(
          new Option(
            '--rank <first>',
            'lay arrays that are fitted by most energy, by fewest mounts or by least cost a module',
          ).choices(['energy', 'mounts', 'cost']),
        )
        .option('--plan', 'also draw a plan of each roof plane in characters')
        .option('--load-sheet <file.pdf>', 'also write the loads on rafters or trusses for their engineer')
        .option('--svg <file>', 'also write the roof plan to scale; with several planes one file each, named by sheet'),
    ),
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const { project } = await context.project()
  const { spacing, optimise, rank } = options
  const isWish = spacing !== undefined || optimise !== undefined || rank !== undefined
  const wishes = {
    ...(spacing === undefined ? {} : { spacingIn: spacing }),
    ...(optimise === undefined ? {} : { optimise }),
  }
  const house = await houseOf(context, isWish ? [] : ['mounts'], isWish ? { mounts: wishes } : {})
  const arrangement = await house.roof()
  const result = await house.mounts()
  const layouts = await house.layouts()
  const values = layouts.length === 0 ? result.values : { ...result.values, alternatives: layouts }
  const files = options.svg === undefined ? [] : await roofPlans(options.svg, project, arrangement, result)
  if (options.loadSheet !== undefined) {
    const { loadSheetPdf } = await import('../../packet/index.js')
    files.push({ path: options.loadSheet, content: await loadSheetPdf(project, house) })
  }
  return {
    files,
    report: {
      title: `Mounts: ${project.title}`,
      stage: 'mounts',
      sections: [
        ...mountSections(result.values),
        ...layoutSections(layouts),
        ...(options.plan === true ? plans(arrangement.values, result.values) : []),
      ],
      csv: mountTable(result.values),
      result: { ...result, values, findings: [...byOption(options), ...result.findings] },
      cautions: STAGE_CAUTIONS.mounts,
      ...(rank === undefined ? {} : { inPlaceOfProject: [`--rank ${rank}`] }),
    },
  }
}

/** What no project file states stays with the result, whatever is made of it by --use. */
function byOption({ spacing, optimise }: Options): Finding[] {
  const by = [
    ...(spacing === undefined ? [] : [`--spacing ${spacing} in`]),
    ...(optimise === true ? ['--optimise'] : []),
  ]
  if (by.length === 0) return []
  const message = `the mounts are those of ${by.join(' and ')}, which the project file does not state`
  return [{ severity: 'note', id: 'mounts.by-option', message, where: '' }]
}

/** The roof plan sheets of the permit packet, as SVG to scale. */
async function roofPlans(
  path: string,
  project: Project,
  arrangement: Result<Arrangement>,
  mounts: Result<MountValues>,
): Promise<OutputFile[]> {
  const { drawPacket, isUnconfirmed, renderSvg } = await import('../../drawings/index.js')
  const draft = mounts.findings.some(isUnconfirmed)
  const sheets = drawPacket({ project, size: '11x17', draft, arrangement, mounts, documents: [], findings: [] })
  const plans = sheets.filter((sheet) => sheet.id.startsWith('A-'))
  const stem = path.replace(/\.svg$/iu, '')
  return plans.map((sheet) => ({
    path: plans.length === 1 ? path : `${stem}-${sheet.id}.svg`,
    content: renderSvg(sheet),
  }))
}

function plans(arrangement: Arrangement, values: MountValues): Section[] {
  return Object.values(arrangement.planes)
    .filter((plane) => arrangement.modules.some((module) => module.roofPlane === plane.id))
    .map((plane) => {
      const marks = values.mounts
        .filter((mount) => mount.plane === plane.id)
        .map((mount) => ({ xFt: feetOf(mount.x_in), yFt: feetOf(mount.y_in), character: 'o' }))
      return {
        kind: 'drawing',
        heading: `Plan of ${plane.id}: # = modules, o mounts, X obstructions, : kept free`,
        text: textPlan(plane, arrangement.modules, marks, 76),
      }
    })
}
