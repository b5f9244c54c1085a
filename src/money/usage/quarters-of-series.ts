import { splitMicroKwh } from '../exact/index.js'
import type { Seconds } from '../../values/index.js'
import type { HourSeries } from './hours-of-series.js'
import type { MeterSeries } from './meter-series.js'

const QUARTER_S = 900

/** Whether every reading lies within one quarter of an hour. */
function tellsQuarters({ readings }: MeterSeries, utcOffsetS: Seconds): boolean {
  return readings.every(({ startS, durationS }) => {
    const into = (((startS + utcOffsetS) % QUARTER_S) + QUARTER_S) % QUARTER_S
    return into + durationS <= QUARTER_S
  })
}

/**
 * Energy by quarters of the hours of a series, Wh; undefined where readings are longer than a quarter of an hour, or reach over one.
 *
 * @param hours The same readings by hours.
 */
export function quartersOfSeries(
  series: MeterSeries,
  hours: HourSeries,
  utcOffsetS: Seconds,
): Float64Array | undefined {
  if (!tellsQuarters(series, utcOffsetS)) return undefined
  const wh = new Float64Array(hours.importWh.length * 4)
  const first = hours.firstHour * 4
  for (const { startS, importWh } of series.readings) {
    const i = Math.floor((startS + utcOffsetS) / QUARTER_S) - first
    wh[i] = (wh[i] ?? 0) + importWh
  }
  return wh
}

/** An hour of use in whole millionths of a kWh as its four quarters, which add up to it exactly; even where they tell nothing. */
export function quartersOfHour(hourKwh: number, wh: ArrayLike<number>): number[] {
  const weights = Array.from({ length: 4 }, (_, q) => wh[q] ?? 0)
  const isTold = weights.some((weight) => weight > 0)
  return splitMicroKwh(Math.round(hourKwh * 1e6), isTold ? weights : [1, 1, 1, 1]).map((micro) => micro / 1e6)
}
