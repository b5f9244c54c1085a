import { SOURCE_FACTOR } from '../../tables/nec/index.js'
import type { Amperes } from '../../values/index.js'
import { judgeFeeder } from './judge-feeder.js'
import { judgePanel } from './judge-panel.js'
import { judgeService } from './judge-service.js'
import { judgeTap } from './judge-tap.js'
import { compare } from './node-rule.js'
import { feederTo, flowOnSupplySide } from './flows.js'
import { PV_SOURCE, SERVICE, type SourceNode, type Tree } from './tree.js'
import { nodeVerdict, type NodeVerdict } from './verdict.js'

/**
 * Every node of the installation under every rule of the edition that may apply, from the utility inwards.
 *
 * @source NEC 705.11, 705.12, 705.13, 240.21(B), 408.36, 215, 230 of the edition
 */
export function judgeTree(tree: Tree): NodeVerdict[] {
  return [
    judgeService(tree),
    ...tree.panels.map((panel) => judgePanel(tree, panel)),
    ...tree.feeders.map((feeder) => judgeFeeder(tree, feeder)),
    ...tree.taps.map((tap) => judgeTap(tree, tap)),
    ...tree.sources.filter(({ id }) => id !== PV_SOURCE).map((source) => judgeSource(tree, source)),
  ]
}

const KIND = { pv: 'PV', storage: 'storage', generator: 'generator' } as const

/** A source beside the PV system: its devices carry it. */
function judgeSource(tree: Tree, source: SourceNode): NodeVerdict {
  const { id, name, where, at, currentA, devices } = source
  const deviceA = devices.some(({ ratingA }) => ratingA === undefined)
    ? undefined
    : devices.reduce<number | undefined>((sum, { ratingA = 0 }) => (sum ?? 0) + ratingA, undefined)
  return nodeVerdict({
    id,
    kind: 'source',
    parent: at === 'supply_side' ? SERVICE : 'panel' in at ? at.panel : at.tap,
    name: `${name} (${KIND[source.kind]})`,
    where,
    busA: undefined,
    mainA: deviceA,
    inverterA: source.runsInParallel ? currentA : 0,
    rules:
      deviceA === undefined
        ? []
        : [
            compare(tree.edition, {
              rule: 'device of the source',
              topic: 'acOutputSizing',
              formula: '1.25 x I <= D',
              terms: { I: currentA, D: deviceA },
              sumA: SOURCE_FACTOR * currentA,
              limitA: deviceA,
              what: '125 percent of its output, against its device',
              maxInverterA: deviceA / SOURCE_FACTOR,
            }),
          ],
  })
}

/** Ids of the nodes between the PV system and the utility, itself not among them, from the service inwards. */
export function pathOfPv(tree: Tree): string[] {
  const at = tree.sources.find(({ id }) => id === PV_SOURCE)?.at
  if (at === undefined || at === 'supply_side') return [SERVICE]
  if ('panel' in at) return [...wayTo(tree, at.panel), at.panel]
  const tap = tree.taps.find(({ id }) => id === at.tap)
  const feeder = tree.feeders.find(({ id }) => id === tap?.feeder)
  if (feeder === undefined) return [SERVICE, at.tap]
  return [...wayTo(tree, feeder.from), feeder.from, feeder.id, at.tap]
}

function wayTo(tree: Tree, panel: string): string[] {
  const feeder = feederTo(tree, panel)
  return feeder === undefined ? [SERVICE] : [...wayTo(tree, feeder.from), feeder.from, feeder.id]
}

/**
 * Largest current of the PV system of the project that every node on its way takes, beside the other sources, A; undefined
 * where nothing that limits it is known.
 */
export function largestPvA(tree: Tree, verdicts: readonly NodeVerdict[]): Amperes | undefined {
  const pvA = tree.sources.find(({ id }) => id === PV_SOURCE)?.currentA ?? 0
  const onWay = new Set(pathOfPv(tree))
  const limits = verdicts
    .filter(({ id, kind }) => onWay.has(id) && kind !== 'service')
    .map(({ maxInverterA, inverterA }) => maxInverterA - (inverterA - pvA))
  const supply = verdicts.flatMap(({ rules }) => rules).find(({ rule }) => rule === 'supply side')
  const flow = flowOnSupplySide(tree)
  const own = flow.sources.some(({ id }) => id === PV_SOURCE) && supply !== undefined
  const most = Math.min(...limits, ...(own ? [supply.maxInverterA - (flow.currentA - pvA)] : []))
  return Number.isFinite(most) ? Math.max(0, most) : undefined
}

/** Nodes between the PV system and the utility that do not take it; of the service only what sources have to do with. */
export function failingOnWay(tree: Tree, verdicts: readonly NodeVerdict[]): NodeVerdict[] {
  const way = new Set(pathOfPv(tree))
  return verdicts.filter(({ id, kind, complies, rules }) =>
    kind === 'service' ? rules.some(({ rule, holds }) => rule === 'supply side' && !holds) : way.has(id) && !complies,
  )
}
