import { realAt, toInt, toReal, type Int, type Real } from './memory.js'

/** Steps of the share of lit sections, and of the light of the dull ones, in the tables of a series curve. */
export const LIT_STEPS: Int = 24
export const LIGHT_STEPS: Int = 20

/**
 * Where a share of power lies among the columns of dull light: the column below, with a fraction.
 *
 * @param dull Power of a section under the light of each column, relative to full light.
 */
export function columnOf(dull: Int, share: Real): Real {
  if (share >= 1) return toReal(LIGHT_STEPS)
  let column: Int = 0
  while (column < LIGHT_STEPS - 1 && realAt(dull + ((column + 1) << 3)) <= share) column += 1
  const before = realAt(dull + (column << 3))
  const width = realAt(dull + ((column + 1) << 3)) - before
  return toReal(column) + (width > 0 ? Math.max(0, share - before) / width : 0)
}

/** Value of a table between its rows and columns. */
export function lookUp(table: Int, row: Real, column: Real): Real {
  const low = Math.min(toReal(LIT_STEPS - 1), Math.floor(row))
  const left = Math.min(toReal(LIGHT_STEPS - 1), Math.floor(column))
  const up = row - low
  const right = column - left
  const at: Int = table + (toInt(low * toReal(LIGHT_STEPS + 1) + left) << 3)
  const next: Int = at + ((LIGHT_STEPS + 1) << 3)
  const below = realAt(at) * (1 - right) + realAt(at + 8) * right
  const above = realAt(next) * (1 - right) + realAt(next + 8) * right
  return below * (1 - up) + above * up
}

/** Best power of a string or module with a share of its sections lit, relative to all lit, with no limit of voltage. */
export function shareOfSections(dull: Int, past: Int, along: Int, lit: Real, dullShare: Real): Real {
  if (lit >= 1) return 1
  const column = columnOf(dull, dullShare)
  const row = lit * toReal(LIT_STEPS)
  return Math.max(lookUp(past, row, column), lookUp(along, row, column))
}
