import type { WiringValues } from '../../electrical/index.js'
import { listModuleGroups, type Project } from '../../project/index.js'
import { countFitted } from '../../roof/index.js'
import { busbarRules, type BusbarRule, type Edition } from '../../tables/nec/index.js'

/** What conditions, places and words of labels are made from. */
export interface LabelFacts {
  readonly project: Project
  readonly wiring: WiringValues
  readonly edition: Edition
  readonly strings: boolean
  readonly moduleLevel: boolean
  readonly supplySide: boolean
  /** PV system disconnects beside the panel; on the supply side there is always one. */
  readonly disconnects: number
  readonly hasCombiner: boolean
  /** Whether conductors in the array stay live in the sun after a rapid shutdown. */
  readonly arrayStaysLive: boolean
}

export function labelFacts(project: Project, wiring: WiringValues): LabelFacts {
  const strings = wiring.circuits.some((circuit) => circuit.kind === 'dc_string')
  const supplySide = project.electrical?.connection?.kind === 'supply_side'
  const stated = Object.values(project.electrical?.disconnects ?? {}).filter((each) => each.kind === 'pv_system')
  const inside = project.electrical?.rapid_shutdown?.inside_boundary
  return {
    project,
    wiring,
    edition: wiring.edition as Edition,
    strings,
    moduleLevel: listModuleGroups(countFitted(project)).some((group) => group.conversion.kind === 'module_level'),
    supplySide,
    disconnects: Math.max(stated.length, supplySide ? 1 : 0),
    hasCombiner: wiring.combiner !== null,
    arrayStaysLive: strings && inside !== 'module_level' && inside !== 'hazard_control_system',
  }
}

/** Panels whose governing busbar rule asks for a label. */
export function panelsAsking(
  facts: LabelFacts,
  label: NonNullable<BusbarRule['label']>,
): ('main_panel' | 'combiner')[] {
  const { panel, combiner } = facts.wiring
  const asks = (values: typeof combiner): boolean =>
    values?.complies === true &&
    busbarRules.some(
      (rule) =>
        rule.edition === facts.edition &&
        rule.section === values.section &&
        rule.rule === values.rule &&
        rule.label === label,
    )
  return [...(asks(panel) ? (['main_panel'] as const) : []), ...(asks(combiner) ? (['combiner'] as const) : [])]
}
