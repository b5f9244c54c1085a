import type { LabelCondition, LabelRule, LabelSpot } from '../../tables/nec/index.js'
import { panelsAsking, type LabelFacts } from './label-facts.js'

/** Equipment that a label is fixed to. */
export type LabelPlace =
  | 'main_panel'
  | 'pv_disconnect'
  | 'combiner'
  | 'inverter'
  | 'dc_disconnect'
  | 'dc_raceway'
  | 'shutdown_switch'
  | 'meter'

/** Conditions that are the same for every label; a busbar rule is asked by the label's id. */
const HOLDS: Readonly<Record<Exclude<LabelCondition, 'busbar rule asks for it'>, (facts: LabelFacts) => boolean>> = {
  always: () => true,
  'dc strings': (facts) => facts.strings,
  'load side': (facts) => !facts.supplySide,
  'several kinds of rapid shutdown': (facts) => facts.moduleLevel && facts.arrayStaysLive,
  // The project file has no storage.
  'storage or backup': () => false,
  asked: () => false,
  'fixed at the factory': () => false,
  'a rule for every label': () => false,
}

/** Where the project needs a label; nowhere when it does not need it. */
export function labelPlaces(rule: LabelRule, facts: LabelFacts): LabelPlace[] {
  if (rule.condition === 'busbar rule asks for it')
    return rule.id === 'BACKFED_BREAKER' || rule.id === 'SUM_RULE' ? panelsAsking(facts, rule.id) : []
  if (!HOLDS[rule.condition](facts)) return []
  return [...new Set(rule.at.map((spot) => placeOf(spot, facts)))]
}

/** Whether a condition holds that no panel decides. */
export function conditionHolds(
  condition: Exclude<LabelCondition, 'busbar rule asks for it'>,
  facts: LabelFacts,
): boolean {
  return HOLDS[condition](facts)
}

function placeOf(spot: LabelSpot, facts: LabelFacts): LabelPlace {
  const disconnect = facts.disconnects > 0 ? 'pv_disconnect' : 'main_panel'
  if (spot === 'pv_disconnect') return disconnect
  if (spot !== 'shutdown_initiator') return spot
  const initiator = facts.project.electrical?.rapid_shutdown?.initiator
  if (initiator === 'service_disconnect') return 'main_panel'
  return initiator === 'switch' ? 'shutdown_switch' : disconnect
}
