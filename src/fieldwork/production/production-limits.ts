import type { TableCell, Milliseconds } from '../../values/index.js'

/** Takes what is wrong, and the cell it is wrong with. */
export type Complain = (cell: TableCell | undefined, message: string) => void

/** What the reader must know about the system to tell a slip of the unit from a fine day. */
export interface ProductionLimits {
  readonly moduleIds: readonly string[]
  readonly utcOffsetH: number
  /** Most energy that the system can give between two times (standard time, ms as if UTC), kWh. */
  readonly mostKwh: (startMs: Milliseconds, endMs: Milliseconds) => number
}
