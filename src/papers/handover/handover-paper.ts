import { siteSketch } from '../../drawings/index.js'
import { cautionTexts } from '../../report/index.js'
import type { Finding } from '../../worksheet/index.js'
import type { PageBlock, Paper } from '../pages/index.js'
import type { HandoverInput } from './handover-input.js'
import type { HandoverTable, HandoverValues } from './handover-values.js'
import { emergencyBlocks, ownerBlocks } from './keep-pages.js'
import { recordBlocks, rowTable } from './record-pages.js'

/** The hand-over file as a paper: what is kept at hand first, then the record, then what was built. */
export function handoverPaper(input: HandoverInput, values: HandoverValues, findings: readonly Finding[]): Paper {
  const { project } = input
  const date = values.date ?? project.document?.date
  const sketch = siteSketch({ project, arrangement: input.arrangement, heightPt: 215, typePt: 12 })
  return {
    title: `Hand-over: ${project.title}`,
    language: 'en-US',
    author: project.parties?.installer?.name ?? project.parties?.owner?.name ?? '',
    subject: 'Commissioning record and hand-over',
    date: date ?? '2000-01-01',
    foot: `${project.title}, ${date ?? 'not dated'}`,
    pageWords: (page, pages) => `page ${page} of ${pages}`,
    blocks: [
      ...emergencyBlocks(project, values, sketch),
      { kind: 'page-break' },
      ...ownerBlocks(project, values),
      { kind: 'page-break' },
      ...recordBlocks(project, values, findings),
      { kind: 'page-break' },
      ...builtBlocks(values),
      ...careBlocks(values),
    ],
  }
}

function builtBlocks({ as_built: built, serials, torques }: HandoverValues): PageBlock[] {
  return [
    { kind: 'heading', text: 'As built' },
    { kind: 'heading', level: 3, text: 'Equipment' },
    tableOf(built.equipment, [0.16, 0.22, 0.1, 0.2, 0.14, 0.18]),
    ...(built.strings.rows.length === 0
      ? []
      : ([
          { kind: 'heading', level: 3, text: 'Strings and branches' },
          tableOf(built.strings, [0.26, 0.34, 0.26, 0.14]),
        ] as const)),
    ...(built.conductors.rows.length === 0
      ? ([{ kind: 'text', text: 'No list of conductors: the wiring cannot be sized (size-wire).' }] as const)
      : ([
          { kind: 'heading', level: 3, text: 'Conductors' },
          tableOf(built.conductors, [0.06, 0.18, 0.17, 0.22, 0.15, 0.11, 0.11]),
        ] as const)),
    { kind: 'heading', level: 3, text: 'Torques' },
    rowTable(torques),
    { kind: 'heading', level: 3, text: 'Serial numbers' },
    serialTable(serials),
  ]
}

/** A line for each unit: a module and the inverter behind it share one. */
function serialTable(serials: HandoverValues['serials']): PageBlock {
  const units = [...new Set(serials.map(({ unit }) => unit))]
  const kinds = (['module', 'inverter', 'other'] as const).filter((kind) => serials.some((each) => each.kind === kind))
  return {
    kind: 'table',
    ruled: true,
    columns: [
      { heading: 'Unit', share: 0.28, bold: true },
      ...kinds.map((kind) => ({ heading: SERIAL_HEADS[kind], share: 0.72 / kinds.length })),
    ],
    rows: units.map((unit) => [
      unit,
      ...kinds.map((kind) => {
        const found = serials.find((each) => each.kind === kind && each.unit === unit)
        return found === undefined ? '-' : (found.serial ?? '')
      }),
    ]),
  }
}

const SERIAL_HEADS = { module: 'Module', inverter: 'Inverter', other: 'Other equipment' } as const

function careBlocks({ maintenance, safety }: HandoverValues): PageBlock[] {
  return [
    { kind: 'heading', text: 'Looking after it' },
    {
      kind: 'text',
      text: "No document that was read fixes these times; the makers' manuals come first.",
    },
    {
      kind: 'table',
      columns: [
        { heading: 'When', share: 0.18 },
        { heading: 'What', share: 0.4 },
        { heading: 'Who', share: 0.16 },
        { heading: 'Source', share: 0.26 },
      ],
      rows: maintenance.map(({ when, what, who, source }) => [when, what, who, source]),
    },
    { kind: 'heading', text: 'For who works on it' },
    {
      kind: 'text',
      text: 'These rules hold for employers; for owners who work themselves they are good practice. State plans and the local code may ask for more.',
      keepNext: true,
    },
    { kind: 'list', items: safety.map(({ says, source }) => (source === '' ? says : `${says} (${source})`)) },
    { kind: 'list', items: cautionTexts(['height', 'live-conductors', 'authority', 'electrician', 'estimate']) },
  ]
}

function tableOf({ columns, rows }: HandoverTable, shares: readonly number[]): PageBlock {
  return { kind: 'table', columns: columns.map((heading, at) => ({ heading, share: shares[at] ?? 0.1 })), rows }
}
