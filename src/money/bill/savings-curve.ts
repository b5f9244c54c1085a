import type { BillingCalendar } from '../calendar/index.js'
import type { RateSheet } from '../tariff/index.js'
import { toNumber } from './bill-values.js'
import { priceYear } from './bill-year.js'
import { houseLedgers, type HouseEnergy, type HouseLedgers } from './house-energy.js'
import type { Dollars } from '../../values/index.js'

/** Annual savings as a function of output: exact bills at the nodes, straight lines between them. */
export interface SavingsCurve {
  /** Factors on the output, ascending: the nodes. */
  readonly scales: Float64Array
  /** Savings at a node, by its number from 0, USD; worked out when it is first asked for, as most questions come near few nodes. */
  readonly usdAt: (node: number) => Dollars
}

/** A curve whose nodes are worked out when they are asked for, each once. @param scales Ascending. */
export function curveThrough(scales: Float64Array, savedAt: (scale: number) => Dollars): SavingsCurve {
  const known = new Float64Array(scales.length).fill(Number.NaN)
  const usdAt = (node: number): number => {
    const held = known[node]!
    if (!Number.isNaN(held)) return held
    const usd = savedAt(scales[node]!)
    known[node] = usd
    return usd
  }
  return { scales, usdAt }
}

/** Close where good and bad years lie, wider where few draws come. */
const GRID = [0, 0.3, 0.4, 0.5, 0.6, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 1, 1.05, 1.1, 1.15, 1.2, 1.3, 1.4, 1.5]

/**
 * The part of the grid that a curve needs when it is read only from one factor to another.
 *
 * @param low, high Lowest and highest factor on the output that is read.
 */
export function gridAround(low: number, high: number): number[] {
  const last = GRID.length - 1
  const first = Math.max(
    1,
    GRID.findLastIndex((scale) => scale <= low),
  )
  const end = GRID.findIndex((scale) => scale >= high)
  return GRID.slice(first - 1, (end < 0 ? last : end) + 2)
}

/** What a savings curve is worked out from. */
export interface SavingsCurveInput {
  readonly sheet: RateSheet
  /** Tariff of the solar customer when it is another one. */
  readonly sheetWithSystem?: RateSheet
  readonly energy: HouseEnergy
  readonly calendar: BillingCalendar
  /** Factors on the output at which the curve must be exact besides the grid. */
  readonly extraScales?: readonly number[]
  /** Factors at which it is exact; missing: the whole grid. */
  readonly grid?: readonly number[]
  /** The hours of the house added up, where that is done already. */
  readonly ledgers?: HouseLedgers
}

/**
 * Savings per year at many outputs, so that years of degradation and samples of weather need no new bills.
 *
 * @throws StageError as `computeBill`.
 */
export function savingsCurve(input: SavingsCurveInput): SavingsCurve {
  const { sheet, energy, calendar, sheetWithSystem = sheet, extraScales = [], grid = GRID } = input
  const ledgers = input.ledgers ?? houseLedgers(sheet, energy, calendar, sheetWithSystem)
  const without = priceYear(sheet, ledgers.before.without(), false).total
  const scales = Float64Array.from([...new Set([...grid, ...extraScales])].sort((a, b) => a - b))
  return curveThrough(scales, (scale) =>
    toNumber(without.minus(priceYear(sheetWithSystem, ledgers.after.withSystem(scale), true).total)),
  )
}

/** @param scale Factor on the output; above the last node the last line is prolonged. @returns USD per year at base prices. */
export function savingsAt(curve: SavingsCurve, scale: number): number {
  const { scales, usdAt } = curve
  let low = 0
  let high = scales.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if ((scales[middle] ?? 0) <= scale) low = middle
    else high = middle
  }
  const x0 = scales[low] ?? 0
  const x1 = scales[high] ?? 1
  if (scale === x0) return usdAt(low)
  if (scale === x1) return usdAt(high)
  const y0 = usdAt(low)
  const y1 = usdAt(high)
  return y0 + ((y1 - y0) * (scale - x0)) / (x1 - x0)
}

/** Steps of the table that finds the node below a factor. */
const STEPS = 1024

/** `savingsAt` for very many factors of zero or above. */
export function savingsReader(curve: SavingsCurve): (scale: number) => number {
  const { scales, usdAt } = curve
  const last = scales.length - 1
  if (last < 1) return (scale) => savingsAt(curve, scale)
  const perStep = STEPS / (scales[last] ?? 1)
  const nodes = new Uint16Array(STEPS + 1)
  for (let step = 1, node = 0; step <= STEPS; step++) {
    // One step back, so that rounding never leaps over a node.
    while (node < last - 1 && (scales[node + 1] ?? 0) * perStep <= step - 1) node += 1
    nodes[step] = node
  }
  const starts = new Float64Array(last)
  const slopes = new Float64Array(last).fill(Number.NaN)
  const find = (node: number): number => {
    const usd = usdAt(node)
    starts[node] = usd
    return (slopes[node] = (usdAt(node + 1) - usd) / (scales[node + 1]! - scales[node]!))
  }
  return (scale) => {
    const step = Math.floor(scale * perStep)
    let low = nodes[step < STEPS ? step : STEPS]!
    while (low < last - 1 && scales[low + 1]! <= scale) low += 1
    let slope = slopes[low]!
    // Not worked out yet.
    if (slope !== slope) slope = find(low)
    return starts[low]! + slope * (scale - scales[low]!)
  }
}

/** The same savings for another yardstick: an output of 1 on the new curve is an output of `factor` on the old one. */
export function scaledCurve(curve: SavingsCurve, factor: number): SavingsCurve {
  return { scales: curve.scales.map((scale) => scale / factor), usdAt: curve.usdAt }
}
