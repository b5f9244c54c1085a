import type { SourceStanding } from '../../worksheet/index.js'
import type { Amperes } from '../../values/index.js'

/** One rule on one node. */
export interface NodeRule {
  readonly rule: string
  readonly section: string
  readonly standing: SourceStanding
  /** Whether one of its kind is enough for the node, or each has to hold. */
  readonly needed: 'one_of' | 'all'
  readonly holds: boolean
  readonly sumA: Amperes | undefined
  readonly limitA: Amperes | undefined
  /** What has to be true, with symbols. */
  readonly formula: string
  /** Values of the symbols in the formula, A. */
  readonly terms: Readonly<Record<string, number>>
  readonly why: string
  /** Largest sum of source currents through the node that this rule takes, A. */
  readonly maxInverterA: Amperes
  /** Largest sum of source breakers that a rule takes which counts breakers, A. */
  readonly maxBreakersA?: Amperes
  readonly label: string
}

export type NodeKind = 'service' | 'panel' | 'combiner' | 'feeder' | 'tap' | 'source'

/** What was found about one node of the tree. */
export interface NodeVerdict {
  readonly id: string
  readonly kind: NodeKind
  readonly parent: string | undefined
  readonly name: string
  readonly where: string
  readonly busA: Amperes | undefined
  readonly mainA: Amperes | undefined
  /** Source current through it, A. */
  readonly inverterA: Amperes
  readonly rules: readonly NodeRule[]
  readonly complies: boolean
  /** The rule that governs: of several ways the first that holds, else the one that takes most; a rule that fails first. */
  readonly governs: NodeRule | undefined
  /** Largest sum of source currents that it takes, A. */
  readonly maxInverterA: Amperes
}

type Facts = Omit<NodeVerdict, 'complies' | 'governs' | 'maxInverterA'>

/** Puts the rules of a node together: each that is needed, and one of the ways. */
export function nodeVerdict(facts: Facts): NodeVerdict {
  const each = facts.rules.filter(({ needed }) => needed === 'all')
  const ways = facts.rules.filter(({ needed }) => needed === 'one_of')
  const failing = each.find(({ holds }) => !holds)
  const way =
    ways.find(({ holds }) => holds) ??
    ways.reduce<NodeRule | undefined>(
      (best, rule) => (best === undefined || rule.maxInverterA > best.maxInverterA ? rule : best),
      undefined,
    )
  const tightest = each.reduce<NodeRule | undefined>(
    (best, rule) => (best === undefined || spare(rule) < spare(best) ? rule : best),
    undefined,
  )
  return {
    ...facts,
    complies: failing === undefined && (ways.length === 0 || way?.holds === true),
    governs: failing ?? way ?? tightest,
    maxInverterA: Math.min(
      ...each.map(({ maxInverterA }) => maxInverterA),
      ways.length === 0 ? Infinity : Math.max(...ways.map(({ maxInverterA }) => maxInverterA)),
    ),
  }
}

const spare = ({ sumA, limitA }: NodeRule): number =>
  sumA === undefined || limitA === undefined || limitA === 0 ? Infinity : (limitA - sumA) / limitA

/** Relative noise of sums. */
const NOISE = 1e-12

export const within = (sumA: Amperes, limitA: Amperes): boolean => sumA <= limitA * (1 + NOISE)
