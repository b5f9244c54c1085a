import type { LoadedProject } from '../project/index.js'
import type { Result } from '../worksheet/index.js'

/** A stage that `check-project` runs for its findings and assumptions. */
export interface CheckStage {
  /** First word of the finding that tells that the stage cannot run: `wire` gives `wire.cannot-run`. */
  readonly name: string
  /** Whether the project holds the parts that the stage works on; a project that is only half filled in is no error. */
  readonly applies: (loaded: LoadedProject) => boolean
  readonly run: (loaded: LoadedProject) => Promise<Result<unknown>>
}

/**
 * Stages quick enough to run at every check, in the order of the job. Each imports its trade when it runs:
 * `run: async ({ project }) => (await import('../roof/index.js')).arrangeRoof(project)`.
 */
export const CHECK_STAGES: readonly CheckStage[] = [
  {
    name: 'roof',
    applies: () => true,
    run: async ({ project }) => (await import('../roof/index.js')).arrangeModules(project),
  },
  {
    name: 'yield',
    applies: () => true,
    run: async ({ project, files }) => (await import('../yield/index.js')).estimateYield(project, files),
  },
]
