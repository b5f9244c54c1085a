import type { House } from '../../../house/index.js'
import type { Project } from '../../../project/index.js'
import { own } from '../../../values/index.js'
import { StageError, type Result } from '../../../worksheet/index.js'
import { buildApplication } from '../../application/index.js'
import { TOTALS } from '../../totals.js'
import { valueAt, type Found } from './value-at.js'

/** Stages and papers whose values can be asked for. */
export const SOURCE_STAGES = ['yield', 'wire', 'mounts', 'bom', 'payback', 'application'] as const
export type SourceStage = (typeof SOURCE_STAGES)[number]

/** Where values come from: the project, its totals, and stages, each worked out when it is first asked for. */
export interface Sources {
  /** @param from `project.PATH`, `totals.NAME` or `STAGE.PATH`. */
  readonly read: (from: string) => Promise<Found>
  /** Stages that were asked for and that have findings of the kind error, with their number. */
  readonly failing: () => Promise<ReadonlyMap<SourceStage, number>>
}

export function makeSources(project: Project, house: House): Sources {
  const failing = new Map<SourceStage, number>()
  let application: Promise<Result<unknown>> | undefined
  const resultOf = async (stage: SourceStage): Promise<Result<unknown>> => {
    if (stage !== 'application') return await house[stage]()
    application ??= buildApplication(project, house)
    return await application
  }
  const stageValue = async (stage: SourceStage, path: string): Promise<Found> => {
    try {
      const result = await resultOf(stage)
      const errors = result.findings.filter(({ severity }) => severity === 'error').length
      if (errors > 0) failing.set(stage, errors)
      return valueAt(result.values, path)
    } catch (error) {
      if (!(error instanceof StageError)) throw error
      return { missing: `the stage cannot run: ${error.where === '' ? '' : `${error.where}: `}${error.message}` }
    }
  }
  return {
    failing: () => Promise.resolve(failing),
    read: async (from) => {
      const [source, path] = splitSource(from)
      if (source === 'project') return valueAt(project, path)
      if (source === 'totals') {
        const value = own<(typeof TOTALS)[keyof typeof TOTALS]>(TOTALS, path)?.of(project)
        return value === undefined ? { missing: `the project has no ${path}` } : { value }
      }
      const stage = SOURCE_STAGES.find((one) => one === source)
      return stage === undefined ? { missing: `there is no source '${source}'` } : stageValue(stage, path)
    },
  }
}

/** `wire.panel.bus_a` as `wire` and `panel.bus_a`. */
export function splitSource(from: string): [source: string, path: string] {
  const point = from.indexOf('.')
  return [from.slice(0, point), from.slice(point + 1)]
}
