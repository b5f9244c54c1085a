import type { AuditPoint, AuditValues } from '../../drawings/index.js'
import type { Cell, Section, TableData } from '../../report/index.js'

const STATES: Readonly<Record<AuditPoint['state'], Cell>> = {
  present: { value: 'there', tone: 'good' },
  missing: { value: 'MISSING', tone: 'bad' },
  not_applicable: { value: 'does not apply', tone: 'dim' },
}

/** Every point, where it stands, or what is missing and who supplies it. */
export function auditTable({ points }: AuditValues): TableData {
  return {
    columns: [
      { heading: 'Point', key: 'point' },
      { heading: 'Asks', key: 'asks' },
      { heading: 'Asked by', key: 'asked_by' },
      { heading: 'State', key: 'state' },
      { heading: 'Sheets', key: 'sheets' },
      { heading: 'What', key: 'what' },
      { heading: 'Supplied by', key: 'supplied_by' },
    ],
    rows: points.map((point) => [
      point.id,
      point.asks,
      askedBy(point),
      STATES[point.state],
      point.sheets.join(', '),
      point.what,
      point.state === 'missing' ? point.supplied_by : '',
    ]),
  }
}

function askedBy({ lists, required }: AuditPoint): string {
  if (lists === null) return 'this authority alone'
  return `${lists} published ${lists === 1 ? 'list' : 'lists'}${required === true ? ', this authority' : ''}`
}

/** What is missing first, then what is there, then what does not apply. */
function pointTables({ points }: AuditValues): Section[] {
  const of = (state: AuditPoint['state']): AuditPoint[] => points.filter((point) => point.state === state)
  const [missing, there, others] = [of('missing'), of('present'), of('not_applicable')]
  const tables: Section[] = [
    {
      kind: 'table',
      heading: 'Missing',
      columns: [{ heading: 'Point' }, { heading: 'What' }, { heading: 'Asked by' }, { heading: 'Supplied by' }],
      rows: missing.map((point) => [point.id, { value: point.what, tone: 'bad' }, askedBy(point), point.supplied_by]),
    },
    {
      kind: 'table',
      heading: 'There',
      columns: [{ heading: 'Point' }, { heading: 'Sheets' }, { heading: 'What' }],
      rows: there.map(({ id, sheets, what }) => [id, sheets.join(', '), what]),
    },
    {
      kind: 'table',
      heading: 'Does not apply',
      columns: [{ heading: 'Point' }, { heading: 'Why' }],
      rows: others.map(({ id, what }) => [id, what]),
    },
  ]
  return tables.filter((table) => table.kind === 'table' && table.rows.length > 0)
}

/** The audit for people. */
export function auditSections(values: AuditValues): Section[] {
  const { authority, expedited } = values
  return [
    {
      kind: 'facts',
      facts: [
        { label: 'Authority', value: authority?.name ?? 'no file of it is named (permit.authority)' },
        ...(authority?.list === undefined || authority.list === null
          ? []
          : [
              {
                label: 'Its list',
                value: [authority.list, authority.as_of].filter((each) => each !== null).join(', '),
              },
            ]),
        ...(authority?.invented === true ? [{ label: 'Beware', value: 'this authority is invented' }] : []),
        { label: 'There', value: values.present },
        { label: 'Missing', value: values.missing },
        { label: 'Does not apply', value: values.not_applicable },
      ],
    },
    ...pointTables(values),
    ...(expedited === null
      ? []
      : ([
          { kind: 'paragraph', heading: 'Short review', text: expedited.verdict },
          {
            kind: 'table',
            columns: [{ heading: 'Limit' }, { heading: 'This project' }, { heading: 'Holds' }],
            rows: expedited.lines.map(({ limit, found, holds }) => [
              limit,
              found,
              holds === true
                ? { value: 'yes', tone: 'good' }
                : { value: holds === undefined ? 'not shown' : 'NO', tone: 'bad' },
            ]),
          },
        ] satisfies Section[])),
  ]
}
