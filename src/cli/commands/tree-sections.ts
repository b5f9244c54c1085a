import type { ConductorValues, NodeRuleValues, NodeValues, WiringValues } from '../../electrical/index.js'
import type { Cell, Section } from '../../report/index.js'

/** Service, panels, feeders, taps and sources with the rules that they were judged by. */
export function treeSections(values: WiringValues): Section[] {
  return [
    parts(values),
    rules(values),
    ...(values.remedies.length === 0 ? [] : waysOut(values)),
    ...(values.conductors.length === 0 ? [] : [conductors(values)]),
  ]
}

/** What hangs on what; the title tells what is known of load and fault current. */
function parts({ distribution, service_load_a: loadA, fault_current: fault }: WiringValues): Section {
  const notes = [
    ...(loadA === null ? [] : [`calculated load ${loadA.toFixed(1)} A`]),
    ...(fault === null ? [] : [`${Math.round(fault.governs_a)} A fault current at the service`]),
  ]
  return {
    kind: 'table',
    heading: `Service, panels, feeders and sources${notes.length === 0 ? '' : ` (${notes.join(', ')})`}`,
    columns: [
      { heading: 'Part' },
      { heading: 'On' },
      { heading: 'Bus', unit: 'A' },
      { heading: 'Main', unit: 'A' },
      { heading: 'Sources', unit: 'A', decimals: 2 },
      { heading: 'Fault', unit: 'A' },
      { heading: 'Verdict' },
    ],
    rows: distribution.map((node) => [
      node.name,
      node.parent === null ? 'utility' : titleOf(distribution, node.parent),
      node.bus_a,
      node.main_a,
      node.inverter_a,
      node.fault_current_a,
      node.complies ? { value: 'complies', tone: 'good' } : { value: 'FAILS', tone: 'bad' },
    ]),
  }
}

/** The rule that governs each part, and each that fails and is needed. */
function rules({ distribution }: WiringValues): Section {
  return {
    kind: 'table',
    heading: 'Rules that govern them',
    columns: [
      { heading: 'Part' },
      { heading: 'Rule' },
      { heading: 'Section' },
      { heading: 'Sum', unit: 'A', decimals: 2 },
      { heading: 'Limit', unit: 'A', decimals: 1 },
      { heading: 'Verdict' },
    ],
    rows: distribution.flatMap(ruleRows),
  }
}

function ruleRows(node: NodeValues): Cell[][] {
  const shown = node.rules.filter(
    (rule) => rule.rule === node.governs || (!rule.holds && (rule.needed === 'all' || !node.complies)),
  )
  if (shown.length === 0)
    return [[node.name, 'nothing stated to judge by', null, null, null, { value: 'open', tone: 'warn' }]]
  return shown.map((rule) => [node.name, rule.rule, rule.section, rule.sum_a, rule.limit_a, verdict(node, rule)])
}

function verdict({ complies }: NodeValues, { holds, needed }: NodeRuleValues): Cell {
  if (holds) return { value: 'holds', tone: 'good' }
  return needed === 'one_of' && complies ? { value: 'not used', tone: 'dim' } : { value: 'FAILS', tone: 'bad' }
}

function titleOf(distribution: readonly NodeValues[], id: string | null): string | null {
  return distribution.find((node) => node.id === id)?.name ?? id
}

/** What can be done where no rule holds, in the order to try it. */
function waysOut({ remedies }: WiringValues): Section[] {
  return [
    {
      kind: 'table',
      heading: 'Ways out, in the order to try them',
      columns: [
        { heading: 'What' },
        { heading: 'Room for', unit: 'A', decimals: 1 },
        { heading: 'Passes' },
        { heading: 'Cost', unit: 'USD', decimals: 0 },
        { heading: 'Section' },
      ],
      rows: remedies.map((remedy) => [
        remedy.what,
        remedy.reaches_a,
        passes(remedy.passes),
        remedy.cost_usd ?? 'not stated',
        remedy.section,
      ]),
    },
    { kind: 'list', heading: 'Why', items: remedies.map(({ what, why }) => `${what}: ${why}`) },
  ]
}

function passes(value: boolean | null): Cell {
  if (value === null) return { value: 'a fact is missing', tone: 'warn' }
  return value ? { value: 'yes', tone: 'good' } : { value: 'no', tone: 'bad' }
}

/** Every conductor from the array to the utility by its tag. */
function conductors({ conductors: list, distribution }: WiringValues): Section {
  return {
    kind: 'table',
    heading: 'Conductors by tag',
    columns: [
      { heading: 'Tag' },
      { heading: 'From' },
      { heading: 'To' },
      { heading: 'Size' },
      { heading: 'Ampacity', unit: 'A', decimals: 1 },
      { heading: 'Required', unit: 'A', decimals: 1 },
      { heading: 'Device', unit: 'A' },
      { heading: 'Ground' },
    ],
    rows: list.map((each): Cell[] => [
      each.tag,
      titleOf(distribution, each.from),
      titleOf(distribution, each.to),
      sizeWords(each),
      each.ampacity_a,
      each.required_a === 0 ? null : each.required_a,
      each.ocpd_size_ok === false ? { value: each.ocpd_a ?? 'none', tone: 'bad' } : each.ocpd_a,
      each.ampacity_a === null ? null : each.grounding_awg,
    ]),
  }
}

function sizeWords({ sets, size_awg: size, material }: ConductorValues): string {
  const metal = material === 'copper' ? 'Cu' : 'Al'
  return `${sets > 1 ? `${sets} x ` : ''}${size.includes('kcmil') ? size : `${size} AWG`} ${metal}`
}
