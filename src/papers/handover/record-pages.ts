import type { Project } from '../../project/index.js'
import type { Finding } from '../../worksheet/index.js'
import type { PageBlock } from '../pages/index.js'
import type { HandoverValues, RecordRow, RecordTest, Verdict } from './handover-values.js'

const WORDS: Readonly<Record<Verdict, string>> = { pass: 'pass', fail: 'FAIL', look: 'LOOK AT IT', open: '' }

/** The record of the tests, with blanks where nothing was read yet. */
export function recordBlocks(project: Project, values: HandoverValues, findings: readonly Finding[]): PageBlock[] {
  const { counts } = values
  const settle = findings.filter(({ severity }) => severity === 'error')
  const blank = (text: string): string => (text === '' ? '__________________' : text)
  return [
    { kind: 'title', text: 'Record of the tests', below: project.title },
    {
      kind: 'box',
      lines: [
        `${counts.pass} readings pass, ${counts.fail} fail, ${counts.look} to look at, ${counts.open} still to be measured.`,
        'Order and limits by IEC 62446-1, which was not read: by a poster and manuals of instrument makers (secondary) and from memory. In the US it is no law; the inspection list and the makers’ manuals come first.',
      ],
    },
    ...(settle.length === 0
      ? []
      : [
          {
            kind: 'box' as const,
            tone: 'warning' as const,
            title: 'Fails: not to be handed over',
            lines: settle.map(({ message }) => message),
          },
        ]),
    {
      kind: 'facts',
      facts: [
        ['Day of the tests', blank(values.date ?? '')],
        ...values.conditions.map(([name, value]) => [name, blank(value)] as const),
        ...values.facts,
        ...values.people,
      ],
    },
    { kind: 'heading', level: 3, text: 'Instruments' },
    {
      kind: 'table',
      ruled: true,
      columns: [
        { heading: 'Instrument', share: 0.4 },
        { heading: 'Serial number', share: 0.2 },
        { heading: 'Calibrated', share: 0.2 },
        { heading: 'Due', share: 0.2 },
      ],
      leastRowPt: 18,
      rows:
        values.instruments.rows.length === 0
          ? ['DC voltmeter', 'Insulation tester', 'Low-ohm meter', 'Irradiance meter'].map((name) => [name, '', '', ''])
          : values.instruments.rows,
    },
    { kind: 'heading', text: 'Order of energising' },
    { kind: 'list', mark: 'numbers', items: values.energising },
    { kind: 'heading', text: 'To switch off' },
    { kind: 'list', mark: 'numbers', items: values.switching_off },
    ...groupLeftOut(values.tests).flatMap((group) => [
      ...(group.length > 1 ? leftOutBlocks(group) : group.flatMap(testBlocks)),
      ...(group.some(({ id, left_out: why }) => why === null && VOC_TESTS.has(id)) ? vocBlocks(values) : []),
    ]),
    {
      kind: 'text',
      text: 'Curves of current and voltage and infrared pictures (category 2) are further tests: steady light of 600 W/m2 and more (IEC TS 62446-3, from memory).',
    },
    {
      kind: 'blanks',
      rows: [[named('Tester', project.commissioning?.tester?.name), named('Owner', project.parties?.owner?.name)]],
    },
  ]
}

const named = (role: string, name: string | undefined): string =>
  `${role}${name === undefined ? '' : ` (${name})`}, signature and date`

/** Tests that a voltage by temperature belongs to: of strings, and of units with an inverter of their own. */
const VOC_TESTS: ReadonlySet<string> = new Set(['voc', 'unit_voltage'])

/** Tests one by one, but those together that follow each other and are left out for the same reason. */
function groupLeftOut(tests: readonly RecordTest[]): RecordTest[][] {
  const groups: RecordTest[][] = []
  for (const test of tests) {
    const last = groups.at(-1)
    if (test.left_out !== null && last?.[0]?.left_out === test.left_out) last.push(test)
    else groups.push([test])
  }
  return groups
}

function leftOutBlocks(group: readonly RecordTest[]): PageBlock[] {
  return [
    { kind: 'heading', text: `${group[0]?.number ?? ''} to ${group.at(-1)?.number ?? ''}. Left out` },
    { kind: 'text', text: `${group[0]?.left_out ?? ''}:` },
    { kind: 'list', items: group.map(({ number, title }) => `${number}. ${title}`) },
  ]
}

function testBlocks({ number, title, state, left_out: leftOut, tasks, rows }: RecordTest): PageBlock[] {
  const heading: PageBlock = { kind: 'heading', text: `${number}. ${title}` }
  if (leftOut !== null) return [heading, { kind: 'text', text: `Left out: ${leftOut}.` }]
  return [
    heading,
    { kind: 'text', bold: true, text: `State: ${state}` },
    ...(tasks.length === 0
      ? []
      : [
          {
            kind: 'list' as const,
            mark: 'boxes' as const,
            items: tasks.map(({ says, source }) => (source === '' ? says : `${says} (${source})`)),
          },
        ]),
    ...(rows.length === 0 ? [] : [rowTable(rows)]),
  ]
}

/** Expected values beside readings, or room for them. */
export function rowTable(rows: readonly RecordRow[]): PageBlock {
  return {
    kind: 'table',
    ruled: true,
    leastRowPt: 20,
    columns: [
      { heading: 'What', share: 0.27, bold: true },
      { heading: 'Expected', share: 0.24 },
      { heading: 'Limit', share: 0.2 },
      { heading: 'Read', share: 0.12 },
      { heading: 'Verdict', share: 0.17 },
    ],
    rows: rows.map(({ what, expected, limit, measured, verdict, why }) => [
      what,
      expected,
      limit,
      measured ?? '',
      why === '' ? WORDS[verdict] : `${WORDS[verdict]}: ${why}`,
    ]),
  }
}

/** Open voltages by temperature, while today's is not known. */
function vocBlocks({ voc_table: table }: HandoverValues): PageBlock[] {
  if (table.length === 0) return []
  const temperatures = [...new Set(table.map(({ cell_c: cell }) => cell))]
  const names = [...new Set(table.map(({ what }) => what))]
  return [
    { kind: 'heading', level: 3, text: 'Open-circuit voltage by cell temperature, V (expected, and what may be read)' },
    {
      kind: 'table',
      columns: [
        { heading: 'What', share: 0.17, bold: true },
        ...temperatures.map((cell) => ({ heading: `${cell} C`, share: 0.138, align: 'right' as const })),
      ],
      rows: names.map((name) => [
        name,
        ...temperatures.map((cell) => {
          const found = table.find((each) => each.what === name && each.cell_c === cell)
          return found === undefined
            ? '-'
            : `${found.voc_v.toFixed(1)}\n${found.low_v.toFixed(1)} to ${found.high_v.toFixed(1)}`
        }),
      ]),
    },
  ]
}
