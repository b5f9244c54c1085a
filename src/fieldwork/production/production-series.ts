import type { Finding } from '../../worksheet/index.js'
import type { EnergyUnit, PartKind } from './find-columns.js'
import type { SpanList } from './span-list.js'
import type { Milliseconds } from '../../values/index.js'

export type Resolution = 'interval' | 'day' | 'month'

/** Measured production, in order of time, without overlaps. */
export interface ProductionSeries {
  readonly resolution: Resolution
  /** Length of an interval, minutes; undefined for days and months. */
  readonly stepMin: number | undefined
  readonly unit: EnergyUnit
  readonly meter: 'interval' | 'cumulative'
  readonly clock: 'local' | 'standard' | 'utc'
  readonly spans: SpanList
  readonly moduleIds: readonly string[]
  /** What `moduleIds` and `Span.moduleKwh` are of; modules when missing. */
  readonly partsAre?: PartKind
  /** What was odd about the file: gaps come later, when it is known when the sun was up. */
  readonly findings: readonly Finding[]
  /** What the file did not say and the reader took. */
  readonly taken: readonly TakenSetting[]
  /** Times at which a counter went back: it was reset or exchanged. */
  readonly resets?: readonly Milliseconds[]
}

export interface TakenSetting {
  readonly path: string
  readonly value: string
  readonly why: string
}
