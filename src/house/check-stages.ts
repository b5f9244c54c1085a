import type { PartName, Project } from '../project/index.js'
import type { Result } from '../worksheet/index.js'
import type { House } from './house.js'
import type { TellingStage } from './made-up-parts.js'

/** A stage that a check of the project runs for its findings and assumptions. */
export interface CheckStage {
  /** First word of the finding that tells that the stage cannot run: `wire` gives `wire.cannot-run`. */
  readonly name: string
  /** Whether the project holds the parts that the stage works on; a project that is only half filled in is no error. */
  readonly applies: (project: Project) => boolean
  readonly run: (house: House, project: Project) => Promise<Result<unknown>>
  /** The subcommand that a person runs for it, what `new-project --parts` calls its part, and its name where values are read. */
  readonly own?: { readonly name: TellingStage; readonly command: string; readonly part: PartName }
}

/** Stages quick enough to run at every check, in the order of the job. */
export const CHECK_STAGES: readonly CheckStage[] = [
  { name: 'roof', applies: () => true, run: (house) => house.roof() },
  {
    name: 'yield',
    own: { name: 'yield', command: 'estimate-yield', part: 'yield' },
    applies: () => true,
    run: (house) => house.yield(),
  },
  {
    name: 'wire',
    own: { name: 'wire', command: 'size-wire', part: 'wire' },
    applies: ({ electrical }) => electrical !== undefined,
    run: (house) => house.wire(),
  },
  {
    name: 'mounts',
    own: { name: 'mounts', command: 'space-mounts', part: 'mounts' },
    applies: ({ structure }) => structure !== undefined,
    run: (house) => house.ownMounts(),
  },
  {
    name: 'payback',
    own: { name: 'payback', command: 'payback', part: 'money' },
    applies: ({ tariff, usage }) => tariff !== undefined && usage !== undefined,
    // Without a price yet, the bills still tell what is wrong with tariff and use.
    run: (house, { finance = {} }) => {
      const { installed_cost_usd: price, lease, power_purchase: purchase } = finance
      return price === undefined && lease === undefined && purchase === undefined ? house.bill() : house.payback()
    },
  },
  {
    name: 'permit',
    own: { name: 'permit', command: 'draw-permit', part: 'permit' },
    applies: ({ electrical, structure }) => electrical !== undefined && structure !== undefined,
    run: (house) => house.permit(),
  },
]
