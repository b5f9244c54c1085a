import type { Command } from 'commander'
import { keyHint, nearest } from '../../project/index.js'
import { formatSource, Worksheet } from '../../worksheet/index.js'
import { UsageError } from '../errors.js'
import {
  EXPLANATIONS,
  findExplanation,
  findTerm,
  findTopic,
  GLOSSARY,
  TOPICS,
  type Explanation,
  type Term,
  type Topic,
} from '../explanations/index.js'
import { writesReport } from '../options.js'
import { explainKeys } from './explain-key.js'
import type { Report, Section } from '../../report/index.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'

export const examples: readonly [Example, Example, Example, Example, Example] = [
  { line: 'explain wire.panel-busbar', does: 'what a finding means, the rule behind it, how to mend it' },
  {
    line: 'explain arrays.south.standoff_in',
    does: 'a key of the project file: unit, range, where to find it, what it moves',
  },
  { line: 'explain bus rating', does: 'a word of the trade' },
  { line: 'explain energy-estimate', does: 'a topic: how good the estimate is, and how that is known' },
  { line: 'explain', does: 'all findings, words and topics' },
]

export function configure(command: Command): void {
  writesReport(
    command.argument(
      '[id or term...]',
      'id of a finding as it stands in [brackets], a key of the project file, a word of the trade, or a topic',
    ),
  )
}

export function run({ args }: CommandContext): CommandOutcome {
  const word = args.join('-').trim().toLowerCase()
  if (word === '') return { report: everything() }
  const explanation = findExplanation(word)
  if (explanation !== undefined) return { report: explainFinding(word, explanation) }
  const found = findTerm(word)
  if (found !== undefined) return { report: explainTerm(...found) }
  const topic = findTopic(word)
  if (topic !== undefined) return { report: explainTopic(...topic) }
  const keys = explainKeys(args.join(' '))
  if (keys !== undefined) return { report: keys }
  throw new UsageError(
    `'${args.join(' ')}' is neither a finding nor a term nor a topic nor a key${hint(word, args.join(' '))}; 'gablewatt explain' lists all`,
  )
}

/** The nearest known word, or key of the file; for an id whose first part is right, the ids of that part. */
function hint(word: string, typed: string): string {
  const terms = Object.entries(GLOSSARY).flatMap(([key, term]) => [key, ...(term.also ?? [])])
  const topics = Object.entries(TOPICS).flatMap(([key, { also = [] }]) => [key, ...also])
  const key = keyHint(typed)
  // Words of the trade have hyphens, keys have underscores.
  if (key !== undefined && typed.includes('_')) return `; ${key}`
  const near = nearest(word, [...Object.keys(EXPLANATIONS), ...terms, ...topics])
  if (near !== undefined) return `; did you mean ${near}?`
  if (key !== undefined) return `; ${key}`
  const within = [...Object.keys(EXPLANATIONS), ...terms, ...topics].filter(
    (known) => word.length >= 3 && known.includes(word),
  )
  return within.length === 0 ? '' : `; did you mean ${within.slice(0, 5).join(', ')}?`
}

function explainFinding(id: string, explanation: Explanation): Report {
  const { means, rule, fix } = explanation
  const sources = sourcesOf(explanation)
  return {
    title: id,
    stage: 'explain',
    sections: [
      { kind: 'paragraph', heading: 'What it means', text: means },
      { kind: 'paragraph', heading: 'The rule', text: rule },
      { kind: 'list', heading: 'Where the rule stands', items: sources },
      { kind: 'paragraph', heading: 'How to mend it', text: fix },
    ],
    csv: tableOf([[id, means, rule, sources.join('; '), fix]]),
    result: new Worksheet().result({ findings: [{ id, means, rule, sources, fix }], terms: [] }),
  }
}

function explainTerm(key: string, { means, where, also = [] }: Term): Report {
  return {
    title: key,
    stage: 'explain',
    sections: [
      { kind: 'paragraph', text: means },
      ...(where === undefined ? [] : [{ kind: 'paragraph', heading: 'Where to find it', text: where } as const]),
      ...(also.length === 0 ? [] : [{ kind: 'paragraph', heading: 'Also called', text: also.join(', ') } as const]),
    ],
    csv: { columns: [{ heading: 'Term' }, { heading: 'Means' }], rows: [[key, means]] },
    result: new Worksheet().result({ findings: [], terms: [{ term: key, means, where: where ?? null, also }] }),
  }
}

function explainTopic(key: string, { title, paragraphs, table }: Topic): Report {
  const texts = paragraphs.map((text) => ({ kind: 'paragraph', text }) as const)
  const columns = table?.columns.map((heading) => ({ heading })) ?? []
  return {
    title: `${key}: ${title}`,
    stage: 'explain',
    sections: table === undefined ? texts : [{ kind: 'table', columns, rows: table.rows }, ...texts],
    csv: { columns: [{ heading: 'Topic' }, { heading: 'Says' }], rows: [[key, paragraphs.join(' ')]] },
    result: new Worksheet().result({ findings: [], terms: [], topics: [{ topic: key, title, paragraphs }] }),
  }
}

const KEYS =
  "'gablewatt explain roof_planes' lists the keys of a part, 'gablewatt explain roof_planes.south.tilt_deg' or just 'tilt_deg' tells of one what it means, its unit and range, where to find it, and which results it can move."

function everything(): Report {
  const findings = Object.entries(EXPLANATIONS).map(([id, explanation]) => ({
    id,
    means: explanation.means,
    rule: explanation.rule,
    sources: sourcesOf(explanation),
    fix: explanation.fix,
  }))
  const terms = Object.entries(GLOSSARY).map(([term, { means, where, also = [] }]) => ({
    term,
    means,
    where: where ?? null,
    also,
  }))
  const topics = Object.entries(TOPICS).map(([topic, { title, paragraphs }]) => ({ topic, title, paragraphs }))
  const sections: Section[] = [
    {
      kind: 'table',
      heading: 'Topics',
      columns: [{ heading: 'Topic' }, { heading: 'What it tells' }],
      rows: topics.map(({ topic, title }) => [topic, title]),
    },
    {
      kind: 'table',
      heading: 'Findings',
      columns: [{ heading: 'Id' }, { heading: 'What it means' }],
      rows: findings.map(({ id, means }) => [id, means]),
    },
    {
      kind: 'table',
      heading: 'Words of the trade',
      columns: [{ heading: 'Term' }, { heading: 'What it means' }],
      rows: terms.map(({ term, means }) => [term, means]),
    },
  ]
  return {
    title: `Explanations: ${findings.length} findings, ${terms.length} terms, ${topics.length} topics`,
    stage: 'explain',
    sections: [...sections, { kind: 'paragraph', heading: 'Keys of the project file', text: KEYS }],
    csv: tableOf(findings.map(({ id, means, rule, sources, fix }) => [id, means, rule, sources.join('; '), fix])),
    result: new Worksheet().result({ findings, terms, topics }),
  }
}

function tableOf(rows: readonly (readonly string[])[]) {
  const headings = ['Id', 'What it means', 'Rule', 'Sources', 'How to mend it']
  return { columns: headings.map((heading) => ({ heading })), rows }
}

function sourcesOf({ sources }: Explanation): string[] {
  return [...new Set(sources.map(formatSource))]
}
