import { own } from '../values/index.js'
import type { DistributionPanel, Electrical, MainPanel } from './project-types.generated.js'

/** The panel that takes the PV breaker, as the person states it. */
export interface LandingPanel {
  readonly id: string
  readonly where: string
  readonly stated: MainPanel | DistributionPanel | undefined
}

/**
 * The panel that the PV system lands on: that of the short form, or the one that `connection.at` names; for a feeder tap the
 * panel that its feeder comes from, for a supply-side connection the first one.
 */
export function landingPanel(electrical: Electrical | undefined): LandingPanel {
  const { distribution, connection } = electrical ?? {}
  if (distribution === undefined) return { id: 'panel', where: 'electrical.panel', stated: electrical?.panel }
  const ids = Object.keys(distribution.panels)
  const fed = new Set(Object.values(distribution.feeders ?? {}).map(({ to }) => to))
  const feeder = own(distribution.taps, connection?.at ?? '')?.feeder
  const named = feeder === undefined ? connection?.at : own(distribution.feeders, feeder)?.from
  const id = [named, ids.find((each) => !fed.has(each)), ids[0]].find(
    (each) => each !== undefined && Object.hasOwn(distribution.panels, each),
  )
  return {
    id: id ?? '',
    where: `electrical.distribution.panels.${id ?? ''}`,
    stated: id === undefined ? undefined : own(distribution.panels, id),
  }
}

/** The panel at the service that feeds the landing panel, or is it: its main is the service disconnect. */
export function servicePanel(electrical: Electrical | undefined): LandingPanel {
  const landing = landingPanel(electrical)
  const { panels = {}, feeders = {} } = electrical?.distribution ?? {}
  const above = (id: string): string | undefined => Object.values(feeders).find(({ to }) => to === id)?.from
  let id = landing.id
  // Each panel once: a circle is refused elsewhere.
  for (const _ of Object.keys(panels)) {
    const next = above(id)
    if (next === undefined || !Object.hasOwn(panels, next)) break
    id = next
  }
  return id === landing.id ? landing : { id, where: `electrical.distribution.panels.${id}`, stated: own(panels, id) }
}

/** What drawings and labels call a panel: its name, its id, or that it is the only one. */
export const panelName = ({ id, where, stated }: LandingPanel): string =>
  stated?.name ?? (where === 'electrical.panel' ? 'main panel' : id.replaceAll('_', ' '))
