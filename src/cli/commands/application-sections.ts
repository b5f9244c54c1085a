import { answerText, type ApplicationField, type ApplicationValues } from '../../papers/index.js'
import type { Cell, Section, TableData } from '../../report/index.js'

/** Every field with its answer, or with the key that it is missing under. */
export function fieldTable({ fields }: ApplicationValues): TableData {
  return {
    columns: [
      { heading: 'Field', key: 'field' },
      { heading: 'Section', key: 'section' },
      { heading: 'Label', key: 'label' },
      { heading: 'State', key: 'state' },
      { heading: 'Value', key: 'value' },
      { heading: 'Unit', key: 'unit' },
      { heading: 'From', key: 'from' },
      { heading: 'Missing key', key: 'missing' },
      { heading: 'Supplied by', key: 'supplied_by' },
      { heading: 'Asked by', key: 'asked_by' },
      { heading: 'Note', key: 'note' },
    ],
    rows: fields.map((field) => [
      field.id,
      field.section,
      field.label,
      field.state,
      field.value === null ? null : String(field.value),
      field.unit,
      field.from,
      field.missing,
      field.supplied_by,
      field.asked_by,
      field.note,
    ]),
  }
}

/** The application for people. */
export function applicationSections(values: ApplicationValues): Section[] {
  const sections = [...new Set(values.fields.map(({ section }) => section))]
  return [
    {
      kind: 'facts',
      facts: [
        { label: 'Stated', value: values.stated },
        { label: 'Missing', value: values.missing },
        { label: 'Signature', value: 'left blank, with its date' },
      ],
    },
    ...sections.map((name): Section => ({
      kind: 'table',
      heading: name,
      columns: [{ heading: 'Asked' }, { heading: 'Answer' }, { heading: 'From, or who supplies it' }],
      rows: values.fields.filter(({ section }) => section === name).map((field) => [field.label, ...answer(field)]),
    })),
    {
      kind: 'list',
      heading: 'To know',
      items: values.fields.flatMap(({ label, note }) => (note === '' ? [] : [`${label}: ${note}`])),
    },
    {
      kind: 'table',
      heading: 'What goes with it',
      columns: [{ heading: 'Attachment' }, { heading: 'State' }, { heading: 'Where' }, { heading: 'Asked by' }],
      rows: values.attachments.map(({ what, state, where, asked_by: askedBy }) => [
        what,
        state === 'missing' ? { value: 'MISSING', tone: 'bad' } : state,
        where,
        askedBy,
      ]),
    },
    {
      kind: 'table',
      heading: 'Times of the utility, business days (for information)',
      columns: [{ heading: 'Step' }, { heading: 'Federal, to 10 kW' }, { heading: 'New York, to 50 kW' }],
      rows: values.clocks.map(({ step, federal_business_days: federal, new_york_business_days: newYork, note }) => [
        note === '' ? step : `${step}: ${note}`,
        federal,
        newYork,
      ]),
    },
    {
      kind: 'list',
      heading: 'Standards (for information)',
      items: values.standards.map(({ says, source }) => `${says} [${source}]`),
    },
  ]
}

function answer(field: ApplicationField): [Cell, Cell] {
  if (field.state === 'blank') return ['', field.note]
  if (field.value === null) return [{ value: 'MISSING', tone: 'bad' }, `${field.missing ?? ''}: ${field.supplied_by}`]
  return [answerText(field), field.from]
}
