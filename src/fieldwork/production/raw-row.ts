import type { TableCell, Milliseconds } from '../../values/index.js'

/** What the reader must know about the system to tell a slip of the unit from a fine day. */
export interface ProductionLimits {
  readonly moduleIds: readonly string[]
  readonly utcOffsetH: number
  /** Most energy that the system can give between two times (standard time, ms as if UTC), kWh. */
  readonly mostKwh: (startMs: Milliseconds, endMs: Milliseconds) => number
}

/** Row values before they become stretches of time. */
export interface RawRow {
  readonly beginMs: Milliseconds
  readonly value: number | undefined
  readonly cell: TableCell
  readonly moduleValues: readonly (number | undefined)[]
}
