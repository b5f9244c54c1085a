/** When in a year its flows are taken to fall. */
export type FlowTiming = 'end' | 'middle' | 'beginning'

const SHIFT: Readonly<Record<FlowTiming, number>> = { end: 0, middle: 0.5, beginning: 1 }

/**
 * Present worth of 1 that falls in year n (SPV).
 *
 * @param rate Discount rate, fraction per year. @param year 1 or later (0 = now with `end`).
 * @source NIST Handbook 135 (1995), single present value; end-of-year is the default
 */
export function singlePresentValue(rate: number, year: number, timing: FlowTiming = 'end'): number {
  return (1 + rate) ** -(year - SHIFT[timing])
}

/** Present worth of 1 at the end of each of n years (UPV). @source NIST Handbook 135 (1995) */
export function uniformPresentValue(rate: number, years: number): number {
  return rate === 0 ? years : (1 - (1 + rate) ** -years) / rate
}

/** Uniform payment at the end of each of n years that repays 1 (UCR). @source NIST Handbook 135 (1995) */
export function uniformCapitalRecovery(rate: number, years: number): number {
  return 1 / uniformPresentValue(rate, years)
}

/**
 * Present worth of a yearly cost of 1 at base-date price that escalates, first falling at the end of year 1 (UPV*).
 *
 * @source ASTM E917, modified uniform present value (formula from memory, checked numerically)
 */
export function modifiedUniformPresentValue(rate: number, escalation: number, years: number): number {
  const ratio = (1 + escalation) / (1 + rate)
  return rate === escalation ? years : ((1 + escalation) / (rate - escalation)) * (1 - ratio ** years)
}
