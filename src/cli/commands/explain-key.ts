import { aboutKey, findKeys, writtenKey, type KeyFacts, type KnownKey, type MovedResult } from '../../project/index.js'
import type { Report, Section } from '../../report/index.js'
import { Worksheet } from '../../worksheet/index.js'

/** Subcommands that show a result. */
const SHOWN_BY: Readonly<Record<MovedResult, string>> = {
  roof: 'the places of modules',
  yield: 'estimate-yield',
  wire: 'size-wire',
  mounts: 'space-mounts',
  bom: 'price-bom',
  payback: 'payback',
  size: 'choose-size',
  work: 'plan-work',
  packet: 'draw-permit',
  output: 'review-output',
}

const DOUBT =
  'Common practice, no source: labels and sheets differ, and where a label says something else, the label counts.'

/** Keys of the project file that are meant by words, undefined when none are. */
export function explainKeys(words: string): Report | undefined {
  const keys = findKeys(words)
  const [only] = keys
  if (only === undefined) return undefined
  if (keys.length > 1) return severalKeys(words, keys)
  const isWhole = only.pattern.length === words.split(/[.[]/u).length
  return oneKey(isWhole ? aboutKey(only, words.trim()) : aboutKey(only))
}

function oneKey(facts: KeyFacts): Report {
  const { path, means, unit, allowed, example, required, where, moves, below } = facts
  const shown = moves.map((one) => SHOWN_BY[one])
  const sections: Section[] = [
    { kind: 'paragraph', text: means },
    {
      kind: 'facts',
      facts: [
        ...(unit === '' ? [] : [{ label: 'Unit', value: unit }]),
        { label: 'Allowed', value: allowed },
        ...(example === undefined ? [] : [{ label: 'Example', value: example }]),
        {
          label: 'Needed',
          value: required ? 'yes, where its part is present' : 'no, or only by results that ask for it',
        },
      ],
    },
  ]
  if (where !== undefined) {
    sections.push({ kind: 'paragraph', heading: 'Where to find it', text: `${sentence(where)} ${DOUBT}` })
  }
  if (moves.length > 0) {
    const payback = moves.includes('bom') && !moves.includes('payback') ? PRICE : ''
    const text = `${shown.join(', ')}. Whether it does depends on the rest of the project.${payback}`
    sections.push({ kind: 'paragraph', heading: 'Results that it can move', text })
  }
  if (below.length > 0) {
    sections.push({
      kind: 'table',
      heading: 'Keys below it',
      columns: [{ heading: 'Key' }, { heading: 'What it means' }],
      rows: below.map(({ key, means: text }) => [key, text]),
    })
  }
  return {
    title: path,
    stage: 'explain',
    sections,
    csv: keyTable([facts]),
    result: new Worksheet().result({ findings: [], terms: [], keys: [jsonOf(facts)] }),
  }
}

const PRICE = ' The payback follows the bill of materials where no price is stated.'

function severalKeys(words: string, keys: readonly KnownKey[]): Report {
  const facts = keys.map((key) => aboutKey(key))
  return {
    title: `${words}: ${keys.length} keys of the project file`,
    stage: 'explain',
    sections: [
      {
        kind: 'table',
        columns: [{ heading: 'Key' }, { heading: 'What it means' }],
        rows: facts.map(({ path, means }) => [path, means]),
      },
      { kind: 'paragraph', text: `'gablewatt explain ${writtenKey(keys[0] as KnownKey)}' tells more about one.` },
    ],
    csv: keyTable(facts),
    result: new Worksheet().result({ findings: [], terms: [], keys: facts.map(jsonOf) }),
  }
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`
}

function keyTable(facts: readonly KeyFacts[]) {
  const headings = ['Key', 'What it means', 'Unit', 'Allowed', 'Example', 'Where to find it', 'Moves']
  return {
    columns: headings.map((heading) => ({ heading })),
    rows: facts.map(({ path, means, unit, allowed, example, where, moves }) => [
      path,
      means,
      unit,
      allowed,
      example ?? '',
      where ?? '',
      moves.map((one) => SHOWN_BY[one]).join(', '),
    ]),
  }
}

function jsonOf({ path, example, where, below, ...facts }: KeyFacts): Record<string, unknown> {
  return { key: path, ...facts, example: example ?? null, where: where ?? null, below }
}
