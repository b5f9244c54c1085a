import type { DistributionPanel, MainPanel } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import { own } from '../../values/index.js'
import { practice, type Job } from '../system/index.js'
import type { Amperes } from '../../values/index.js'
import { statedLugs } from './stated-lugs.js'
import type { PanelNode } from './tree.js'

/** Id of the panel of the short form. */
export const ONLY_PANEL = 'panel'

/**
 * The panels, from the service inwards.
 *
 * @param serviceLoadA Calculated load of the dwelling, A, which the panel at the service carries when it states none.
 * @throws StageError when the panel with the PV breaker states no busbar rating or no main.
 */
export function buildPanels(job: Job, serviceLoadA: Amperes | undefined): PanelNode[] {
  const { distribution, panel } = job.electrical
  if (distribution === undefined) return onlyPanel(job, panel, serviceLoadA)
  const fedBy = new Map(Object.values(distribution.feeders ?? {}).map(({ from, to }) => [to, from]))
  const depth = (id: string, seen = 0): number => {
    const from = fedBy.get(id)
    return from === undefined || seen > fedBy.size ? seen : depth(from, seen + 1)
  }
  const roots = Object.keys(distribution.panels).filter((id) => !fedBy.has(id))
  return Object.entries(distribution.panels)
    .map(([id, stated]) => {
      const where = `electrical.distribution.panels.${id}`
      const only = roots.length === 1 && roots[0] === id
      return panelNode(job, id, where, { ...stated, bus_a: stated.bus_a }, only ? serviceLoadA : undefined)
    })
    .toSorted((a, b) => depth(a.id) - depth(b.id))
}

function onlyPanel(job: Job, panel: MainPanel | undefined, serviceLoadA: Amperes | undefined): PanelNode[] {
  const where = 'electrical.panel'
  const loadSide = job.electrical.connection?.kind !== 'supply_side'
  if (!loadSide && panel?.bus_a === undefined) return []
  const busA = rating(panel?.bus_a, `${where}.bus_a`, 'busbar rating', 'on the label inside the panel door')
  if (loadSide)
    rating(
      panel?.main_a,
      `${where}.main_a`,
      'main rating',
      'on the main breaker, or on the breaker that feeds a subpanel',
    )
  return [panelNode(job, ONLY_PANEL, where, { ...panel, bus_a: busA }, serviceLoadA)]
}

type Stated = (MainPanel | DistributionPanel) & { readonly bus_a: Amperes }

function panelNode(job: Job, id: string, where: string, stated: Stated, loadA: Amperes | undefined): PanelNode {
  return {
    id,
    name: stated.name ?? id.replaceAll('_', ' '),
    where,
    busA: stated.bus_a,
    mainA: stated.main_a,
    mainPosition: positionOf(job, id, where, stated),
    loadBreakersA:
      stated.breakers_a === undefined ? stated.breaker_sum_a : stated.breakers_a.reduce((sum, each) => sum + each, 0),
    loadA: stated.load_a ?? loadA,
    spacesFree: stated.spaces_free,
    interruptingA: stated.interrupting_rating_a,
    terminalC: stated.terminal_temperature_c === 75 ? 75 : 60,
    location: stated.location,
    lugs: 'feed_through' in stated ? statedLugs(job, stated.feed_through) : undefined,
  }
}

function positionOf(job: Job, id: string, where: string, stated: Stated): 'end' | 'centre' {
  if (stated.main_position !== undefined) return stated.main_position
  const { connection, distribution } = job.electrical
  if (connection?.kind === 'supply_side' && distribution === undefined) return 'end'
  if (distribution !== undefined && own(distribution.panels, id) === undefined) return 'end'
  return job.worksheet.assume({
    path: `${where}.main_position`,
    value: 'end' as const,
    unit: '',
    why: 'Most panels are fed at an end; the rules for a panel fed in the centre are not tried',
    source: practice(''),
  })
}

function rating(value: number | undefined, where: string, what: string, found: string): Amperes {
  if (value !== undefined && Number.isFinite(value) && value > 0) return value
  throw new StageError(where, `the ${what} is not stated`, `It stands ${found}`)
}
