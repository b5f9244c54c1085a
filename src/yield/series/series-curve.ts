import { bestPower, powerAtVoltage } from './best-point.js'
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
  /** The curve behind the tables, and what strings in parallel were found to give. */
  readonly section: SectionCurve
  readonly parallel: Map<string, number>
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
  const tables: SeriesCurve = { dull, past, along, section: curve, parallel: new Map() }
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

/** Light of the dull sections at a column. */
function lightOf(column: number): number {
  return (column / LIGHT_STEPS) ** 2
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
  const isHeld = leastVoltage > 0 && leastVoltage > litShare - (1 - litShare) * curve.section.diode
  const past = isHeld
    ? powerAtVoltage(curve.section, litShare, lightOf(column), leastVoltage)
    : lookUp(curve.past, litShare * LIT_STEPS, column)
  return past > along ? past : along
}

/** Voltages at which strings in parallel are tried, relative to the best point of whole strings. */
const VOLTAGES = Array.from({ length: 18 }, (_, index) => 0.15 + index * 0.05)
/** Steps of the dull share that strings in parallel are worked out for; between them straight lines. */
const DULL_STEPS = 25
const MOST_PARALLEL = 20_000

/**
 * Mean share of strings in parallel on one tracker, which holds all of them at one voltage.
 *
 * @param litShares Of each string; all have the same number of the same module.
 * @limits Voltages are tried in steps of 5 %: up to 0.5 % too low.
 */
export function shareOfParallel(
  curve: SeriesCurve,
  litShares: readonly number[],
  dullShare: number,
  leastVoltage = 0,
): number {
  if (litShares.every((lit) => lit >= 1)) return 1
  const place = Math.min(1, Math.max(0, dullShare)) * DULL_STEPS
  const low = Math.min(DULL_STEPS - 1, Math.floor(place))
  const lits = litShares.toSorted((a, b) => a - b)
  const at = (step: number): number => knownParallel(curve, lits, step, leastVoltage)
  return at(low) * (1 - (place - low)) + at(low + 1) * (place - low)
}

function knownParallel(curve: SeriesCurve, lits: readonly number[], step: number, leastVoltage: number): number {
  const key = `${lits.map((lit) => lit.toFixed(4)).join(' ')} ${step} ${leastVoltage}`
  const known = curve.parallel.get(key)
  if (known !== undefined) return known
  const light = lightOf(columnOf(curve, step / DULL_STEPS))
  let best = 0
  for (const voltage of VOLTAGES) {
    if (voltage < leastVoltage) continue
    let sum = 0
    for (const lit of lits) sum += powerAtVoltage(curve.section, lit, light, voltage)
    if (sum > best) best = sum
  }
  const share = Math.min(1, best / lits.length)
  if (curve.parallel.size >= MOST_PARALLEL) curve.parallel.clear()
  curve.parallel.set(key, share)
  return share
}
