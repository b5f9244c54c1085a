/**
 * Largest share of a raceway's inside area that conductors may fill, percent, up to `to` conductors.
 *
 * @source NEC Chapter 9 Table 1.
 */
export const racewayFill: readonly { readonly to: number; readonly percent: number }[] = [
  { to: 1, percent: 53 },
  { to: 2, percent: 31 },
  { to: Infinity, percent: 40 },
]

/**
 * Fill of a nipple no longer than 24 in, percent.
 *
 * @source NEC Chapter 9 Table 1 note 4.
 */
export const NIPPLE_FILL_PCT = 60

/** Longest nipple, in. @source NEC Chapter 9 Table 1 note 4; 310.15(C)(1)(b). */
export const NIPPLE_LENGTH_IN = 24
