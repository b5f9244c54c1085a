import type { Job } from '../system/index.js'
import type { Sources } from '../connection/index.js'
import { buildFeeders } from './build-feeders.js'
import { buildPanels } from './build-panels.js'
import { buildPowerControl } from './build-power-control.js'
import { buildService } from './build-service.js'
import { buildSources } from './build-sources.js'
import { buildTaps } from './build-taps.js'
import type { Tree } from './tree.js'

/** What the tree takes from elsewhere. */
export interface TreeInputs {
  readonly sources: Sources
  /** Load of the dwelling by a calculation, A; undefined without one. */
  readonly serviceLoadA: number | undefined
}

/**
 * The installation from the utility inwards: as stated under `electrical.distribution`, or the short form with one panel.
 *
 * @throws StageError when a rating that a sum needs is missing.
 */
export function buildTree(job: Job, { sources, serviceLoadA }: TreeInputs): Tree {
  const panels = buildPanels(job, serviceLoadA)
  const bare: Tree = {
    edition: job.edition,
    service: buildService(job, panels, serviceLoadA),
    panels,
    feeders: [],
    taps: [],
    sources: buildSources(job, sources),
    powerControl: buildPowerControl(job),
  }
  const withFeeders = { ...bare, feeders: buildFeeders(job, bare) }
  return { ...withFeeders, taps: buildTaps(job, withFeeders) }
}
