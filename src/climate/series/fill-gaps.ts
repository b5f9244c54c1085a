import { GAP_LIMITS } from '../../tables/climate/index.js'
import { splitBy } from './components.js'
import type { RowSun } from './row-sun.js'

/** A stretch of rows without radiation. */
export interface Gap {
  readonly from: number
  readonly rows: number
}

export interface FilledGaps {
  readonly interpolated: readonly Gap[]
  readonly fromDays: readonly Gap[]
  /** Too long, or without whole days beside it: not filled. */
  readonly open: readonly Gap[]
}

interface Radiation {
  readonly ghi: Float64Array
  readonly dni: Float64Array
  readonly dhi: Float64Array
}

/**
 * Fills gaps of daylight in place, the year taken as a ring: up to 2 h by straight lines of clearness and diffuse share
 * (not of W/m2), up to 3 days by the mean of the same hours of the nearest whole days before and after, in proportion to
 * the sun above the air. A gap counts with its nights, from the first missing row to the last.
 *
 * @param isMissing 1 for a row of daylight without radiation.
 */
export function fillGaps(radiation: Radiation, isMissing: Uint8Array, sun: RowSun, stepH: number): FilledGaps {
  const filled = { interpolated: [] as Gap[], fromDays: [] as Gap[], open: [] as Gap[] }
  const rowsPerDay = Math.round(24 / stepH)
  const whole = wholeDays(isMissing, rowsPerDay)
  for (const gap of gapsOf(isMissing, sun)) {
    const hours = gap.rows * stepH
    if (hours <= GAP_LIMITS.interpolatedH + 1e-9 && interpolate(radiation, gap, sun)) filled.interpolated.push(gap)
    else if (hours <= GAP_LIMITS.neighbourDaysH && fromDays(radiation, gap, isMissing, sun, whole, rowsPerDay))
      filled.fromDays.push(gap)
    else filled.open.push(gap)
  }
  return filled
}

/** Runs of missing daylight; a night between two missing rows belongs to the run. */
function gapsOf(isMissing: Uint8Array, sun: RowSun): Gap[] {
  const gaps: Gap[] = []
  let from = -1
  let last = -1
  for (let row = 0; row <= isMissing.length; row++) {
    if (row < isMissing.length && isMissing[row] === 1) {
      if (from < 0) from = row
      last = row
    } else if (from >= 0 && (row === isMissing.length || sun.sunlit[row]! > 0)) {
      gaps.push({ from, rows: last - from + 1 })
      from = -1
    }
  }
  return gaps
}

/** Straight lines of clearness and diffuse share between the daylight on both sides; false where there is none. */
function interpolate({ ghi, dni, dhi }: Radiation, gap: Gap, sun: RowSun): boolean {
  const size = ghi.length
  const [before, after] = [(gap.from - 1 + size) % size, (gap.from + gap.rows) % size]
  const known = [before, after].filter((row) => sun.sunlit[row]! > 0)
  if (known.length === 0) return false
  const clearness = (row: number): number => (sun.levelWM2[row]! > 0 ? ghi[row]! / sun.levelWM2[row]! : 0)
  const diffuse = (row: number): number => (ghi[row]! > 0 ? Math.min(1, dhi[row]! / ghi[row]!) : 1)
  // At the end of a day the one side that is known stands for both.
  const [left, right] = [known[0] as number, known.at(-1) as number]
  const [kt, kd] = [
    [clearness(left), clearness(right)],
    [diffuse(left), diffuse(right)],
  ] as const
  for (let index = 0; index < gap.rows; index++) {
    const row = (gap.from + index) % size
    const share = (index + 1) / (gap.rows + 1)
    const global = (kt[0] + (kt[1] - kt[0]) * share) * sun.levelWM2[row]!
    put({ ghi, dni, dhi }, row, global, kd[0] + (kd[1] - kd[0]) * share, sun)
  }
  return true
}

/** Mean of the same hours of the nearest whole days before and after; false where there is none within a month. */
function fromDays(
  radiation: Radiation,
  gap: Gap,
  isMissing: Uint8Array,
  sun: RowSun,
  whole: readonly boolean[],
  rowsPerDay: number,
): boolean {
  const days = whole.length
  const firstDay = Math.floor(gap.from / rowsPerDay)
  const lastDay = Math.floor((gap.from + gap.rows - 1) / rowsPerDay)
  const nearest = (start: number, way: 1 | -1): number | undefined => {
    for (let apart = 1; apart <= 31; apart++) {
      const day = (start + way * apart + days) % days
      if (whole[day]) return day
    }
    return undefined
  }
  const models = [nearest(firstDay, -1), nearest(lastDay, 1)].flatMap((day) => day ?? [])
  if (models.length === 0) return false
  const aboveAir = (day: number): number =>
    sun.levelWM2.subarray(day * rowsPerDay, (day + 1) * rowsPerDay).reduce((sum, each) => sum + each, 0)
  for (let row = gap.from; row < gap.from + gap.rows; row++) {
    if (isMissing[row] !== 1) continue
    const own = aboveAir(Math.floor(row / rowsPerDay))
    let [global, diffuse] = [0, 0]
    for (const day of models) {
      const model = day * rowsPerDay + (row % rowsPerDay)
      const scale = own / aboveAir(day) / models.length
      global += radiation.ghi[model]! * scale
      diffuse += radiation.dhi[model]! * scale
    }
    put(radiation, row, global, global > 0 ? diffuse / global : 1, sun)
  }
  return true
}

function wholeDays(isMissing: Uint8Array, rowsPerDay: number): boolean[] {
  return Array.from(
    { length: isMissing.length / rowsPerDay },
    (_, day) => !isMissing.subarray(day * rowsPerDay, (day + 1) * rowsPerDay).includes(1),
  )
}

function put({ ghi, dni, dhi }: Radiation, row: number, global: number, kd: number, sun: RowSun): void {
  if (sun.sunlit[row] === 0) return
  const parts = splitBy(kd, global, sun.cosZenith[row]!, sun.normalWM2[row]!)
  ghi[row] = global
  dni[row] = parts.dni
  dhi[row] = parts.dhi
}
