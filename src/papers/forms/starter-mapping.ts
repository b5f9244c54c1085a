import type { OpenForm } from './document/index.js'
import { listFields, type ListedField } from './list-fields.js'

/** Where a flat page has no fields: how a place is written. Each is a text or a cross. */
const PLACES = [
  '# The form has no fields, so that each text needs a place: inches from the left and from the upper edge of the page as',
  '# it is seen, to the left end of the line that the text stands on. Measure a printed page; 72 pt of a viewer are 1 in.',
  'place:',
  '#  - { name: Owner, page: 1, x_in: 1.5, y_in: 2.25, width_in: 3, from: project.parties.owner.name }',
  '#  - { name: Remarks, page: 1, x_in: 1, y_in: 8, width_in: 6.5, lines: 3, size_pt: 9, text: See the permit packet }',
  '#  - { name: NEC 2020, page: 1, x_in: 4.12, y_in: 5.06, mark: true, from: project.codes.electrical, equals: NEC 2020 }',
]

/**
 * A mapping to start from: an entry for each field that can be filled, each put out of use by `#`, with what is known of
 * the field. Those that are never filled are named below.
 */
export function starterMapping(form: OpenForm): string {
  const fields = listFields(form)
  const open = fields.filter((field) => field.never_filled === null && isFillable(field))
  const kept = fields.filter((field) => field.never_filled !== null)
  return [
    `# What goes into the fields of ${oneLine(form.path)}. Take the # away from the entries that you fill.`,
    '# from: project.PATH of the project file, totals.NAME, application.fields.NAME.value, or yield, wire, mounts, bom, payback and a path of its values; gablewatt explain forms tells more.',
    'format: gablewatt-form-mapping/1',
    `form_sha256: ${form.sha256}`,
    ...(fields.length === 0 ? PLACES : ['fields:', ...open.flatMap(entryOf)]),
    ...byHandOf(open),
    ...(kept.length === 0 ? [] : ['', '# Never filled, left to the person who signs:']),
    ...kept.map(({ name }) => `#   ${oneLine(name)}`),
    '',
  ].join('\n')
}

/** What the form requires is filled, or named as left to a person. */
function byHandOf(open: readonly ListedField[]): string[] {
  const names = open.filter(({ required, value }) => required && value.length === 0).map(({ name }) => scalar(name))
  if (names.length === 0) return []
  return ['', '# Required by the form; name here what a person fills in later:', `# by_hand: [${names.join(', ')}]`]
}

function isFillable({ kind, read_only, traits }: ListedField): boolean {
  if (read_only || kind === 'push button' || kind === 'of no known type') return false
  return !traits.includes('password') && !traits.includes('names a file')
}

function entryOf(field: ListedField): string[] {
  const isButton = field.kind === 'check box' || field.kind === 'radio'
  const states = field.states.map(({ name, text }) => (text === null || text === name ? name : `${name} (${text})`))
  const known = [
    field.kind,
    ...field.traits,
    ...(field.required ? ['required'] : []),
    ...(field.max_length === null ? [] : [`at most ${field.max_length} characters`]),
    ...(states.length === 0 ? [] : [`states ${states.join(', ')}`]),
    ...(field.choices.length === 0 ? [] : [`choices ${field.choices.map(({ text }) => text).join(', ')}`]),
    ...(field.tooltip === null ? [] : [field.tooltip]),
  ]
  const [first] = field.states
  return [
    `#  ${oneLine(known.join('; '))}`,
    `#  - field: ${scalar(field.name)}`,
    isButton ? `#    on: ${scalar(first?.name ?? '')}` : '#    from: project.',
  ]
}

const oneLine = (text: string): string => text.replaceAll(/\s+/gu, ' ').replaceAll(/\p{Cc}/gu, '')

/** A text as YAML on one line; JSON is YAML. */
const scalar = (text: string): string =>
  /^[A-Za-z][\w.]*$/u.test(text) && !/^(?:true|false|null)$/iu.test(text) ? text : JSON.stringify(text)
