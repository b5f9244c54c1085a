import type { NodeValues, WiringValues } from '../../electrical/index.js'
import { busbarRules, type BusbarRule } from '../../tables/nec/index.js'
import { nodeTitle } from '../node-title.js'
import type { LabelFacts } from './label-facts.js'

/** Equipment that a label is fixed to: `main_panel` is the panel of the short form, others go by their id. */
export type LabelPlace =
  | 'main_panel'
  | 'pv_disconnect'
  | 'combiner'
  | 'inverter'
  | 'dc_disconnect'
  | 'dc_raceway'
  | 'shutdown_switch'
  | 'meter'
  | 'storage_disconnect'
  | 'storage_shutdown'
  | `panel:${string}`

/** A panel of the installation as a place of labels. */
export function panelPlace({ id }: Pick<NodeValues, 'id'>): LabelPlace {
  return id === 'panel' ? 'main_panel' : id === 'combiner' ? 'combiner' : `panel:${id}`
}

/** What a place is called in lists and on the sheet. */
export function placeTitle(place: LabelPlace, wiring: WiringValues): string {
  if (!place.startsWith('panel:')) return place.replaceAll('_', ' ')
  const node = wiring.distribution.find(({ id }) => `panel:${id}` === place)
  return node === undefined ? place.slice('panel:'.length) : nodeTitle(node)
}

const panelsOf = ({ wiring }: LabelFacts): NodeValues[] => wiring.distribution.filter(({ kind }) => kind === 'panel')

/** Panels that the service feeds. */
export function servicePanels(facts: LabelFacts): LabelPlace[] {
  if (!facts.longForm) return ['main_panel']
  return panelsOf(facts)
    .filter(({ parent }) => parent === 'service')
    .map(panelPlace)
}

/** Panels whose busbar carries current of a source, from the service inwards. */
export function panelsWithSources(facts: LabelFacts): LabelPlace[] {
  if (!facts.longForm) return ['main_panel']
  return panelsOf(facts)
    .filter((node) => sourcesThrough(facts, node.id).length > 0)
    .map(panelPlace)
}

/** Where the PV system of the project lands: its panel, the panel before its tap, or the panel at the service. */
export function landingPanel(facts: LabelFacts): LabelPlace {
  if (!facts.longForm) return 'main_panel'
  const { landing } = facts
  const found = landing === undefined ? undefined : panelOn(facts, landing)
  return found === undefined ? (servicePanels(facts)[0] ?? 'main_panel') : panelPlace(found)
}

/** Panels on which the breaker of a source stands that is there already. */
export function panelsOfExisting(facts: LabelFacts): LabelPlace[] {
  const sources = facts.wiring.distribution.filter(({ kind }) => kind === 'source')
  return panelsOf(facts)
    .filter(({ id }) => sources.some(({ parent }) => parent === id))
    .map(panelPlace)
}

/** Panels whose governing rule of the busbar asks for a label. */
export function panelsAsking(facts: LabelFacts, label: NonNullable<BusbarRule['label']>): LabelPlace[] {
  const asking = new Set(
    busbarRules.flatMap((rule) =>
      rule.edition === facts.edition && rule.label === label ? [`${rule.section} ${rule.rule}`] : [],
    ),
  )
  return facts.wiring.distribution
    .filter(({ kind, complies }) => complies && (kind === 'panel' || kind === 'combiner'))
    .filter(({ section, governs }) => asking.has(`${section} ${governs}`))
    .map(panelPlace)
}

/** Panels that a power control system lets in. */
export function panelsControlled({ wiring }: LabelFacts): LabelPlace[] {
  return wiring.distribution
    .filter(({ kind, complies, governs }) => kind === 'panel' && complies && governs === 'power control system')
    .map(panelPlace)
}

/** Ids of the sources whose current passes a panel; `pv` is the system of the project. */
export function sourcesThrough(facts: LabelFacts, panelId: string): string[] {
  const { wiring, landing } = facts
  const existing = wiring.distribution.filter(({ kind }) => kind === 'source')
  const passes = (from: string | null): boolean => wayIn(wiring, from).includes(panelId)
  return [
    ...(landing !== undefined && passes(landing) ? ['pv'] : []),
    ...existing.filter(({ parent }) => passes(parent)).map(({ id }) => id),
  ]
}

/** Ids from a node to the service, itself among them. */
function wayIn(wiring: WiringValues, from: string | null): string[] {
  const node = wiring.distribution.find(({ id }) => id === from)
  return node === undefined ? [] : [node.id, ...wayIn(wiring, node.parent)]
}

/** The panel that a node is, or that it hangs on. */
function panelOn(facts: LabelFacts, id: string): NodeValues | undefined {
  const panels = panelsOf(facts)
  const nearest = wayIn(facts.wiring, id).find((each) => panels.some((panel) => panel.id === each))
  return panels.find((panel) => panel.id === nearest)
}
