import type { WiringValues } from '../../electrical/index.js'
import type { Project } from '../../project/index.js'
import { landingsOf, treeParts, type Leaf, type TreeParts } from '../tree/tree-parts.js'

/** The installation as a tree, the short form too: a tree of one panel. */
export function installationOf(project: Project, wiring: WiringValues): TreeParts {
  const { electrical } = project
  if (electrical === undefined) return { service: undefined, supplySide: [], roots: [] }
  if (electrical.distribution !== undefined) return treeParts(electrical, wiring)
  const { connection, panel } = electrical
  const oppositeEnd = connection?.breaker_position === 'opposite_end'
  const landings = landingsOf(wiring).map((landing): Leaf => ({ kind: 'pv', landing, oppositeEnd }))
  const supply = connection?.kind === 'supply_side'
  const node = wiring.distribution.find(({ kind }) => kind === 'panel')
  return {
    service: wiring.distribution.find(({ kind }) => kind === 'service'),
    supplySide: supply ? landings : [],
    roots:
      node === undefined
        ? []
        : [
            {
              node,
              ownMainA: panel?.main_a,
              interruptingA: panel?.interrupting_rating_a,
              torqueLbIn: panel?.terminal_torque_lb_in,
              location: panel?.location,
              leaves: supply ? [] : landings,
              feeders: [],
            },
          ],
  }
}
