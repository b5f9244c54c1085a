import type { NodeValues, PanelValues, RuleValues } from '../system/index.js'
import type { Amperes } from '../../values/index.js'
import type { PanelNode } from './tree.js'
import type { NodeRule, NodeVerdict } from './verdict.js'

/**
 * A node as the JSON shows it.
 *
 * @param faultA Fault current that can flow there; undefined where it is not known.
 */
export function nodeValues(verdict: NodeVerdict, faultA: Amperes | undefined): NodeValues {
  return {
    id: verdict.id,
    kind: verdict.kind,
    parent: verdict.parent ?? null,
    name: verdict.name,
    bus_a: verdict.busA ?? null,
    main_a: verdict.mainA ?? null,
    inverter_a: verdict.inverterA,
    rules: verdict.rules.map((rule) => ({ ...ruleValues(rule), needed: rule.needed })),
    complies: verdict.complies,
    governs: verdict.governs?.rule ?? null,
    section: verdict.governs?.section ?? null,
    fault_current_a: faultA ?? null,
  }
}

/** The panel that takes the PV breaker, as the JSON shows it. */
export function panelValues(panel: PanelNode, verdict: NodeVerdict, spacesNeeded: number): PanelValues {
  const ways = verdict.rules.filter(({ needed }) => needed === 'one_of')
  const governing =
    ways.find(({ holds }) => holds) ??
    ways.reduce<NodeRule | undefined>(
      (best, rule) => (best === undefined || rule.maxInverterA > best.maxInverterA ? rule : best),
      undefined,
    )
  return {
    bus_a: panel.busA,
    main_a: verdict.mainA ?? null,
    inverter_a: verdict.inverterA,
    rule: governing?.rule ?? '',
    section: governing?.section ?? '',
    complies: verdict.complies,
    max_inverter_a: Math.max(0, ...ways.map(({ maxInverterA }) => maxInverterA)),
    ...(governing?.maxBreakersA === undefined ? {} : { max_breakers_a: governing.maxBreakersA }),
    label: governing?.holds === true ? governing.label : '',
    rules: ways.map(ruleValues),
    spaces_needed: spacesNeeded,
    spaces_free: panel.spacesFree ?? null,
  }
}

function ruleValues({ rule, section, holds, sumA, limitA, why, maxInverterA, label }: NodeRule): RuleValues {
  return {
    rule,
    section,
    holds,
    sum_a: sumA ?? null,
    limit_a: limitA ?? null,
    why,
    max_inverter_a: Number.isFinite(maxInverterA) ? maxInverterA : (limitA ?? 0),
    label,
  }
}
