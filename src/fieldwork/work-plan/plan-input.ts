import type { RequiredLabel } from '../../drawings/index.js'
import type { WiringValues } from '../../electrical/index.js'
import type { Project } from '../../project/index.js'
import type { MountValues } from '../../structure/index.js'
import type { YieldRun } from '../../yield/index.js'
import type { Celsius } from '../../values/index.js'

/** What the plan is made from; a stage that could not run is left out, and its steps say so. */
export interface PlanInput {
  readonly project: Project
  readonly run: YieldRun
  readonly mounts?: MountValues | undefined
  readonly wire?: WiringValues | undefined
  readonly labels?: readonly RequiredLabel[] | undefined
  /** Why a stage is missing, by its subcommand. */
  readonly missing: readonly {
    readonly stage: 'space-mounts' | 'size-wire'
    readonly where: string
    readonly why: string
    readonly fix: string
  }[]
  /** Cell temperature of today, deg C. */
  readonly cellC?: Celsius | undefined
}
