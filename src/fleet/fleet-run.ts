import type { Report } from '../report/index.js'
import type { FleetRow } from './collect.js'
import type { Move } from './compare-baseline.js'
import type { ExitOfFleet } from './types.js'

/** What a fleet came to. */
export interface FleetRun {
  /** A line a project, in the order of the fleet. */
  readonly projects: readonly FleetRow[]
  /** The summary as data, for a renderer. */
  readonly report: Report
  /** The worst exit code that any one project would have given alone. */
  readonly worst: ExitOfFleet
  /** Values that are not what they were in the saved run, largest first; undefined when there is none to compare with. */
  readonly moves: readonly Move[] | undefined
  /** Whether one of them moved by more than the tolerance, and this run does not take the place of the saved one. */
  readonly hasMoved: boolean
}
