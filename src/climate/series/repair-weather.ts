import { GAP_LIMITS } from '../../tables/climate/index.js'
import { WIND_WHEN_UNKNOWN_MS } from '../epw-values.js'
import type { SeriesYear } from './series-file.js'

/** Temperature, wind and snow without gaps, and how many rows were filled. */
export interface RepairedWeather {
  readonly dryBulbC: Float64Array
  readonly windMs: Float64Array
  /** -1 where unknown. */
  readonly snowDepthCm: Float64Array
  readonly temperature: {
    readonly interpolated: readonly number[]
    readonly fromMeanDay: readonly number[]
    /** Rows of a month that has no temperature at this time of day at all. */
    readonly open: readonly number[]
  }
  readonly windMissing: readonly number[]
  readonly snowMissing: readonly number[]
}

/** Fills temperature by straight lines up to 6 h, then by the mean day of the month, and wind by a light wind. */
export function repairWeather(year: SeriesYear): RepairedWeather {
  const { columns, length } = year
  const empty = (): Float64Array => new Float64Array(length).fill(Number.NaN)
  const windMs = (columns.get('wind') ?? empty()).slice()
  const windMissing = rowsWithout(windMs)
  for (const row of windMissing) windMs[row] = WIND_WHEN_UNKNOWN_MS
  const snowDepthCm = (columns.get('snowDepth') ?? empty()).slice()
  const snowMissing = rowsWithout(snowDepthCm)
  for (const row of snowMissing) snowDepthCm[row] = -1
  const dryBulbC = (columns.get('dryBulb') ?? empty()).slice()
  return { dryBulbC, windMs, snowDepthCm, temperature: fillTemperature(dryBulbC, year), windMissing, snowMissing }
}

function rowsWithout(values: Float64Array): number[] {
  const rows: number[] = []
  values.forEach((value, row) => {
    if (Number.isNaN(value)) rows.push(row)
  })
  return rows
}

function fillTemperature(values: Float64Array, year: SeriesYear): RepairedWeather['temperature'] {
  const size = values.length
  const most = Math.round(GAP_LIMITS.temperatureH / year.stepH)
  const meanDay = meanDays(values, year)
  const rowsPerDay = Math.round(24 / year.stepH)
  const filled = { interpolated: [] as number[], fromMeanDay: [] as number[], open: [] as number[] }
  const isGap = Uint8Array.from(values, (value) => (Number.isNaN(value) ? 1 : 0))
  if (!isGap.includes(0)) return { ...filled, open: rowsWithout(values) }
  for (let row = 0; row < size; row++) {
    if (isGap[row] === 0 || isGap[(row - 1 + size) % size] === 1) continue
    let rows = 1
    while (isGap[(row + rows) % size] === 1) rows++
    const [left, right] = [values[(row - 1 + size) % size]!, values[(row + rows) % size]!]
    for (let index = 0; index < rows; index++) {
      const at = (row + index) % size
      if (rows <= most) {
        values[at] = left + ((right - left) * (index + 1)) / (rows + 1)
        filled.interpolated.push(at)
      } else {
        values[at] = meanDay[(year.month[at]! - 1) * rowsPerDay + (at % rowsPerDay)]!
        ;(Number.isNaN(values[at]) ? filled.open : filled.fromMeanDay).push(at)
      }
    }
  }
  return filled
}

/** Mean of each time of day of each month; NaN where there is none. */
function meanDays(values: Float64Array, { month, stepH }: SeriesYear): Float64Array {
  const rowsPerDay = Math.round(24 / stepH)
  const sums = new Float64Array(12 * rowsPerDay)
  const counts = new Float64Array(12 * rowsPerDay)
  values.forEach((value, row) => {
    if (Number.isNaN(value)) return
    const at = (month[row]! - 1) * rowsPerDay + (row % rowsPerDay)
    sums[at]! += value
    counts[at]! += 1
  })
  return sums.map((sum, at) => sum / counts[at]!)
}
