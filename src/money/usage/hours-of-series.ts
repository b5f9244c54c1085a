import { StageError } from '../../worksheet/index.js'
import type { MeterSeries } from './meter-series.js'
import type { Seconds } from '../../values/index.js'

/** Energy by hour of local standard time, counted from the epoch in that time. */
export interface HourSeries {
  readonly firstHour: number
  /** Wh; NaN where the hour is not wholly covered. */
  readonly importWh: Float64Array
  readonly exportWh: Float64Array
}

const HOURS_PER_YEAR = 8760
/** Hours that a file of readings may reach over. */
const LONGEST_HOURS = 10 * HOURS_PER_YEAR

/**
 * Adds readings up to hours of local standard time. A reading over the full hour is divided by time.
 *
 * @param utcOffsetS Local standard time minus UTC, seconds.
 * @throws StageError for readings longer than an hour, or none at all.
 */
export function hoursOfSeries(series: MeterSeries, utcOffsetS: Seconds): HourSeries {
  const first = series.readings[0]
  const last = series.readings.at(-1)
  if (first === undefined || last === undefined) {
    throw new StageError(series.where, 'the file holds no readings', 'Export a whole year of usage.')
  }
  const firstHour = Math.floor((first.startS + utcOffsetS) / 3600)
  const hours = Math.ceil((last.startS + last.durationS + utcOffsetS) / 3600) - firstHour
  if (!(hours <= LONGEST_HOURS)) {
    throw new StageError(
      series.where,
      `the readings reach over ${(hours / HOURS_PER_YEAR).toPrecision(3)} years; at most 10 are read`,
      'Look at the time stamps: they are to be seconds, and one that is wrong stretches the file. Export a whole year.',
    )
  }
  const importWh = new Float64Array(hours)
  const exportWh = new Float64Array(hours)
  const covered = new Float64Array(hours)
  for (const { startS, durationS, importWh: use, exportWh: sent } of series.readings) {
    if (!(durationS > 0) || durationS > 3600) {
      throw new StageError(
        series.where,
        `a reading covers ${String(durationS)} seconds; hours or shorter are needed`,
        'Export hourly usage, or state usage.monthly_kwh.',
      )
    }
    let at = startS + utcOffsetS
    const end = at + durationS
    while (at < end) {
      const hour = Math.floor(at / 3600)
      const upTo = Math.min(end, (hour + 1) * 3600)
      const share = (upTo - at) / durationS
      const i = hour - firstHour
      importWh[i] = (importWh[i] ?? 0) + use * share
      exportWh[i] = (exportWh[i] ?? 0) + sent * share
      covered[i] = (covered[i] ?? 0) + upTo - at
      at = upTo
    }
  }
  for (let i = 0; i < hours; i++) if ((covered[i] ?? 0) < 3600) importWh[i] = Number.NaN
  return { firstHour, importWh, exportWh }
}
