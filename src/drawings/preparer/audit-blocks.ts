import type { AuditPoint, AuditValues } from '../audit/index.js'
import type { Block } from '../layout/index.js'

const STATES: Readonly<Record<AuditPoint['state'], string>> = {
  present: 'there',
  missing: 'MISSING',
  not_applicable: 'does not apply',
}

/** The audit as a part of the preparer's report. */
export function auditBlocks({ authority, points, expedited }: AuditValues): Block[] {
  return [
    { kind: 'heading', text: 'Audit: what reviewers ask for' },
    {
      kind: 'text',
      text:
        authority === null
          ? 'No file says what the authority asks (permit.authority): these are the points of published lists.'
          : `By ${[authority.name, authority.list, authority.as_of].filter((each) => each !== null).join(', ')}, and published lists.${authority.invented ? ' The authority is invented.' : ''}`,
    },
    {
      kind: 'table',
      columns: [
        { heading: 'Point', share: 0.34, bold: true },
        { heading: 'State', share: 0.1 },
        { heading: 'Sheets', share: 0.14 },
        { heading: 'What', share: 0.32 },
        { heading: 'From', share: 0.1 },
      ],
      rows: points.map(({ asks, state, sheets, what, supplied_by: by }) => [
        asks,
        STATES[state],
        sheets.join(', '),
        what,
        state === 'missing' ? by : '',
      ]),
    },
    ...(expedited === null
      ? []
      : ([
          { kind: 'heading', text: 'Short review' },
          { kind: 'text', text: expedited.verdict },
          ...expedited.remarks.map((text) => ({ kind: 'text', text }) as const),
        ] satisfies Block[])),
  ]
}
