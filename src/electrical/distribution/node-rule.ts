import { sectionOf, type Edition, type SectionTopic } from '../../tables/nec/index.js'
import type { Amperes } from '../../values/index.js'
import { within, type NodeRule } from './verdict.js'

/** A comparison that has to hold on a node. */
export interface Comparison {
  readonly rule: string
  readonly topic: SectionTopic
  readonly detail?: string
  readonly formula: string
  /** Values of the symbols in the formula, A. */
  readonly terms?: Readonly<Record<string, number>>
  readonly sumA: Amperes
  readonly limitA: Amperes
  /** What the two sides are, for a sentence. */
  readonly what: string
  /** Largest sum of source currents that it takes, A; unlimited where sources do not enter. */
  readonly maxInverterA?: Amperes
  readonly holds?: boolean
  readonly needed?: NodeRule['needed']
  readonly why?: string
}

/** A rule of a node from a comparison. */
export function compare(edition: Edition, comparison: Comparison): NodeRule {
  const { rule, topic, detail, formula, sumA, limitA, what } = comparison
  const source = sectionOf(edition, topic, detail)
  const holds = comparison.holds ?? within(sumA, limitA)
  return {
    rule,
    section: source.place ?? '',
    standing: source.standing,
    needed: comparison.needed ?? 'all',
    holds,
    sumA,
    limitA,
    formula,
    terms: comparison.terms ?? {},
    why: comparison.why ?? `${what}: ${sumA.toFixed(1)} A ${within(sumA, limitA) ? '<=' : '>'} ${limitA.toFixed(1)} A`,
    maxInverterA: Math.max(0, comparison.maxInverterA ?? Infinity),
    label: '',
  }
}
