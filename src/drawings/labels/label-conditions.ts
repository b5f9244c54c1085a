import type { LabelCondition, LabelRule, LabelSpot } from '../../tables/nec/index.js'
import type { LabelFacts } from './label-facts.js'
import {
  landingPanel,
  panelsAsking,
  panelsOfExisting,
  panelsWithSources,
  servicePanels,
  type LabelPlace,
} from './label-places.js'

/** Conditions that are the same for every label; a busbar rule is asked by the label's id. */
const HOLDS: Readonly<Record<Exclude<LabelCondition, 'busbar rule asks for it'>, (facts: LabelFacts) => boolean>> = {
  always: () => true,
  'dc strings': (facts) => facts.strings,
  'load side': (facts) => !facts.supplySide,
  'several kinds of rapid shutdown': (facts) => facts.moduleLevel && facts.arrayStaysLive,
  'storage or backup': ({ wiring }) => wiring.storage !== undefined,
  asked: () => false,
  'fixed at the factory': () => false,
  'a rule for every label': () => false,
}

/** Where the project needs a label; nowhere when it does not need it. */
export function labelPlaces(rule: LabelRule, facts: LabelFacts): LabelPlace[] {
  if (rule.condition === 'busbar rule asks for it')
    return rule.id === 'BACKFED_BREAKER' || rule.id === 'SUM_RULE' ? panelsAsking(facts, rule.id) : []
  if (rule.id === EMERGENCY_LABEL) return emergencyPlaces(facts)
  if (!HOLDS[rule.condition](facts)) return []
  if (rule.condition === 'storage or backup') return storagePlaces(rule.id, facts)
  return [...new Set(rule.at.flatMap((spot) => placesOf(rule.id, spot, facts)))]
}

/** The label of an outdoor emergency disconnect; a house that states one has it. */
export const EMERGENCY_LABEL = 'EMERGENCY_DISC'

/** Where the emergency disconnect of the house is; nowhere while none is stated. */
function emergencyPlaces(facts: LabelFacts): LabelPlace[] {
  const kind = facts.project.existing_house?.emergency_disconnect
  if (kind === undefined || kind === 'none') return []
  return kind === 'service_disconnect' ? servicePanels(facts) : ['meter']
}

/** Where the labels of a storage go: its disconnect, what shuts it down from outside, the service equipment of a house with backup. */
function storagePlaces(id: string, facts: LabelFacts): LabelPlace[] {
  const { storage } = facts.wiring
  if (storage === undefined) return []
  if (id === 'ESS_DISC') return ['storage_disconnect']
  if (id === 'ESS_SHUTDOWN') return storage.disconnect.outside === 'shutdown_function' ? ['storage_shutdown'] : []
  return id === 'STANDBY_SIGN' && storage.backup !== null ? servicePanels(facts) : []
}

/** Whether a condition holds that no panel decides. */
export function conditionHolds(
  condition: Exclude<LabelCondition, 'busbar rule asks for it'>,
  facts: LabelFacts,
): boolean {
  return HOLDS[condition](facts)
}

function placesOf(id: string, spot: LabelSpot, facts: LabelFacts): LabelPlace[] {
  const disconnect: LabelPlace = facts.disconnects > 0 ? 'pv_disconnect' : landingPanel(facts)
  if (spot === 'pv_disconnect') return [disconnect]
  if (spot === 'main_panel') return panelsOfRule(id, facts)
  if (spot !== 'shutdown_initiator') return [spot]
  const initiator = facts.project.electrical?.rapid_shutdown?.initiator
  if (initiator === 'service_disconnect') return servicePanels(facts)
  return [initiator === 'switch' ? 'shutdown_switch' : disconnect]
}

/** Panels that a label of the main panel goes to where there are several. */
function panelsOfRule(id: string, facts: LabelFacts): LabelPlace[] {
  if (id === 'SOURCES_PRESENT') return panelsWithSources(facts)
  if (id === 'DISC_PURPOSE') return [landingPanel(facts)]
  return id === 'DIRECTORY' ? [...servicePanels(facts), ...panelsOfExisting(facts)] : servicePanels(facts)
}
