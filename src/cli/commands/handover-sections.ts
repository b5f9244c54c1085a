import type { HandoverValues, RecordRow, Verdict } from '../../papers/index.js'
import type { Cell, Section, TableData } from '../../report/index.js'

const VERDICTS: Readonly<Record<Verdict, Cell>> = {
  pass: { value: 'pass', tone: 'good' },
  fail: { value: 'FAIL', tone: 'bad' },
  look: { value: 'look at it', tone: 'warn' },
  open: { value: 'open', tone: 'dim' },
}

/** Every line of the record. */
export function recordTable({ tests, torques }: HandoverValues): TableData {
  const rows = [
    ...tests.flatMap(({ id, rows: lines }) => lines.map((row) => ({ id, row }))),
    ...torques.map((row) => ({ id: 'torque', row })),
  ]
  return {
    columns: ['test', 'what', 'expected', 'limit', 'read', 'verdict', 'why', 'key'].map((key) => ({
      heading: key,
      key,
    })),
    rows: rows.map(({ id, row }) => [
      id,
      row.what,
      row.expected,
      row.limit,
      row.measured,
      row.verdict,
      row.why,
      row.where,
    ]),
  }
}

/** The hand-over for people; the PDF has the emergency sheet and the owner's page besides. */
export function handoverSections(values: HandoverValues): Section[] {
  const { counts, serials } = values
  return [
    {
      kind: 'facts',
      facts: [
        { label: 'Day of the tests', value: values.date ?? 'not stated' },
        { label: 'Pass', value: counts.pass },
        { label: 'Fail', value: counts.fail },
        { label: 'To look at', value: counts.look },
        { label: 'Still to be measured', value: counts.open },
        {
          label: 'Serial numbers',
          value: `${serials.filter(({ serial }) => serial !== null).length} of ${serials.length}`,
        },
      ],
    },
    { kind: 'list', heading: 'Order of energising', items: values.energising },
    { kind: 'list', heading: 'To switch off', items: values.switching_off },
    ...values.tests.flatMap(({ number, title, state, left_out: leftOut, tasks, rows }): Section[] => {
      const heading = `${number}. ${title}`
      if (leftOut !== null) return [{ kind: 'paragraph', heading, text: `left out: ${leftOut}` }]
      return [
        {
          kind: 'list',
          heading,
          items: [
            `state: ${state}`,
            ...tasks.map(({ says, source }) => `[ ] ${says}${source === '' ? '' : ` [${source}]`}`),
          ],
        },
        ...rowSection(rows),
      ]
    }),
    ...vocSection(values),
    ...rowSection(values.torques, 'Torques'),
    { kind: 'list', heading: 'Fire service: to shut it down', items: values.emergency.shut_down },
    { kind: 'list', heading: 'Fire service: stays live', items: values.emergency.stays_live },
  ]
}

function rowSection(rows: readonly RecordRow[], heading?: string): Section[] {
  if (rows.length === 0) return []
  return [
    {
      kind: 'table',
      ...(heading === undefined ? {} : { heading }),
      columns: [
        { heading: 'What' },
        { heading: 'Expected' },
        { heading: 'Limit' },
        { heading: 'Read' },
        { heading: 'Verdict' },
      ],
      rows: rows.map(({ what, expected, limit, measured, verdict, why }) => [
        what,
        expected,
        limit,
        measured ?? '',
        why === '' || verdict === 'open' ? VERDICTS[verdict] : withWhy(VERDICTS[verdict], why),
      ]),
    },
  ]
}

function withWhy(cell: Cell, why: string): Cell {
  return typeof cell === 'object' && cell !== null
    ? { ...cell, value: `${cell.value}: ${why}` }
    : `${cell ?? ''}: ${why}`
}

function vocSection({ voc_table: table }: HandoverValues): Section[] {
  if (table.length === 0) return []
  return [
    {
      kind: 'table',
      heading: 'Open-circuit voltage by cell temperature',
      columns: [
        { heading: 'What' },
        { heading: 'Cells', unit: 'C' },
        { heading: 'Expected', unit: 'V', decimals: 1 },
        { heading: 'From', unit: 'V', decimals: 1 },
        { heading: 'To', unit: 'V', decimals: 1 },
      ],
      rows: table.map((row) => [row.what, row.cell_c, row.voc_v, row.low_v, row.high_v]),
    },
  ]
}
