import type { Project } from '../project/index.js'
import type { Result } from '../worksheet/index.js'
import type { House } from './house.js'

/** A stage that a check of the project runs for its findings and assumptions. */
export interface CheckStage {
  /** First word of the finding that tells that the stage cannot run: `wire` gives `wire.cannot-run`. */
  readonly name: string
  /** Whether the project holds the parts that the stage works on; a project that is only half filled in is no error. */
  readonly applies: (project: Project) => boolean
  readonly run: (house: House, project: Project) => Promise<Result<unknown>>
}

/** Stages quick enough to run at every check, in the order of the job. */
export const CHECK_STAGES: readonly CheckStage[] = [
  { name: 'roof', applies: () => true, run: (house) => house.roof() },
  { name: 'yield', applies: () => true, run: (house) => house.yield() },
  { name: 'wire', applies: ({ electrical }) => electrical !== undefined, run: (house) => house.wire() },
  { name: 'mounts', applies: ({ structure }) => structure !== undefined, run: (house) => house.ownMounts() },
  {
    name: 'payback',
    applies: ({ tariff, usage }) => tariff !== undefined && usage !== undefined,
    // Without a price yet, the bills still tell what is wrong with tariff and use.
    run: (house, { finance }) => (finance?.installed_cost_usd === undefined ? house.bill() : house.payback()),
  },
  {
    name: 'permit',
    applies: ({ electrical, structure }) => electrical !== undefined && structure !== undefined,
    run: (house) => house.permit(),
  },
]
