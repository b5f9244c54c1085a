import type { Feet } from '../../values/index.js'

/** Shares and least widths of the edge strip. */
const STRIP = { ofWidth: 0.1, ofHeight: 0.4, leastOfWidth: 0.04, leastFt: 3 } as const

/**
 * Width `a` of the edge strips of a roof, ft in plan.
 *
 * @param leastWidthFt Least horizontal dimension of the building, ft.
 * @param meanRoofHeightFt Mean roof height, ft.
 * @returns ft, measured horizontally.
 * @source ASCE 7-16 figure 30.3-1 notation: smaller of 10 % of the least width and 0.4 h, at least 4 % of it and 3 ft (secondary)
 */
export function edgeStripWidthFt(leastWidthFt: Feet, meanRoofHeightFt: Feet): Feet {
  const a = Math.min(STRIP.ofWidth * leastWidthFt, STRIP.ofHeight * meanRoofHeightFt)
  return Math.max(a, STRIP.leastOfWidth * leastWidthFt, STRIP.leastFt)
}
