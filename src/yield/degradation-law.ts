/**
 * Output of a year relative to the first.
 *
 * @param degradation Loss per year, as a share of 1.
 * @param year From 1.
 */
export function outputOfYear(degradation: number, year: number): number {
  return (1 - degradation) ** (year - 1)
}

/** Output of the first years together, relative to the first year alone; `degradation` as a share of 1. */
export function lifeOutput(degradation: number, years: number): number {
  if (degradation < 1e-9) return years
  return (1 - (1 - degradation) ** years) / degradation
}

/** Mean output of the first years relative to the first year alone; `degradation` as a share of 1. */
export function meanOutput(degradation: number, years: number): number {
  return lifeOutput(degradation, years) / years
}
