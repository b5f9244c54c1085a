import type { NodeRuleValues, NodeValues, WiringValues } from '../../electrical/index.js'
import { plainNumber, type Block } from '../layout/index.js'
import { nodeTitle } from '../node-title.js'
import { columns } from './columns.js'

/** Every part of the installation with the rules that it was judged by. */
export function nodeSchedule(wiring: WiringValues): Block {
  return {
    kind: 'table',
    columns: columns(
      ['Part', 0.17],
      ['Bus', 0.07],
      ['Main', 0.07],
      ['Rule', 0.2],
      ['Section', 0.17],
      ['Sum', 0.09],
      ['Limit', 0.09],
      ['Holds', 0.14],
    ),
    rows: wiring.distribution.flatMap((node) => rowsOf(node)),
  }
}

function rowsOf(node: NodeValues): string[][] {
  const head = [nodeTitle(node), amps(node.bus_a), amps(node.main_a)]
  if (node.rules.length === 0) return [[...head, 'nothing stated to judge by', '', '', '', '']]
  return node.rules.map((rule) => [
    ...head,
    rule.rule,
    rule.section,
    amps(rule.sum_a),
    amps(rule.limit_a),
    holdsText(node, rule),
  ])
}

/** A way that does not hold matters only where no other way does. */
function holdsText(node: NodeValues, { rule, holds, needed }: NodeRuleValues): string {
  if (!holds) return needed === 'one_of' && node.complies ? 'no, not used' : 'NO'
  return rule === node.governs ? 'yes, governs' : 'yes'
}

const amps = (value: number | null): string => (value === null ? '' : `${plainNumber(value, 1)} A`)
