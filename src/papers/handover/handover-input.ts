import type { WiringValues } from '../../electrical/index.js'
import type { WorkPlanValues } from '../../fieldwork/index.js'
import type { Commissioning, Project } from '../../project/index.js'
import type { Arrangement } from '../../roof/index.js'
import type { YieldValues } from '../../yield/index.js'
import type { SerialNumber } from './handover-values.js'

/** What the hand-over is made from; the wiring is undefined where it cannot be sized. */
export interface HandoverInput {
  /** With the modules counted that fit. */
  readonly project: Project
  readonly work: WorkPlanValues
  readonly energy: YieldValues
  readonly arrangement: Arrangement
  readonly wire: WiringValues | undefined
  /** Readings of the project with those of a table. */
  readonly measured: Commissioning
  /** Serial numbers of project and table. */
  readonly serials: readonly SerialNumber[]
  /** Day of the tests, year-month-day. */
  readonly date: string | undefined
  /** Cell temperature to expect on the day of the tests, deg C. */
  readonly cellC: number | undefined
  /** Light on the modules to expect then, W/m2. */
  readonly irradianceWM2: number | undefined
}
