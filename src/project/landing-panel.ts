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
