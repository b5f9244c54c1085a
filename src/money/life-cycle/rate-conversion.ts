/** Nominal from real rate, both fractions per year: (1 + nominal) = (1 + real)(1 + inflation). @source NIST Handbook 135 */
export function nominalRate(real: number, inflation: number): number {
  return (1 + real) * (1 + inflation) - 1
}

/** Real from nominal rate, fractions per year. */
export function realRate(nominal: number, inflation: number): number {
  return (1 + nominal) / (1 + inflation) - 1
}

/** Inflation that a pair of nominal and real rates implies, fraction per year. */
export function impliedInflation(nominal: number, real: number): number {
  return (1 + nominal) / (1 + real) - 1
}

/** Monthly rate that compounds to an annual one. @source Newnan, Engineering Economic Analysis, 9th ed., eq. 4-32 */
export function monthlyRate(annual: number): number {
  return (1 + annual) ** (1 / 12) - 1
}
