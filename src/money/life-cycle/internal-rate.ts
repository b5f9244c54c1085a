import { findRoot } from '../../values/index.js'
import { netPresentValue } from './present-value.js'

/** Rates at which the net present value is zero. */
export type InternalRate =
  | { readonly kind: 'one'; readonly rate: number }
  | { readonly kind: 'none'; readonly why: string }
  | { readonly kind: 'several'; readonly rates: readonly number[] }

const LOWEST = -0.99
const HIGHEST = 10
const POINTS = 4000
const OUT_OF_REACH = 'no rate from -99 % to 1000 % makes the present value zero'
let rateGrid: Float64Array | undefined

function signChanges(flows: readonly number[]): number {
  const signs = flows.filter((flow) => flow !== 0).map(Math.sign)
  return signs.filter((sign, i) => i > 0 && sign !== signs[i - 1]).length
}

function rootBetween(flows: readonly number[], low: number, high: number): number {
  return findRoot((rate) => netPresentValue(flows, rate), low, high, 1e-14 * Math.max(1, Math.abs(low))) ?? low
}

/**
 * Internal rate of return, with the answer that there is none or that there are several.
 *
 * @param flows USD, year 0 first.
 * @returns Fraction per year.
 * @limits Rates from -99 % to 1000 % are searched on a fine grid; two roots closer together than a grid step are not seen.
 */
export function internalRate(flows: readonly number[]): InternalRate {
  const changes = signChanges(flows)
  if (changes === 0) {
    return { kind: 'none', why: 'the flows never change sign, so no rate makes their present value zero' }
  }
  if (changes === 1) {
    // Flows that change sign once have one rate above -100 % (rule of signs): no grid is needed.
    const rate = findRoot((one) => netPresentValue(flows, one), LOWEST, HIGHEST, 1e-13)
    return rate === undefined ? { kind: 'none', why: OUT_OF_REACH } : { kind: 'one', rate }
  }
  const rates: number[] = []
  rateGrid ??= Float64Array.from(
    { length: POINTS + 1 },
    (_, i) => (1 + LOWEST) * ((1 + HIGHEST) / (1 + LOWEST)) ** (i / POINTS) - 1,
  )
  const all = rateGrid
  const grid = (i: number): number => all[i] ?? 0
  let before = netPresentValue(flows, grid(0))
  for (let i = 1; i <= POINTS; i++) {
    const here = netPresentValue(flows, grid(i))
    if (here === 0) rates.push(grid(i))
    else if (before !== 0 && Math.sign(before) !== Math.sign(here)) rates.push(rootBetween(flows, grid(i - 1), grid(i)))
    before = here
  }
  const only = rates[0]
  if (only === undefined) return { kind: 'none', why: OUT_OF_REACH }
  return rates.length === 1 ? { kind: 'one', rate: only } : { kind: 'several', rates }
}

/**
 * Modified internal rate of return: outflows financed at one rate, inflows reinvested at another.
 *
 * @param financeRate, reinvestRate Fractions per year.
 * @returns Fraction per year, or undefined without both inflows and outflows.
 */
export function modifiedInternalRate(
  flows: readonly number[],
  financeRate: number,
  reinvestRate: number,
): number | undefined {
  const last = flows.length - 1
  const inflows = flows.map((flow) => Math.max(0, flow))
  const outflows = flows.map((flow) => Math.min(0, flow))
  const future = netPresentValue(inflows, reinvestRate) * (1 + reinvestRate) ** last
  const present = -netPresentValue(outflows, financeRate)
  if (future <= 0 || present <= 0 || last < 1) return undefined
  return (future / present) ** (1 / last) - 1
}
