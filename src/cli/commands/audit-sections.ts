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
        { label: 'There', value: values.present },
        { label: 'Missing', value: values.missing },
        { label: 'Does not apply', value: values.not_applicable },
      ],
    },
    { kind: 'table', heading: 'Points', ...auditTable(values) },
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
