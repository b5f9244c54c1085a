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
  {
    name: 'wire',
    applies: ({ project }) => project.electrical !== undefined,
    run: async ({ project }) => (await import('../electrical/index.js')).wiringOf(project),
  },
  {
    name: 'mounts',
    applies: ({ project }) => project.structure !== undefined,
    run: async ({ project, documents }) => {
      const [{ arrangeModules }, { spaceMounts }] = await Promise.all([
        import('../roof/index.js'),
        import('../structure/index.js'),
      ])
      const { modules, planes } = arrangeModules(project).values
      return spaceMounts(project, { modules, planes: Object.values(planes) }, { documents })
    },
  },
  {
    name: 'payback',
    applies: ({ project }) => project.tariff !== undefined && project.usage !== undefined,
    run: async ({ project, files }) => {
      const { billsOfProject, paybackOfProject } = await import('../money/index.js')
      // Without a price yet, the bills still tell what is wrong with tariff and use.
      const isPriced = project.finance?.installed_cost_usd !== undefined
      return isPriced ? paybackOfProject(project, files) : billsOfProject(project, files)
    },
  },
  {
    name: 'permit',
    applies: ({ project }) => project.electrical !== undefined && project.structure !== undefined,
    run: async ({ project }) => {
      const [{ arrangeModules }, { packetGaps }, { Worksheet }] = await Promise.all([
        import('../roof/index.js'),
        import('../drawings/index.js'),
        import('../worksheet/index.js'),
      ])
      const worksheet = new Worksheet()
      // What the permit packet lacks is no fault of the design; it stops the packet, not the check.
      for (const gap of packetGaps({ project, arrangement: arrangeModules(project) })) {
        worksheet.find({ ...gap, severity: gap.severity === 'error' ? 'warning' : gap.severity })
      }
      return worksheet.result({})
    },
  },
]
