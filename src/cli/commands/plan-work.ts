import type { Command } from 'commander'
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { renderPdf } from '../../drawings/index.js'
import {
  cautionWords,
  planMarkdown,
  planSheets,
  quantityText,
  stateText,
  tape,
  type WorkPlanValues,
} from '../../fieldwork/index.js'
import type { Project } from '../../project/index.js'
import { type CautionSubject, cautionTexts, type Report, type Section } from '../../report/index.js'
import { houseOf } from '../house-of.js'
import { numberIn, takesProject, writesReport, type ReportOptions } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'

export const examples: readonly [Example, Example, Example] = [
  { line: 'plan-work project.yaml', does: 'every step with its numbers, inspections and stops' },
  {
    line: 'plan-work project.yaml --cell-temperature 31 --pdf plan.pdf',
    does: 'to print, with the voltages of a module at 31 C',
  },
  { line: 'plan-work project.yaml --markdown --out plan.md', does: 'as task lists' },
]

interface Options extends ReportOptions {
  readonly pdf?: string
  readonly cellTemperature?: number
}

const CAUTIONS: readonly CautionSubject[] = [
  'height',
  'live-conductors',
  'authority',
  'electrician',
  'structural-engineer',
]

export function configure(command: Command): void {
  writesReport(
    takesProject(command)
      .option(
        '--cell-temperature <C>',
        'temperature of the cells today, deg C, for the voltages to expect',
        numberIn({ min: -50, max: 90 }),
      )
      .option('--pdf <file>', 'also write the plan as PDF, letter size, with boxes to tick'),
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  const { project } = await context.project()
  const house = await houseOf(context, [], { cellC: options.cellTemperature })
  const result = await house.work()
  const gaps = result.findings.filter((finding) => finding.severity !== 'note').map((finding) => finding.message)
  const outFiles =
    options.pdf === undefined ? [] : [{ path: options.pdf, content: await pdfOf(project, result.values, gaps) }]
  const failed = result.findings.some((finding) => finding.severity === 'error')
  if (options.markdown === true) {
    return {
      document: planMarkdown(`Work plan: ${project.title}`, result.values, cautionTexts(CAUTIONS), gaps),
      failed,
      files: outFiles,
    }
  }
  const report: Report = {
    title: `Work plan: ${project.title}`,
    stage: 'work',
    sections: planSections(result.values),
    csv: taskTable(result.values),
    result,
    cautions: CAUTIONS,
  }
  return { report, files: outFiles }
}

async function pdfOf(project: Project, values: WorkPlanValues, gaps: readonly string[]): Promise<Uint8Array> {
  const { resolve } = createRequire(import.meta.url)
  const font = (name: string): Uint8Array => readFileSync(resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`))
  const date = project.document?.date ?? 'not dated'
  const sheets = planSheets(project.title, date, values, cautionTexts(CAUTIONS), gaps)
  return await renderPdf(
    sheets,
    { plain: font('DejaVuSansCondensed'), bold: font('DejaVuSansCondensed-Bold') },
    {
      title: `Work plan: ${project.title}`,
      author: project.parties?.owner?.name ?? '',
      subject: 'Work plan',
      // The file needs a date, and none may come from the clock.
      date: project.document?.date ?? '2000-01-01',
      language: 'en-US',
    },
  )
}

function planSections(values: WorkPlanValues): Section[] {
  return [
    ...values.steps.flatMap((step, index): Section[] => [
      {
        kind: 'list',
        heading: `${index + 1}. ${step.title}${step.kind === 'inspection' ? ' (inspection)' : ''}`,
        items: [
          `state: ${stateText(step)}`,
          ...(step.tools.length === 0 ? [] : [`tools: ${step.tools.join('; ')}`]),
          ...(step.quantities.length === 0 ? [] : [`quantities: ${step.quantities.map(quantityText).join('; ')}`]),
          ...(step.cautions.length === 0 ? [] : [`caution: ${cautionWords(step)}`]),
          ...step.tasks.map((task) => `[ ] ${task.says}${task.source === '' ? '' : ` [${task.source}]`}`),
          ...(step.stop === null ? [] : [`STOP: ${step.stop}`]),
        ],
      },
    ]),
    ...mountSection(values),
    {
      kind: 'table',
      heading: 'First week by month (80 % range of weather and method)',
      columns: [
        { heading: 'Month' },
        { heading: 'Expected', unit: 'kWh' },
        { heading: 'Low end', unit: 'kWh' },
        { heading: 'High end', unit: 'kWh' },
      ],
      rows: values.first_week.map((week) => [week.month, week.expected_kwh, week.p10_kwh, week.p90_kwh]),
    },
  ]
}

function mountSection({ mounts }: WorkPlanValues): Section[] {
  if (mounts.length === 0) return []
  return [
    {
      kind: 'table',
      heading: 'Mount positions',
      columns: [
        { heading: 'Mount' },
        { heading: 'Plane' },
        { heading: 'Rail' },
        { heading: 'Rafter' },
        { heading: 'From the left end of the eave', align: 'right' },
        { heading: 'Up the slope', align: 'right' },
      ],
      rows: mounts.map((mount) => [
        mount.mount,
        mount.plane,
        mount.rail,
        mount.rafter,
        tape(mount.x_in),
        tape(mount.y_in),
      ]),
    },
  ]
}

function taskTable(values: WorkPlanValues) {
  return {
    columns: [
      { heading: 'Step' },
      { heading: 'Title' },
      { heading: 'State' },
      { heading: 'Task' },
      { heading: 'Source' },
      { heading: 'Done' },
    ],
    rows: values.steps.flatMap((step) => [
      ...step.tasks.map((task) => [step.id, step.title, stateText(step), task.says, task.source, null]),
      ...(step.stop === null ? [] : [[step.id, step.title, stateText(step), `STOP: ${step.stop}`, null, null]]),
    ]),
  }
}
