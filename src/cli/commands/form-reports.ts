import type { ListedField, ListedForm, PreparedForm } from '../../papers/index.js'
import type { Report, Section, TableData } from '../../report/index.js'

/** The fields of a form as a report. */
export function fieldsReport(path: string, form: ListedForm): Report {
  const { fields } = form
  const kept = fields.filter((field) => field.never_filled !== null)
  const sections: Section[] = [
    {
      kind: 'facts',
      facts: [
        { label: 'Pages', value: form.pages },
        { label: 'Fields', value: fields.length },
        { label: 'SHA-256', value: form.sha256 },
      ],
    },
    { kind: 'table', heading: 'Fields', ...fieldTable(fields) },
  ]
  if (kept.length > 0) {
    const items = kept.map(({ name, never_filled: why }) => `${name}: ${why ?? ''}`)
    sections.push({ kind: 'list', heading: 'Never filled', items })
  }
  if (form.notes.length > 0) sections.push({ kind: 'list', heading: 'Of this form', items: form.notes })
  return {
    title: `Form: ${path}`,
    stage: 'form-fields',
    sections,
    csv: wholeTable(fields),
    result: emptyProof({ form_sha256: form.sha256, pages: form.pages, fields }),
  }
}

/** For people: what stands beside each other on a screen. */
function fieldTable(fields: readonly ListedField[]): TableData {
  return {
    columns: [
      { heading: 'Field' },
      { heading: 'Kind' },
      { heading: 'Page' },
      { heading: 'Takes' },
      { heading: 'Tooltip' },
    ],
    rows: fields.map((field) => [
      field.name,
      field.kind,
      field.pages.join(', '),
      takes(field).join('; '),
      field.tooltip ?? '',
    ]),
  }
}

/** For scripts: a column for everything. */
function wholeTable(fields: readonly ListedField[]): TableData {
  const names = ['field', 'kind', 'required', 'read_only', 'max_length', 'traits', 'states', 'choices', 'pages']
  return {
    columns: [...names, 'tooltip', 'value', 'never_filled'].map((key) => ({ heading: key, key })),
    rows: fields.map((field) => [
      field.name,
      field.kind,
      field.required ? 'yes' : 'no',
      field.read_only ? 'yes' : 'no',
      field.max_length,
      field.traits.join('; '),
      statesOf(field).join('; '),
      field.choices.map(({ value, text }) => (value === text ? value : `${value} (${text})`)).join('; '),
      field.pages.join('; '),
      field.tooltip,
      field.value.join('; '),
      field.never_filled,
    ]),
  }
}

function takes(field: ListedField): string[] {
  return [
    ...(field.required ? ['required'] : []),
    ...(field.read_only ? ['read-only'] : []),
    ...(field.never_filled === null ? [] : ['never filled']),
    ...field.traits,
    ...(field.max_length === null ? [] : [`at most ${field.max_length} characters`]),
    ...(field.states.length === 0 ? [] : [`on: ${statesOf(field).join(', ')}`]),
    ...(field.choices.length === 0 ? [] : [field.choices.map(({ text }) => text).join(', ')]),
    ...(field.value.length === 0 ? [] : [`holds '${field.value.join(', ')}'`]),
  ]
}

function statesOf({ states }: ListedField): string[] {
  return states.map(({ name, text }) => (text === null || text === name ? name : `${name} (${text})`))
}

/** What goes into which field as a report. */
export function fillsReport(path: string, { sha256, fields, findings }: PreparedForm): Report {
  return {
    title: `Filled form: ${path}`,
    stage: 'form',
    sections: [
      {
        kind: 'table',
        heading: 'What goes in',
        columns: [{ heading: 'Field' }, { heading: 'Value' }, { heading: 'From' }, { heading: 'Page', key: 'pages' }],
        rows: fields.map((row) => [row.field, row.value, row.from, row.pages.join(', ')]),
      },
    ],
    result: { ...emptyProof({ form_sha256: sha256, fields }), findings },
  }
}

function emptyProof<Values>(values: Values): Report['result'] & { readonly values: Values } {
  return { values, worksheet: [], findings: [], assumptions: [] }
}
