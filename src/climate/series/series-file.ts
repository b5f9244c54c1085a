import type { Degrees } from '../../values/index.js'

/** What is read of a row; radiation on the level but for `dni` and that of a sensor in a plane. */
export const QUANTITIES = ['ghi', 'dni', 'dhi', 'plane', 'dryBulb', 'wind', 'snowDepth'] as const
export type Quantity = (typeof QUANTITIES)[number]

/** What a stamp says of its interval. */
export type StampsMark = 'beginning' | 'ending' | 'instant'

/** A weather file as it was read: rows in the order of the file, NaN where nothing was measured. */
export interface SeriesFile {
  /** For people. */
  readonly name: string
  readonly latitudeDeg: Degrees
  readonly longitudeDeg: Degrees
  /** Undefined when the file does not say it. */
  readonly elevationM: number | undefined
  /** Local standard time minus UTC, h. */
  readonly utcOffsetH: number
  readonly stampsMark: StampsMark
  readonly rows: SeriesRows
  /** How the sensor of `plane` lies. */
  readonly plane?: SensorPlane
}

export interface SensorPlane {
  readonly tiltDeg: Degrees
  /** Clockwise from true north. */
  readonly azimuthDeg: Degrees
}

/** Rows of a file; all columns have `length` entries. */
export interface SeriesRows {
  readonly length: number
  /** Line of each row, counted from 1. */
  readonly line: Uint32Array
  /** Stamp in local standard time, ms as if it were UTC. */
  readonly stampMs: Float64Array
  /** W/m2 (or Wh/m2 of the interval, see `energies`), deg C, m/s, cm; only columns that the file has. */
  readonly columns: ReadonlyMap<Quantity, Float64Array>
  /** Radiations that the file holds as energy of the interval, Wh/m2, and not as mean power. */
  readonly energies: ReadonlySet<Quantity>
}

/** A year of a series on an even grid, whole days from 1 January on; NaN where nothing was measured. */
export interface SeriesYear {
  readonly stepH: number
  readonly isLeap: boolean
  readonly length: number
  /** Middle of the interval, h of local standard time. */
  readonly middleH: Float64Array
  readonly month: Uint8Array
  readonly day: Uint8Array
  readonly dayOfYear: Uint16Array
  /** Line of the file, 0 where the file has no row. */
  readonly line: Uint32Array
  /** W/m2, deg C, m/s, cm; only columns that the file has. */
  readonly columns: ReadonlyMap<Quantity, Float64Array>
}
