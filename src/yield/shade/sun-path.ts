import { DAYS_IN_MONTH } from '../../climate/index.js'
import { atDay, ephemeris } from '../../sun/index.js'
import type { Degrees } from '../../values/index.js'
import type { SkySteps } from '../sky-steps.js'
import { COLUMNS, courseOf, HOUR_STEP_DEG, ROWS, rowOf, sunGrid } from './sun-grid.js'

/** For each sun position of the year, the places of the sun grid that its steps pass over, with their shares. */
export interface SunPath {
  /** Places of sun i: `from[i]` up to `from[i + 1]`. */
  readonly from: Uint32Array
  readonly place: Uint16Array
  /** Shares of the time of the step; they sum to 1. */
  readonly share: Float64Array
  /** Month of each sun position, 0 to 11. */
  readonly month: Uint8Array
}

const paths = new WeakMap<SkySteps, SunPath>()

/**
 * What the sun passes over during each step. In hours of a year that is a stretch of one day's course; the mean day of a
 * month stands for all its days, so there it is that stretch on each of them.
 */
export function sunPath(steps: SkySteps): SunPath {
  const known = paths.get(steps)
  if (known !== undefined) return known
  const from = new Uint32Array(steps.sunCount + 1)
  const month = new Uint8Array(steps.sunCount)
  const place: number[] = []
  const share: number[] = []
  const { up } = sunGrid(steps.latitudeDeg)
  const monthRows = steps.fileRow === undefined ? rowsOfMonths() : undefined
  let done = -1
  for (let step = 0; step < steps.length; step += 1) {
    const sun = steps.sunIndex[step]!
    if (sun <= done) continue
    done = sun
    from[sun] = place.length
    month[sun] = steps.month[step]!
    const towards = { east: steps.sunEast[step]!, north: steps.sunNorth[step]!, up: steps.sunUp[step]! }
    const { declinationDeg, hourAngleDeg } = courseOf(steps.latitudeDeg, towards)
    const rows = monthRows?.[steps.month[step]!] ?? rowsOfDay(declinationDeg)
    const half = Math.max(HOUR_STEP_DEG, steps.spanH[step]! * 15) / 2
    addStretch({ place, share }, rows, hourAngleDeg - half, hourAngleDeg + half)
    keepAbove({ place, share }, from[sun], up)
  }
  from[steps.sunCount] = place.length
  const path = { from, place: Uint16Array.from(place), share: Float64Array.from(share), month }
  paths.set(steps, path)
  return path
}

/** A row of the grid and the share of the days that it stands for. */
type RowShare = readonly [row: number, share: number]

function rowsOfDay(declinationDeg: Degrees): RowShare[] {
  const row = rowOf(declinationDeg)
  const low = Math.min(ROWS - 2, Math.floor(row))
  const upper = row - low
  return upper === 0
    ? [[low, 1]]
    : [
        [low, 1 - upper],
        [low + 1, upper],
      ]
}

/** The rows that the days of each month pass over. */
function rowsOfMonths(): RowShare[][] {
  const { declinationDeg } = ephemeris()
  let day = 0
  return DAYS_IN_MONTH.map((days) => {
    const sums = new Map<number, number>()
    for (let each = 0; each < days; each += 1, day += 1) {
      for (const [row, share] of rowsOfDay(atDay(declinationDeg, day + 0.5))) {
        sums.set(row, (sums.get(row) ?? 0) + share / days)
      }
    }
    return [...sums]
  })
}

/**
 * Light comes while the sun is up: places below the horizon are left out, unless there are no others. Without this the roof
 * under a rack would take light at sunrise that never was.
 */
function keepAbove(
  { place, share }: { readonly place: number[]; readonly share: number[] },
  first: number,
  up: Float64Array,
): void {
  let above = 0
  for (let at = first; at < place.length; at += 1) if (up[place[at]!]! > 0) above += share[at]!
  if (above <= 0 || above >= 1) return
  let kept = first
  for (let at = first; at < place.length; at += 1) {
    if (up[place[at]!]! <= 0) continue
    place[kept] = place[at]!
    share[kept] = share[at]! / above
    kept += 1
  }
  place.length = kept
  share.length = kept
}

function addStretch(
  { place, share }: { readonly place: number[]; readonly share: number[] },
  rows: readonly RowShare[],
  fromDeg: Degrees,
  toDeg: Degrees,
): void {
  const first = Math.floor((fromDeg + 180) / HOUR_STEP_DEG)
  const last = Math.ceil((toDeg + 180) / HOUR_STEP_DEG) - 1
  for (let column = first; column <= last; column += 1) {
    const begins = column * HOUR_STEP_DEG - 180
    const overlap = Math.min(toDeg, begins + HOUR_STEP_DEG) - Math.max(fromDeg, begins)
    if (overlap <= 0) continue
    const around = ((column % COLUMNS) + COLUMNS) % COLUMNS
    for (const [row, days] of rows) {
      place.push(row * COLUMNS + around)
      share.push((days * overlap) / (toDeg - fromDeg))
    }
  }
}
