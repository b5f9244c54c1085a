import type { Primitive, SiteSketch } from '../../drawings/index.js'
import type { Project } from '../../project/index.js'
import type { PageBlock } from '../pages/index.js'
import type { HandoverValues } from './handover-values.js'

const LARGE_PT = 15
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const

/** One page for the fire service, in large letters. */
export function emergencyBlocks(
  project: Project,
  { emergency }: HandoverValues,
  sketch: SiteSketch | undefined,
): PageBlock[] {
  return [
    { kind: 'title', text: 'Fire service: solar power here' },
    { kind: 'text', sizePt: LARGE_PT, bold: true, text: emergency.address },
    {
      kind: 'box',
      tone: 'warning',
      title: 'To shut it down',
      sizePt: LARGE_PT,
      lines: emergency.shut_down.map((step, index) => `${index + 1}. ${step}`),
    },
    {
      kind: 'box',
      tone: 'warning',
      title: 'Stays live',
      sizePt: 12.5,
      lines: emergency.stays_live.map((each) => `- ${each}`),
    },
    ...(sketch === undefined
      ? ([
          {
            kind: 'text',
            text: 'No sketch: the project has no site plan. Draw house, street, meter, panel, disconnects and arrays here:',
          },
          { kind: 'figure', says: 'An empty frame to draw the sketch in.', heightPt: FRAME_PT + 4, draw: emptyFrame },
        ] as const)
      : ([{ kind: 'figure', says: sketch.says, heightPt: sketch.heightPt, draw: sketch.at }] as const)),
    { kind: 'facts', facts: emergency.where },
    { kind: 'text', bold: true, sizePt: 12, text: emergency.call.join('\n') },
    {
      kind: 'text',
      text: `${project.title}. Made from the project file; what was built otherwise is mended here by hand. The incident commander decides.`,
    },
  ]
}

/** Room for a sketch by hand, points: the sheet stays one page on Letter too. */
const FRAME_PT = 150

const emptyFrame = (x: number, y: number, width: number): Primitive[] => [
  { kind: 'rectangle', x, y, width, height: FRAME_PT, pen: 'thin' },
]

function monthCells(month: HandoverValues['owner']['months'][number] | undefined): string[] {
  if (month === undefined) return ['', '', '']
  return [MONTHS[month.month - 1] ?? '', month.expected_kwh.toLocaleString('en-US'), month.week]
}

/** One page for the owner. */
export function ownerBlocks(project: Project, { owner, facts }: HandoverValues): PageBlock[] {
  const utility = project.parties?.utility?.name ?? 'the utility'
  return [
    {
      kind: 'title',
      text: 'For the owner',
      below: `${project.title}\n${facts
        .slice(1, 3)
        .map(([name, value]) => `${name} ${value}`)
        .join(', ')}`,
    },
    {
      kind: 'box',
      tone: 'warning',
      sizePt: 12,
      lines: [
        `Do not switch on before ${utility} has given its permission to operate in writing. Until then everything stays off and locked.`,
      ],
    },
    { kind: 'heading', level: 3, text: 'Energy to expect' },
    {
      kind: 'table',
      columns: [1, 2].flatMap(() => [
        { heading: 'Month', share: 0.16 },
        { heading: 'kWh', share: 0.1, align: 'right' as const },
        { heading: 'First week', share: 0.24, align: 'right' as const },
      ]),
      rows: [
        ...owner.months.slice(0, 6).map((month, at) => [...monthCells(month), ...monthCells(owner.months[at + 6])]),
        ['Year', owner.year_kwh.toLocaleString('en-US'), '', '', '', ''],
      ],
      total: true,
    },
    {
      kind: 'text',
      text: 'Long-term means from estimate-yield, rounded down; single months differ with the weather. The week is what four of five such weeks give.',
    },
    { kind: 'heading', level: 3, text: 'What to look at' },
    { kind: 'list', items: owner.look_at },
    { kind: 'heading', level: 3, text: 'To switch off' },
    { kind: 'list', mark: 'numbers', items: owner.switch_off },
    { kind: 'heading', level: 3, text: 'Whom to call' },
    ...(owner.call.length === 0
      ? ([
          {
            kind: 'blanks',
            rows: [['Installer', 'Telephone', 'Electrician', 'Telephone']],
          },
        ] as const)
      : ([{ kind: 'facts', facts: owner.call }] as const)),
    { kind: 'heading', level: 3, text: 'Warranties' },
    ...(owner.warranties.length === 0
      ? ([{ kind: 'blanks', rows: [['Modules', 'Inverters', 'Workmanship']] }] as const)
      : ([{ kind: 'list', items: owner.warranties }] as const)),
  ]
}
