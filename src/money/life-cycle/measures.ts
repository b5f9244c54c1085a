import { netPresentValue } from './present-value.js'
import type { KilowattHours } from '../../values/index.js'

/** Flows of an investment, split as the ratios need them; year 0 first, USD. */
export interface InvestmentFlows {
  /** Energy and operating savings, costs of operation subtracted. */
  readonly operating: readonly number[]
  /** Money put in: purchase and replacements, residual value subtracted. */
  readonly investment: readonly number[]
}

export function netFlows(flows: InvestmentFlows): number[] {
  return flows.operating.map((usd, t) => usd - (flows.investment[t] ?? 0))
}

/**
 * Savings-to-investment ratio: present worth of operating savings over that of the extra investment, replacements and
 * residual value in the denominator.
 *
 * @returns Undefined when nothing is invested.
 * @source 10 CFR 436.18(c)
 */
export function savingsToInvestment(flows: InvestmentFlows, rate: number): number | undefined {
  const invested = netPresentValue(flows.investment, rate)
  return invested > 0 ? netPresentValue(flows.operating, rate) / invested : undefined
}

/**
 * Adjusted internal rate of return: (1 + d) SIR^(1/n) - 1.
 *
 * @returns Fraction per year; undefined when the ratio is not above zero.
 * @source 10 CFR 436.22
 */
export function adjustedInternalRate(ratio: number | undefined, rate: number, years: number): number | undefined {
  return ratio === undefined || ratio <= 0 ? undefined : (1 + rate) * ratio ** (1 / years) - 1
}

/**
 * Levelised cost of energy: present worth of all costs over the discounted kWh.
 *
 * @param costs USD, year 0 first. @param kwh Output, year 0 first (0 in year 0). @param rate Of the same kind as the costs.
 * @returns USD/kWh; undefined without output.
 * @source Short, Packey & Holt 1995, NREL/TP-462-5173 (from memory); simplified form read in later texts that quote it
 */
export function levelisedCost(
  costs: readonly number[],
  kwh: readonly KilowattHours[],
  rate: number,
): number | undefined {
  const energy = netPresentValue(kwh, rate)
  return energy > 0 ? netPresentValue(costs, rate) / energy : undefined
}
