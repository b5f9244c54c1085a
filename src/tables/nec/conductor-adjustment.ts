/**
 * Adjustment for more than three current-carrying conductors in a raceway longer than 24 in: percent up to `to` conductors.
 *
 * @source NEC Table 310.15(C)(1) (2020, 2023) = Table 310.15(B)(3)(a) (2011 to 2017).
 */
export const conductorAdjustment: readonly { readonly to: number; readonly percent: number }[] = [
  { to: 3, percent: 100 },
  { to: 6, percent: 80 },
  { to: 9, percent: 70 },
  { to: 20, percent: 50 },
  { to: 30, percent: 45 },
  { to: 40, percent: 40 },
  { to: Infinity, percent: 35 },
]
