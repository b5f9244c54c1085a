/**
 * The sky of a year in steps while the sun is up: what every array under it shares. One step stands for `hours` hours a
 * year (a step of an hourly file for one hour, a step of a day type for its length times the days of its kind).
 * All arrays have `length` entries and the same order.
 */
export interface SkySteps {
  readonly length: number
  /** 0 to 11. */
  readonly month: Uint8Array
  /** Hours of the year that the step stands for. */
  readonly hours: Float64Array
  /** Direction to the sun: east, north and up components of a unit vector (up = cosine of the zenith angle). */
  readonly sunEast: Float64Array
  readonly sunNorth: Float64Array
  readonly sunUp: Float64Array
  /** Steps with the same number share one sun position, and so one shading geometry. */
  readonly sunIndex: Uint32Array
  readonly sunCount: number
  readonly airMass: Float64Array
  readonly extraterrestrialWM2: Float64Array
  readonly dniWM2: Float64Array
  readonly dhiWM2: Float64Array
  readonly ghiWM2: Float64Array
  readonly dryBulbC: Float64Array
  /** Wind at 10 m, m/s. */
  readonly windMs: Float64Array
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

/** Steps being gathered; `finish` cuts the arrays to size. */
export class SkyStepBuilder {
  #length = 0
  readonly month: Uint8Array
  readonly sunIndex: Uint32Array
  readonly columns: Float64Array[]

  constructor(capacity: number) {
    this.month = new Uint8Array(capacity)
    this.sunIndex = new Uint32Array(capacity)
    this.columns = Array.from({ length: 11 }, () => new Float64Array(capacity))
  }

  get length(): number {
    return this.#length
  }

  /** Adds a step; the values stand in the order of SkySteps from `hours` on, without `sunIndex`. */
  add(month: number, sunIndex: number, values: readonly number[]): void {
    const at = this.#length
    this.month[at] = month
    this.sunIndex[at] = sunIndex
    for (let column = 0; column < 11; column += 1) {
      ;(this.columns[column] as Float64Array)[at] = values[column] as number
    }
    this.#length = at + 1
  }

  finish(rest: Pick<SkySteps, 'sunCount' | 'label' | 'fileRow' | 'nightHours'>): SkySteps {
    const length = this.#length
    const column = (index: number): Float64Array => (this.columns[index] as Float64Array).subarray(0, length)
    return {
      length,
      month: this.month.subarray(0, length),
      sunIndex: this.sunIndex.subarray(0, length),
      hours: column(0),
      sunEast: column(1),
      sunNorth: column(2),
      sunUp: column(3),
      airMass: column(4),
      extraterrestrialWM2: column(5),
      dniWM2: column(6),
      dhiWM2: column(7),
      ghiWM2: column(8),
      dryBulbC: column(9),
      windMs: column(10),
      ...rest,
    }
  }
}
