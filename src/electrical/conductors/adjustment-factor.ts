import { conductorAdjustment } from '../../tables/nec/index.js'

/**
 * Adjustment of ampacity for the number of current-carrying conductors in one raceway.
 *
 * @param conductors Number of current-carrying conductors, grounding conductors not counted.
 * @param nipple Whether the raceway is a nipple of 24 in or less, which needs no adjustment.
 * @returns Factor up to 1.
 * @source NEC Table 310.15(C)(1) (2020, 2023), Table 310.15(B)(3)(a) (2011 to 2017)
 */
export function adjustmentFactor(conductors: number, nipple: boolean): number {
  if (nipple) return 1
  const row = conductorAdjustment.find((candidate) => conductors <= candidate.to)
  return (row?.percent ?? 35) / 100
}

/** The row of the table that holds a number of conductors, in words: `4 to 6 conductors, 80 percent`. */
export function adjustmentRowWords(conductors: number): string {
  const at = conductorAdjustment.findIndex((row) => conductors <= row.to)
  const [before, row] = [conductorAdjustment[at - 1], conductorAdjustment[at]]
  const from = (before?.to ?? 0) + 1
  return `${row?.to === Infinity ? `${from} conductors and more` : `${from} to ${row?.to ?? ''} conductors`}, ${row?.percent ?? ''} percent`
}
