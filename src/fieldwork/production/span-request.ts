import type { Production } from '../../project/index.js'
import type { Milliseconds } from '../../values/index.js'
import type { Finding } from '../../worksheet/index.js'
import type { EnergyUnit } from './find-columns.js'
import type { Resolution, TakenSetting } from './production-series.js'
import type { Complain, ProductionLimits } from './production-limits.js'
import type { FindCells, TimedReadings } from './readings.js'

/** Rows with their times, and what is known of how they are to be read. */
export interface SpanRequest {
  readonly file: string
  /** As they stand in the file; they are put in order in place. */
  readonly rows: TimedReadings
  readonly find: FindCells
  readonly unit: EnergyUnit
  readonly mapping: Production
  readonly namedCumulative: boolean
  readonly resolution: Resolution
  readonly namedMonths: boolean
  readonly stepMs: Milliseconds
  readonly limits: ProductionLimits
  readonly complain: Complain
  readonly findings: Finding[]
  readonly taken: TakenSetting[]
  /** Takes the times at which a counter went back. */
  readonly resets: Milliseconds[]
}
