import type { Degrees } from '../values/index.js'

/** What is known of each step, one column each, in the same order. */
export interface SkyColumns {
  /** 0 to 11. */
  readonly month: Uint8Array
  /** Hours of the year that the step stands for. */
  readonly hours: Float64Array
  /** Length of the step on its day, h, of which only the part with the sun up; the sun stands at its middle. */
  readonly spanH: Float64Array
  /** Direction to the sun: east, north and up components of a unit vector (up = cosine of the zenith angle). */
  readonly sunEast: Float64Array
  readonly sunNorth: Float64Array
  readonly sunUp: Float64Array
  /** Steps with the same number share one sun position, and so one shading geometry. */
  readonly sunIndex: Uint32Array
  /** Zenith angle of the sun, radians. */
  readonly zenithRad: Float64Array
  readonly airMass: Float64Array
  readonly extraterrestrialWM2: Float64Array
  readonly dniWM2: Float64Array
  readonly dhiWM2: Float64Array
  readonly ghiWM2: Float64Array
  readonly dryBulbC: Float64Array
  /** Wind at 10 m, m/s. */
  readonly windMs: Float64Array
}

/**
 * The sky of a year in steps while the sun is up: what every array under it shares. One step stands for `hours` hours a
 * year (a step of an hourly file for one hour, a step of a day type for its length times the days of its kind).
 * All columns have `length` entries.
 */
export interface SkySteps extends SkyColumns {
  readonly length: number
  /** Latitude of the place, degrees: with the direction to the sun it gives declination and hour angle. */
  readonly latitudeDeg: Degrees
  readonly sunCount: number
  /** For people and for files: which hour of the file, or which kind of day and hour of solar time. */
  readonly label: (step: number) => StepLabel
  /** Row of the hourly file for each step; undefined for day types. */
  readonly fileRow: Uint32Array | undefined
  /** Hours of the year with the sun down, by month, for night consumption. */
  readonly nightHours: Float64Array
}

export interface StepLabel {
  readonly month: number
  /** Day of the month, for an hourly file. */
  readonly day?: number
  /** Hour that ends at this number (hourly file), or solar time at the middle of the step (day types), h. */
  readonly hour: number
  /** Number of the day type, from 1 (dullest), for day types. */
  readonly dayType?: number
  /** Days of the year of this kind, for day types. */
  readonly days?: number
}

/** Empty columns with room for a number of steps. */
export function newColumns(capacity: number): SkyColumns {
  const column = (): Float64Array => new Float64Array(capacity)
  return {
    month: new Uint8Array(capacity),
    sunIndex: new Uint32Array(capacity),
    hours: column(),
    spanH: column(),
    sunEast: column(),
    sunNorth: column(),
    sunUp: column(),
    zenithRad: column(),
    airMass: column(),
    extraterrestrialWM2: column(),
    dniWM2: column(),
    dhiWM2: column(),
    ghiWM2: column(),
    dryBulbC: column(),
    windMs: column(),
  }
}

/** The columns cut to the number of steps that were filled. */
export function cutColumns(columns: SkyColumns, length: number): SkyColumns {
  return {
    month: columns.month.subarray(0, length),
    sunIndex: columns.sunIndex.subarray(0, length),
    hours: columns.hours.subarray(0, length),
    spanH: columns.spanH.subarray(0, length),
    sunEast: columns.sunEast.subarray(0, length),
    sunNorth: columns.sunNorth.subarray(0, length),
    sunUp: columns.sunUp.subarray(0, length),
    zenithRad: columns.zenithRad.subarray(0, length),
    airMass: columns.airMass.subarray(0, length),
    extraterrestrialWM2: columns.extraterrestrialWM2.subarray(0, length),
    dniWM2: columns.dniWM2.subarray(0, length),
    dhiWM2: columns.dhiWM2.subarray(0, length),
    ghiWM2: columns.ghiWM2.subarray(0, length),
    dryBulbC: columns.dryBulbC.subarray(0, length),
    windMs: columns.windMs.subarray(0, length),
  }
}
