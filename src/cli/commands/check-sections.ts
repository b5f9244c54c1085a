import type { CheckValues, StageProgress } from '../../house/index.js'
import type { Finding } from '../../worksheet/index.js'
import { countFindings } from '../output/findings.js'
import type { Section, ToneCell } from '../../report/index.js'

const STATES: Readonly<Record<StageProgress['state'], ToneCell>> = {
  missing: { value: 'keys are missing', tone: 'bad' },
  failing: { value: 'a check fails', tone: 'bad' },
  made_up: { value: 'runs on made-up values', tone: 'warn' },
  ready: { value: 'ready', tone: 'good' },
}

/** What a check says of a project: in one line, stage by stage, and what is to be stated and confirmed. */
export function checkSections({ ok, counts, stages }: CheckValues, findings: readonly Finding[]): Section[] {
  const parts = Object.entries(counts).map(([name, number]) => sayCount(number, name.replaceAll('_', ' ')))
  const missing = uniqueBy(stages.flatMap((stage) => stage.missing))
  const madeUp = uniqueBy(stages.flatMap((stage) => stage.made_up))
  const unfinished = [
    ...(missing.length === 0 ? [] : [`${sayCount(missing.length, 'keys')} missing`]),
    ...(madeUp.length === 0 ? [] : [`${sayCount(madeUp.length, 'values')} made up`]),
  ]
  const verdict = ok ? (unfinished.length === 0 ? 'ok' : 'not finished') : 'not ok'
  const text = [`${verdict}: ${parts.join(', ')}`, ...unfinished, countFindings(findings)].join('; ')
  if (stages.length === 0) return [{ kind: 'paragraph', text }]
  return [
    { kind: 'paragraph', text },
    progressTable(stages),
    ...nextList(stages),
    ...missingTable(stages),
    ...madeUpTable(madeUp),
  ]
}

function progressTable(stages: readonly StageProgress[]): Section {
  return {
    kind: 'table',
    heading: 'How far it is',
    columns: [
      { heading: 'Stage' },
      { heading: 'State' },
      { heading: 'Missing' },
      { heading: 'Made up' },
      { heading: 'Of these about safety' },
    ],
    rows: stages.map(({ command, state, missing, made_up }) => [
      command,
      STATES[state],
      missing.length,
      made_up.length,
      made_up.filter(({ safety }) => safety).length,
    ]),
  }
}

/** One line for each stage that is not finished; a part may serve two of them. */
function nextList(stages: readonly StageProgress[]): Section[] {
  const items = [...new Set(stages.filter(({ state }) => state !== 'ready').map(({ next }) => next))]
  return items.length === 0 ? [] : [{ kind: 'list', heading: 'What to run next', items }]
}

function missingTable(stages: readonly StageProgress[]): Section[] {
  const rows = stages.flatMap(({ command, missing }) => missing.map(({ path, find }) => [command, path, find]))
  if (rows.length === 0) return []
  return [
    {
      kind: 'table',
      heading: 'What is missing, and where one finds it',
      columns: [{ heading: 'For' }, { heading: 'Key' }, { heading: 'Where it is found' }],
      rows,
    },
  ]
}

/** What is about safety stands first. */
function madeUpTable(values: StageProgress['made_up']): Section[] {
  if (values.length === 0) return []
  const rows = values
    .toSorted((a, b) => Number(b.safety) - Number(a.safety))
    .map(({ path, value, safety }) => [
      path,
      value === '' ? 'all that stands there' : value,
      safety ? ({ value: 'safety', tone: 'warn' } as const) : null,
    ])
  return [
    {
      kind: 'table',
      heading: 'What is made up: state your own, then take !made_up away',
      columns: [{ heading: 'Key' }, { heading: 'Value' }, { heading: 'About' }],
      rows,
    },
  ]
}

/** What several stages miss or read is told once. */
function uniqueBy<Entry extends { readonly path: string }>(entries: readonly Entry[]): Entry[] {
  return [...new Map(entries.map((entry) => [entry.path, entry])).values()]
}

/** `1 roof plane`, `2 roof planes`; `name` is in the plural. */
function sayCount(number: number, name: string): string {
  return `${number} ${number === 1 ? name.replace(/s$/u, '') : name}`
}
