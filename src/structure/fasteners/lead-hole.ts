import { LAG_GEOMETRY, LAG_SCREWS, LEAD_HOLES, type LagSize } from '../../tables/nds/index.js'
import type { Inches } from '../../values/index.js'

/**
 * Diameter of the lead hole for the thread, in.
 *
 * @returns Least and most, in.
 * @source NDS 2018 12.1.4.2 (percentages from memory)
 */
export function leadHoleIn(specificGravity: number, size: LagSize): { leastIn: Inches; mostIn: Inches } {
  const row = LEAD_HOLES.find((r) => specificGravity > r.gravityOver)
  const d = LAG_SCREWS[size].diameterIn
  return { leastIn: (row?.least ?? 0.4) * d, mostIn: (row?.most ?? 0.7) * d }
}

/**
 * How far from the middle of a rafter a screw may be and keep its edge distance of 1.5 diameters, in.
 *
 * @source NDS 2018 table 12.5.1C (secondary)
 */
export function centringToleranceIn(rafterBreadthIn: Inches, size: LagSize): Inches {
  return rafterBreadthIn / 2 - LAG_GEOMETRY.edge * LAG_SCREWS[size].diameterIn
}
