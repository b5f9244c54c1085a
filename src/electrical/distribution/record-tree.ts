import { necSource } from '../../tables/nec/index.js'
import type { Job } from '../system/index.js'
import type { Tree } from './tree.js'
import type { NodeRule, NodeVerdict } from './verdict.js'

/** Every rule of every node on the worksheet, from the utility inwards. */
export function recordTree(job: Job, tree: Tree, verdicts: readonly NodeVerdict[]): void {
  for (const verdict of verdicts) {
    const ways = verdict.rules.filter(({ needed }) => needed === 'one_of')
    const each = verdict.rules.filter(({ needed }) => needed === 'all')
    if (verdict.kind === 'feeder' || verdict.kind === 'tap') recordConductor(job, tree, verdict)
    for (const [i, rule] of each.entries()) recordRule(job, `${baseOf(verdict)}.check-${i + 1}`, verdict, rule)
    for (const [i, rule] of ways.entries()) recordRule(job, `${baseOf(verdict)}.rule-${i + 1}`, verdict, rule)
  }
}

const baseOf = ({ id, kind }: NodeVerdict): string =>
  kind === 'panel' && id !== 'panel'
    ? `wire.panel.${id}`
    : kind === 'feeder' || kind === 'tap' || kind === 'source'
      ? `wire.${kind}.${id}`
      : `wire.${id}`

const PLACES: Readonly<Record<string, string>> = {
  B: 'bus_a',
  M: 'main_a',
  L: 'load_a',
  R: 'rating_a',
}

const WORDS: Readonly<Record<string, string>> = {
  I: 'sum of rated outputs of the sources',
  Z: 'ampacity of the conductors',
  D: 'device of the feeder',
  S: 'sources, as the edition counts them',
  E: 'device at the end',
  F: 'device of the feeder, with what sources add to it',
  U: 'sources that are not controlled',
}

function recordRule(job: Job, id: string, verdict: NodeVerdict, rule: NodeRule): void {
  const { sumA, limitA } = rule
  job.worksheet.note({
    id,
    says:
      (verdict.kind === 'panel' || verdict.kind === 'combiner') && rule.needed === 'one_of'
        ? `Connection rule "${rule.rule}" on the busbar of the ${verdict.name}: ${rule.why}`
        : `${sentence(rule.rule)}, ${verdict.name}: ${rule.why}`,
    formula: rule.formula,
    inputs: Object.entries(rule.terms).map(([symbol, value]) => ({
      symbol,
      value,
      unit: 'A',
      from: WORDS[symbol] ?? `${verdict.where}.${PLACES[symbol] ?? ''}`,
    })),
    result:
      sumA === undefined
        ? { symbol: 'holds', value: rule.holds ? 'yes' : 'not usable', unit: '' }
        : { symbol: 'sum', value: sumA, unit: 'A' },
    // A way may not be usable though its numbers would fit; then its words say why, and nothing is compared.
    ...(sumA !== undefined && limitA !== undefined && (rule.holds || sumA > limitA)
      ? { check: { relation: '<=' as const, limit: limitA, pass: rule.holds } }
      : {}),
    source: necSource(job.edition, rule.section, rule.standing),
  })
}

function recordConductor(job: Job, tree: Tree, verdict: NodeVerdict): void {
  const node = [...tree.feeders, ...tree.taps].find(({ id }) => id === verdict.id)
  if (node === undefined) return
  const { size, material, ampacityA, how, named } = node.conductor
  job.worksheet.note({
    id: `${baseOf(verdict)}.ampacity`,
    says: `${named ? 'Stated' : 'Smallest'} conductors of the ${verdict.name}: ${how}`,
    formula: 'smaller of table x factors and terminal column',
    inputs: [{ symbol: 'size', value: `${size} ${material}`, unit: '', from: `${verdict.where}.size_awg` }],
    result: { symbol: 'Z', value: ampacityA, unit: 'A' },
    source: job.nec('ampacityTable'),
  })
}

const sentence = (text: string): string => `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}`
