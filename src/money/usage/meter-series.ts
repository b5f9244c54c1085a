import type { Seconds, WattHours } from '../../values/index.js'

/** One meter reading over an interval. */
export interface MeterReading {
  /** Start, Unix seconds UTC. */
  readonly startS: Seconds
  readonly durationS: Seconds
  /** Delivered to the house, Wh. */
  readonly importWh: WattHours
  /** Received from the house, Wh. */
  readonly exportWh: WattHours
}

/** Readings in the order of time, without overlaps, and what happened on the way. */
export interface MeterSeries {
  readonly readings: readonly MeterReading[]
  /** Local standard time minus UTC, seconds; undefined when the file does not say. */
  readonly utcOffsetS: Seconds | undefined
  /** Whether clocks change; undefined when the file does not say. */
  readonly daylightSaving: boolean | undefined
  /** Path in the project file. */
  readonly where: string
  readonly exactDuplicates: number
  readonly conflicts: number
  readonly estimated: number
  /** What the file does not say of its values, which were taken as energy of each interval, delivered to the house. */
  readonly unstated: readonly ('accumulation' | 'flow')[]
  /** One sentence each about what was left out. */
  readonly leftOut: readonly string[]
}

/** What to do with two different readings of one interval. */
export type OverlapPolicy = 'first' | 'last' | undefined
