import { cashFlow, reportedDiscount, type CashFlowInput } from '../cash-flow/index.js'
import { netPresentValue } from '../life-cycle/index.js'
import { levers, type Lever } from './levers.js'
import type { Spread } from './monte-carlo.js'
import { findRoot, type Dollars } from '../../values/index.js'

/** Effect of one input on the net present value, all others at their central value. */
export interface SensitivityRow {
  readonly id: string
  readonly says: string
  readonly unit: string
  readonly central: number
  readonly low: number
  readonly high: number
  readonly npvAtLowUsd: Dollars
  readonly npvAtHighUsd: Dollars
  readonly swingUsd: Dollars
  /** Value at which the net present value is zero, within a wide search; undefined when there is none. */
  readonly breakEven: number | undefined
}

/** Savings of a house, for all years or for each. */
export type Curves = Pick<CashFlowInput, 'curve' | 'curves'>

/** An input that changes the bills: savings at its low and at its high value. */
export interface CurveVariant extends Pick<SensitivityRow, 'id' | 'says' | 'unit' | 'central' | 'low' | 'high'> {
  readonly curves: readonly [Curves, Curves]
}

export function npvOf(input: CashFlowInput): number {
  return netPresentValue(cashFlow(input).net, reportedDiscount(input.terms))
}

function breakEven(lever: Lever): number | undefined {
  const [low, high] = lever.search
  return findRoot((value) => npvOf(lever.apply(value)), low, high, (high - low) * 1e-9)
}

/**
 * Varies one input at a time and sorts by the effect on the net present value. The rows must not be added up.
 *
 * @param variants Inputs that change the bills themselves, with savings curves of their own.
 * @source 10 CFR 436.24 allows sensitivity and break-even analysis
 */
export function sensitivity(input: CashFlowInput, spread: Spread, variants: readonly CurveVariant[]): SensitivityRow[] {
  const rows = levers(input, spread).map((lever): SensitivityRow => {
    const npvAtLowUsd = npvOf(lever.apply(lever.low))
    const npvAtHighUsd = npvOf(lever.apply(lever.high))
    const { id, says, unit, central, low, high } = lever
    const swingUsd = Math.abs(npvAtHighUsd - npvAtLowUsd)
    return { id, says, unit, central, low, high, npvAtLowUsd, npvAtHighUsd, swingUsd, breakEven: breakEven(lever) }
  })
  for (const { curves, ...variant } of variants) {
    const npvAtLowUsd = npvOf({ ...input, ...curves[0] })
    const npvAtHighUsd = npvOf({ ...input, ...curves[1] })
    const swingUsd = Math.abs(npvAtHighUsd - npvAtLowUsd)
    rows.push({ ...variant, npvAtLowUsd, npvAtHighUsd, swingUsd, breakEven: undefined })
  }
  return rows.sort((a, b) => b.swingUsd - a.swingUsd)
}

/** A text bar for each row, longest first. @param width Characters of the longest bar. */
export function sensitivityBars(rows: readonly SensitivityRow[], width: number): string[] {
  const most = Math.max(...rows.map((row) => row.swingUsd), 1e-9)
  return rows.map((row) => '#'.repeat(Math.round((width * row.swingUsd) / most)))
}
