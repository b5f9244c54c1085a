import { bestPower } from './best-point.js'
import type { SectionCurve } from './section-curve.js'

/** Steps of the share of lit sections, and of the light of the dull ones. */
const LIT_STEPS = 24
const LIGHT_STEPS = 20

/**
 * What sections in series give when some are dull, as tables: relative to all lit, by the share of lit sections and by the
 * power of the dull ones relative to lit ones.
 */
export interface SeriesCurve {
  /** Power of a section under the light of each column, relative to full light, rising from 0 to 1. */
  readonly dull: Float64Array
  /** Power with the dull sections passed by, and with all of them carrying the dull current: `row * columns + column`. */
  readonly past: Float64Array
  readonly along: Float64Array
}

const known = new Map<string, SeriesCurve>()
const MOST_KNOWN = 64

/** The tables of a curve; those of curves seen before are kept. */
export function seriesTables(curve: SectionCurve): SeriesCurve {
  const key = `${curve.short} ${curve.open} ${curve.diode}`
  const before = known.get(key)
  if (before !== undefined) return before
  const columns = LIGHT_STEPS + 1
  const dull = new Float64Array(columns)
  const past = new Float64Array((LIT_STEPS + 1) * columns)
  const along = new Float64Array((LIT_STEPS + 1) * columns)
  const all = bestPower(curve, 1, 1, 'along')
  for (let column = 0; column < columns; column += 1) {
    // Squares, as the power of dull sections bends most in little light.
    const light = (column / LIGHT_STEPS) ** 2
    dull[column] = column === 0 ? 0 : bestPower(curve, 0, light, 'along') / all
    for (let row = 0; row <= LIT_STEPS; row += 1) {
      const lit = row / LIT_STEPS
      const at = row * columns + column
      past[at] = bestPower(curve, lit, light, 'past') / all
      along[at] = column === 0 ? 0 : bestPower(curve, lit, light, 'along') / all
    }
  }
  const tables = { dull, past, along }
  if (known.size >= MOST_KNOWN) known.clear()
  known.set(key, tables)
  return tables
}

/** Where a share of power lies among the columns: the column below, with a fraction. */
function columnOf({ dull }: SeriesCurve, share: number): number {
  if (share >= 1) return LIGHT_STEPS
  let column = 0
  while (column < LIGHT_STEPS - 1 && dull[column + 1]! <= share) column += 1
  const width = dull[column + 1]! - dull[column]!
  return column + (width > 0 ? Math.max(0, share - dull[column]!) / width : 0)
}

function lookUp(table: Float64Array, row: number, column: number): number {
  const columns = LIGHT_STEPS + 1
  const low = Math.min(LIT_STEPS - 1, Math.floor(row))
  const left = Math.min(LIGHT_STEPS - 1, Math.floor(column))
  const up = row - low
  const right = column - left
  const at = low * columns + left
  const below = table[at]! * (1 - right) + table[at + 1]! * right
  const above = table[at + columns]! * (1 - right) + table[at + columns + 1]! * right
  return below * (1 - up) + above * up
}

/**
 * Best power of a string with some of its sections dull, relative to all of them lit.
 *
 * @param litShare Share of the sections that no shadow touches, 0 to 1.
 * @param dullShare Power that a section gives by diffuse light alone, relative to full light, 0 to 1.
 * @param leastVoltage Lowest voltage of the inverter's tracker, relative to that of the string's best point.
 */
export function shareOfString(curve: SeriesCurve, litShare: number, dullShare: number, leastVoltage = 0): number {
  if (litShare >= 1) return 1
  const column = columnOf(curve, dullShare)
  const along = lookUp(curve.along, litShare * LIT_STEPS, column)
  if (litShare < leastVoltage) return along
  const past = lookUp(curve.past, litShare * LIT_STEPS, column)
  return past > along ? past : along
}

/**
 * Mean share of strings in parallel on one tracker, which holds all of them at one voltage: tried are the voltage of whole
 * strings and that of the lit sections of each. A string above its own lit sections' voltage carries the dull current; one
 * below it gives its current at the lower voltage.
 *
 * @param litShares Of each string; all have the same number of the same module.
 * @limits The current of a string that is held below its best voltage is taken as that of its best point: a little too low.
 */
export function shareOfParallel(
  curve: SeriesCurve,
  litShares: readonly number[],
  dullShare: number,
  leastVoltage = 0,
): number {
  const column = columnOf(curve, dullShare)
  let best = 0
  for (let tried = -1; tried < litShares.length; tried += 1) {
    const voltage = tried < 0 ? 1 : litShares[tried]!
    if (voltage < leastVoltage) continue
    let sum = 0
    for (const lit of litShares) {
      if (lit > voltage) sum += voltage
      else if (lit === voltage) sum += lit >= 1 ? 1 : lookUp(curve.past, lit * LIT_STEPS, column)
      else sum += voltage * lookUp(curve.along, lit * LIT_STEPS, column)
    }
    if (sum > best) best = sum
  }
  return Math.min(1, best / litShares.length)
}
